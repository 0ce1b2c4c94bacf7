import { rankedTiersOf, type ChoosingAim } from '../../domain/aim.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import { everyFeed, type Feed } from '../../domain/plan.js';
import type { PedalId, SupplyId } from '../../domain/quantities.js';
import { isOwnSupplyOf } from '../../domain/own-adapter.js';
import { isOfOnePedal } from '../../domain/source.js';
import type { Supply } from '../../domain/supply.js';
import type { Violation } from '../../domain/violation.js';
import { hasEnded, type Effort } from '../../formulation/optimiser.js';
import { pinnedQuestion, type Pin } from '../../formulation/pinned-question.js';
import { supplyOffers } from '../../loadout/offers.js';
import { checkOutput } from '../check/check-output.js';
import { withBoard } from '../../domain/changed-kit.js';
import { bankOfOutput, outputsOf, type Kit } from '../../domain/kit.js';
import { ask } from '../asking/ask.js';
import { conflictOf, type Conflict } from '../conflict/conflict.js';
import { differencesOf, type TierDifference } from './difference.js';
import { within } from '../asking/within.js';

/** What it would take to have the pedal elsewhere, with everything else arranged anew as well as can be. */
export type SeatVerdict =
  /** The best plan with it there, and the tiers in which that is worse, or none where it is as good. */
  | { readonly kind: 'plan'; readonly wiring: JudgedPlan; readonly differences: readonly TierDifference[] }
  /** It cannot hang there whatever else does: what the audit has against it. */
  | { readonly kind: 'forbidden'; readonly findings: readonly Violation[] }
  /** It can, but then these pedals cannot all be powered; null where what is in the way was not settled. */
  | { readonly kind: 'impossible'; readonly conflict: Conflict | null }
  | { readonly kind: 'unknown' };

/** Outputs of one bank, which are alike, or all outputs of a supply that the plan does not use. */
export type Elsewhere = {
  readonly supply: SupplyId;
  readonly bank: number | null;
  readonly outputs: readonly number[];
  readonly verdict: SeatVerdict;
};

/** Why a pedal sits where it does. */
export type SeatExplanation = {
  readonly feed: Feed;
  /** The other outputs of its bank: it could hang on any of them in exchange for nothing. */
  readonly alike: readonly number[];
  /** Elsewhere on the supplies that the plan uses, then on each other one that has an output for it. */
  readonly elsewhere: readonly Elsewhere[];
  /** Supplies that can be had and have no output for it. */
  readonly unfit: readonly SupplyId[];
};

/** What every other place would cost, or break. */
export async function seatOf(
  pedal: PedalId,
  wiring: JudgedPlan,
  aim: ChoosingAim,
  kit: Kit,
  effort: Effort,
): Promise<{ readonly seat: SeatExplanation; readonly whole: boolean }> {
  const feed = wiring.feeds.find((each) => each.pedal === pedal);
  if (feed === undefined) throw new RangeError(`the pedal "${pedal}" is not powered`);
  const supplies = suppliesToHave(kit, pedal);
  const inUse = new Set(everyFeed(wiring).map(({ supply }) => supply));
  const hers = supplies.find(({ id }) => id === feed.supply);
  const here = hers === undefined ? undefined : bankOfOutput(hers, feed.outputs[0] ?? 0);
  const trial: Trial = { pedal, wiring, aim, kit, effort };
  const elsewhere: Elsewhere[] = [];
  const unfit: SupplyId[] = [];
  for (const supply of supplies.filter(({ id }) => inUse.has(id))) {
    for (const [index, bank] of supply.banks.entries())
      if (bank !== here) elsewhere.push(await placed(supply, index, trial));
  }
  const others = supplies
    .filter(({ id }) => !inUse.has(id))
    .sort((one, other) => (one.price ?? 0) - (other.price ?? 0));
  for (const supply of others) {
    if (hasUse({ pedal, supply: supply.id, bank: null }, trial)) elsewhere.push(await placed(supply, null, trial));
    else unfit.push(supply.id);
  }
  const alike = here === undefined ? [] : outputsOf(here).filter((output) => !feed.outputs.includes(output));
  return {
    seat: { feed, alike, elsewhere, unfit },
    whole: elsewhere.every(({ verdict }) => verdict.kind !== 'unknown'),
  };
}

/** The supplies that are owned or in stock, the catalogue's first, without what came with other pedals. */
const suppliesToHave = (kit: Kit, pedal: PedalId): readonly Supply[] =>
  supplyOffers(kit).flatMap(({ supply, owned, forSale }) =>
    owned + forSale > 0 && !isAnothers(supply, pedal, kit) ? [supply] : [],
  );

const isAnothers = (supply: Supply, id: PedalId, { board }: Kit): boolean =>
  isOfOnePedal(supply.source) && !board.pedals.some((pedal) => pedal.id === id && isOwnSupplyOf(supply, pedal));

type Trial = {
  readonly pedal: PedalId;
  readonly wiring: JudgedPlan;
  readonly aim: ChoosingAim;
  readonly kit: Kit;
  readonly effort: Effort;
};

async function placed(supply: Supply, bank: number | null, trial: Trial): Promise<Elsewhere> {
  const banks = bank === null ? supply.banks : supply.banks.slice(bank, bank + 1);
  const outputs = banks.flatMap(outputsOf);
  return { supply: supply.id, bank, outputs, verdict: await verdictOn(supply, bank, outputs, trial) };
}

async function verdictOn(
  supply: Supply,
  bank: number | null,
  outputs: readonly number[],
  trial: Trial,
): Promise<SeatVerdict> {
  const { pedal, wiring, aim, kit, effort } = trial;
  const pin: Pin = { pedal, supply: supply.id, bank };
  if (!hasUse(pin, trial)) return { kind: 'forbidden', findings: findingsAt(supply, outputs[0] ?? 1, pedal, kit) };
  if (hasEnded(effort)) return { kind: 'unknown' };
  const solved = await ask(kit, { tiers: rankedTiersOf(aim, kit.board.policy), pin }, effort);
  switch (solved.kind) {
    case 'stopped':
      return { kind: 'unknown' };
    case 'impossible':
      return { kind: 'impossible', conflict: await whyNot(pin, kit, effort) };
    case 'plan': {
      const differences = differencesOf(wiring.score, solved.wiring.score, aim, kit.board.policy);
      return { kind: 'plan', wiring: solved.wiring, differences };
    }
  }
}

/** How long what is in the way of one place is sought, in milliseconds. */
const patienceMs = 1_500;

/** What is in the way there; null when no set from which nothing can be taken away was found in time. */
async function whyNot(pin: Pin, kit: Kit, effort: Effort): Promise<Conflict | null> {
  const conflict = await within(patienceMs, effort, (limited) => conflictOf(kit, limited, { pin }));
  return conflict?.size === 'open' ? null : conflict;
}

/** Whether the pedal can hang there at all, alone or on a chain. */
function hasUse(pin: Pin, { kit, effort }: Trial): boolean {
  const { bench, supplies } = pinnedQuestion(kit, { tiers: [], partial: false }, pin, effort.workings?.tables);
  const pedal = bench.classes.findIndex(({ pinned }) => pinned);
  return supplies.some(
    ({ solos, chains }) =>
      solos.some((use) => use.pedal === pedal) ||
      chains.some(({ places }) => places.some((use) => use.pedal === pedal)),
  );
}

/** What the audit has against the pedal alone on an output, at the setting at which that is least. */
function findingsAt(supply: Supply, output: number, pedal: PedalId, kit: Kit): readonly Violation[] {
  const alone = withBoard(kit, { ...kit.board, wiring: [] });
  const [best] = checkOutput(alone, { pedal, supply: supply.id, unit: 1, output }).trials;
  return best?.findings ?? [];
}
