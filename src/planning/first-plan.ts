import type { Board, Catalogue } from '../domain/board.js';
import type { Feed } from '../domain/plan.js';
import { namedFeeds, type LoadedUnit } from '../formulation/named-feeds.js';
import { questionOf, type Question } from '../formulation/question.js';
import { admits, type GroundMode } from '../loadout/ground-mode.js';
import { piecesOf } from '../loadout/lead-kinds.js';
import { placeItems, type Item } from '../loadout/placement.js';
import { supplyUses, type SupplyUses } from '../loadout/supply-uses.js';
import type { SoloUse } from '../loadout/uses.js';

/**
 * A plan made in one pass, for when the time runs out before the search has one: every pedal by itself on the first
 * output that is free, else on a further unit of the cheapest supply that can feed it. Nothing is claimed for it; budget
 * and other limits of the policy are not looked at. Null when a pedal finds no output.
 */
export function firstPlan(board: Board, catalogue: Catalogue, partial: boolean): readonly Feed[] | null {
  const question = questionOf(board, catalogue, { tiers: [], partial });
  const offered = question.offers.flatMap((offer) => supplyUses(offer, question.bench) ?? []);
  const draft: Draft = { question, offered: [...offered].sort(ownedFirst), units: [], leads: new Map() };
  const waiting = question.bench.classes.flatMap(({ members }, pedal) => members.map(() => pedal));
  const choices = new Map(
    waiting.map((pedal) => [pedal, offered.filter((uses) => usesFor(uses, pedal).length > 0).length]),
  );
  waiting.sort((a, b) => (choices.get(a) ?? 0) - (choices.get(b) ?? 0));
  const allPlaced = waiting.map((pedal) => placePedal(pedal, draft)).every((placed) => placed);
  return allPlaced || partial ? namedFeeds(draft.units.map(loadedUnit), question) : null;
}

type DraftUnit = {
  readonly uses: SupplyUses;
  readonly mode: GroundMode | null;
  items: readonly (Item & { use: SoloUse })[];
};
type Draft = {
  readonly question: Question;
  readonly offered: readonly SupplyUses[];
  readonly units: DraftUnit[];
  /** How many leads of each kind are in use. */
  readonly leads: Map<number, number>;
};

const ownedFirst = (a: SupplyUses, b: SupplyUses): number =>
  Number(b.owned > 0) - Number(a.owned > 0) || (a.supply.price ?? 0) - (b.supply.price ?? 0);

const usesFor = (uses: SupplyUses, pedal: number): readonly SoloUse[] =>
  uses.solos.filter((use) => use.pedal === pedal);

const loadedUnit = ({ uses, items }: DraftUnit): LoadedUnit => ({
  supply: uses.supply,
  hung: items.map(({ use }) => ({ kind: 'solo', use })),
});

function placePedal(pedal: number, draft: Draft): boolean {
  if (draft.units.some((unit) => hang(pedal, unit, draft))) return true;
  for (const uses of draft.offered) {
    const inUse = draft.units.filter((unit) => unit.uses === uses).length;
    if (inUse >= uses.owned + uses.forSale) continue;
    for (const mode of loosestModes(uses)) {
      const unit: DraftUnit = { uses, mode, items: [] };
      if (!hang(pedal, unit, draft)) continue;
      draft.units.push(unit);
      return true;
    }
  }
  return false;
}

/** The modes that admit the most, one for each sign of the ground. */
const loosestModes = ({ modes }: SupplyUses): readonly (GroundMode | null)[] =>
  modes.length === 0 ? [null] : modes.filter(({ noise }) => noise === 'any' || noise === 'noisy');

function hang(pedal: number, unit: DraftUnit, { question, leads }: Draft): boolean {
  const like = question.bench.classes[pedal]?.like;
  if (like === undefined) return false;
  for (const use of usesFor(unit.uses, pedal)) {
    const needed = [...use.route, ...(use.join === null ? [] : [use.join.lead])];
    const inStock = needed.every((kind) => {
      const lead = question.bench.kinds[kind];
      return lead !== undefined && (leads.get(kind) ?? 0) < piecesOf(lead);
    });
    const isolated = use.outputs.every(({ bank }) => unit.uses.supply.banks[bank]?.isolated === true);
    if (!inStock || (!isolated && (unit.mode === null || !admits(unit.mode, like)))) continue;
    const item = { outputs: use.outputs, mode: isolated ? null : unit.mode, weights: use.weights, sole: 0, use };
    if (placeItems(unit.uses, [unit.mode], [...unit.items, item]) === null) continue;
    unit.items = [...unit.items, item];
    for (const kind of needed) leads.set(kind, (leads.get(kind) ?? 0) + 1);
    return true;
  }
  return false;
}
