import { unsold, withBoard, withoutPedals, withPolicy, withThings } from '../../domain/changed-kit.js';
import { groupBy } from '../../domain/group-by.js';
import { forSaleOf, type Kit } from '../../domain/kit.js';
import type { PedalId, SupplyId } from '../../domain/quantities.js';
import { natureOf } from '../../domain/source.js';
import type { Effort } from '../../formulation/optimiser.js';
import type { Refusal } from '../answer.js';
import { feedersOf } from '../refusals/feeders.js';
import { refusalsOf } from '../refusals/refusals.js';
import { ask } from '../asking/ask.js';
import { limitedBy, limitNames, type LimitName } from '../limit-names.js';
import type { Conflict } from '../conflict/conflict.js';
import { factsOf, relaxed, sameFact } from '../conflict/facts.js';

/** A conflict with the numbers that make an argument of it. */
export type Argument = {
  readonly conflict: Conflict;
  /** Which supplies, owned or for sale, have an output for each of the pedals while nothing else hangs on it. */
  readonly feeders: readonly { readonly pedals: readonly PedalId[]; readonly supplies: readonly SupplyId[] }[];
  /** Of the pedals that no supply at all can feed: for every rule in the way the nearest miss, those of the conflict first. */
  readonly refusals: readonly { readonly pedal: PedalId; readonly refusals: readonly Refusal[] }[];
  /** What these pedals take at the least when one limit of the conflict is lifted; null where it was not settled. */
  readonly least: Readonly<Partial<Record<LimitName, number | null>>>;
  /** The most of these pedals that one supply feeds at once; asked where the number of supplies matters. */
  readonly perSupply?: number | null;
  /** How many of the feeding supplies the limits let be in use at once; null where they set no bound. */
  readonly mostSupplies: number | null;
  /** Of the few supplies that come into question, how many of these pedals each feeds; empty where they are many. */
  readonly units: readonly UnitCount[];
};

export type UnitCount = {
  readonly supply: SupplyId;
  /** How many there can be, owned ones and others; null where the conflict sets no bound. */
  readonly units: number | null;
  /** The most of the pedals that one unit feeds at once; null where it was not settled. */
  readonly most: number | null;
};

/** More supplies than these are not looked at one by one. */
const fewSupplies = 4;

/** The numbers for a conflict of this board and shop. */
export async function argumentFor(conflict: Conflict, kit: Kit, effort: Effort): Promise<Argument> {
  const asked = asConflict(conflict, kit);
  const limits = limitNames.filter((limit) => conflict.facts.some(({ kind }) => kind === limit));
  const least: Partial<Record<LimitName, number | null>> = {};
  for (const limit of limits) least[limit] = await leastOf(limit, conflict, asked, effort);
  const feeders = groupedFeeders(conflict, kit);
  const counts = limits.some((limit) => limit !== 'budget') && conflict.pedals.length > 1;
  return {
    conflict,
    feeders,
    refusals: unfeedable(conflict, feeders, kit),
    least,
    ...(counts ? { perSupply: await mostPerSupply(conflict.pedals, asked, effort) } : {}),
    mostSupplies: mostSupplies(feeders, kit),
    units: await unitCounts(conflict, feeders, asked, effort),
  };
}

/** The board and shop with the facts of the conflict and no others. */
function asConflict({ facts }: Conflict, kit: Kit): Kit {
  const others = factsOf(kit).filter((fact) => !facts.some((each) => sameFact(each, fact)));
  return relaxed(kit, others);
}

async function leastOf(limit: LimitName, { pedals }: Conflict, asked: Kit, effort: Effort): Promise<number | null> {
  const tier = limitedBy[limit];
  const lifted = withPolicy(asked, { [limit]: null });
  const solved = await ask(lifted, { tiers: [tier], required: new Set(pedals) }, effort);
  return solved.kind === 'plan' ? (solved.values.get(tier) ?? null) : null;
}

const withPedalsOnly = (pedals: readonly PedalId[], kit: Kit): Kit =>
  withoutPedals(
    kit.board.pedals.map(({ id }) => id).filter((id) => !pedals.includes(id)),
    kit,
  );

/** The most of the pedals that one supply feeds at once; null where it was not settled. */
async function mostPerSupply(pedals: readonly PedalId[], asked: Kit, effort: Effort): Promise<number | null> {
  const alone = withPolicy(asked, { budget: null, bricks: 1, sockets: null });
  const solved = await ask(withPedalsOnly(pedals, alone), { tiers: ['unpowered'], required: new Set() }, effort);
  return solved.kind === 'plan' ? pedals.length - solved.wiring.unpowered.length : null;
}

/** Sockets bound the number of supplies only where each of them takes one. */
function mostSupplies(feeders: Argument['feeders'], { board, supplies }: Kit): number | null {
  const { bricks, sockets } = board.policy;
  const feeding = new Set(feeders.flatMap((each) => each.supplies));
  const natures = [...supplies.values()].filter(({ id }) => feeding.has(id)).map(({ source }) => natureOf(source));
  const bound = (limit: number | null, of: 'bricks' | 'sockets'): number =>
    limit !== null && natures.every((nature) => nature[of] > 0) ? limit : Infinity;
  const most = Math.min(bound(bricks, 'bricks'), bound(sockets, 'sockets'));
  return most === Infinity ? null : most;
}

/** Where the pedals are several and the supplies few: what a unit of each can do. */
async function unitCounts(
  { pedals, facts }: Conflict,
  feeders: Argument['feeders'],
  asked: Kit,
  effort: Effort,
): Promise<readonly UnitCount[]> {
  const supplies = [...new Set(feeders.flatMap((each) => each.supplies))];
  if (pedals.length < 2 || supplies.length > fewSupplies || facts.some(({ kind }) => kind === 'budget')) return [];
  const counts: UnitCount[] = [];
  for (const supply of supplies)
    counts.push({
      supply,
      units: unitsOf(supply, asked),
      most: await mostPerSupply(pedals, withOneOf(supply, asked), effort),
    });
  return counts;
}

/** How many can be had as the conflict asks; null when that is any number. */
function unitsOf(supply: SupplyId, { board, supplies }: Kit): number | null {
  const owned = board.owned.supplies.get(supply) ?? 0;
  const sold = supplies.get(supply);
  if (sold === undefined) return owned;
  const all = owned + forSaleOf(sold);
  return all === Infinity ? null : all;
}

/** The shop without anything for sale, and one unit of the supply at hand. */
function withOneOf(supply: SupplyId, kit: Kit): Kit {
  const owned = { ...kit.board.owned, supplies: new Map([[supply, 1]]) };
  return withThings(withBoard(kit, { ...kit.board, owned }), unsold);
}

/** Pedals that the same supplies feed share an entry. */
function groupedFeeders({ pedals }: Conflict, kit: Kit): Argument['feeders'] {
  const feeders = feedersOf(kit);
  const suppliesFor = (pedal: PedalId): readonly SupplyId[] => feeders.get(pedal) ?? [];
  return groupBy(pedals, (pedal) => suppliesFor(pedal).join()).map((alike) => ({
    pedals: alike,
    supplies: suppliesFor(alike[0]),
  }));
}

/** What a pedal fails on without a fact of the conflict comes first: it alone is what would do. */
function unfeedable({ facts }: Conflict, feeders: Argument['feeders'], kit: Kit): Argument['refusals'] {
  const unfed = feeders.flatMap(({ pedals, supplies }) => (supplies.length === 0 ? pedals : []));
  const isFact = ({ rule }: Refusal): boolean => facts.some(({ kind }) => kind === rule);
  return kit.board.pedals
    .filter(({ id }) => unfed.includes(id))
    .map((pedal) => {
      const refusals = refusalsOf(pedal, kit);
      return { pedal: pedal.id, refusals: [...refusals.filter(isFact), ...refusals.filter((each) => !isFact(each))] };
    });
}
