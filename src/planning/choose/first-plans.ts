import { isFed } from '../../domain/inlet.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Kit } from '../../domain/kit.js';
import type { Feed } from '../../domain/plan.js';
import { namedFeeds } from '../../formulation/named-feeds.js';
import type { Question } from '../../formulation/question.js';
import { likeOf } from '../../loadout/bench.js';
import { admits, exposedIn, takesThePlace, type GroundMode } from '../../loadout/ground-mode.js';
import { piecesOf } from '../../loadout/lead-kinds.js';
import { FillingUnit, type PlacedItem } from '../../loadout/placement.js';
import { isIsolated, type SupplyUses } from '../../loadout/supply-uses.js';
import type { SoloUse } from '../../loadout/uses.js';
import { judgingOf, questionFor, type Ask } from '../asking/ask.js';
import { auditedIfSound } from '../asking/audited.js';
import { keepsPinned } from '../asking/keeps-pinned.js';

/**
 * Plans made in one pass each, for when the time runs out before the search has one: again and again the best next unit,
 * every pedal by itself on an output, without supplies that are fed by others. Once the best unit feeds pedals at the least money each, noise included, and once it
 * feeds the most pedals, which needs fewer units. Nothing is claimed for them; budget and other limits of the policy are not
 * looked at. A plan that leaves pedals out is only among them when the plan may be partial.
 */
function firstPlans(question: Question): readonly (readonly Feed[])[] {
  return [moneyEach, fewestUnits].flatMap((rate) => {
    const feeds = onePass(rate, question);
    return feeds === null ? [] : [feeds];
  });
}

/** Those of them that keep the limits of the policy and what is pinned, too; where a plan may be partial, the one without a pedal always does. */
export const quickPlans = (kit: Kit, asked: Ask): readonly JudgedPlan[] =>
  [...firstPlans(questionFor(kit, asked)), ...(asked.partial === true ? [[]] : [])]
    .flatMap((feeds) => auditedIfSound(judgingOf(kit, asked), feeds) ?? [])
    .filter((plan) => asked.today === undefined || keepsPinned(plan, asked.today));

/** What counts against a unit: the smaller, the better. */
type Rate = (unit: { readonly cost: number; readonly pedals: number }) => number;

const moneyEach: Rate = ({ cost, pedals }) => cost / pedals;

/** The most pedals first; among as many, the least money. */
const fewestUnits: Rate = ({ cost, pedals }) => cost / (cost + 1) - pedals;

function onePass(rate: Rate, question: Question): readonly Feed[] | null {
  const chosen: FilledUnit[] = [];
  let waiting = question.bench.classes.flatMap(({ members, inlet }, pedal) =>
    inlet === null ? members.map(() => pedal) : [],
  );
  let leads: LeadCounts = new Map();
  while (waiting.length > 0) {
    const best = bestUnit(rate, { chosen, waiting, leads, question });
    if (best === null) break;
    chosen.push(best);
    ({ waiting, leads } = best);
  }
  if (waiting.length > 0 && !question.partial) return null;
  const units = chosen.map(({ uses, hung }) => ({
    supply: uses.supply,
    unit: uses.unit,
    hung: hung.map((use) => ({ kind: 'solo' as const, use })),
  }));
  return namedFeeds(units, question);
}

/** How many leads of each kind are in use. */
type LeadCounts = ReadonlyMap<number, number>;

type FilledUnit = {
  readonly uses: SupplyUses;
  readonly hung: readonly SoloUse[];
  /** The pedals that it leaves to others, by their class. */
  readonly waiting: number[];
  readonly leads: LeadCounts;
};

type Draft = {
  readonly chosen: readonly FilledUnit[];
  readonly waiting: readonly number[];
  readonly leads: LeadCounts;
  readonly question: Question;
};

/** The next unit that is rated best; null when none feeds any pedal. */
function bestUnit(rate: Rate, draft: Draft): FilledUnit | null {
  let best: { readonly unit: FilledUnit; readonly rated: number } | null = null;
  for (const uses of draft.question.supplies.filter(({ supply }) => !isFed(supply))) {
    const inUse = draft.chosen.filter((unit) => unit.uses === uses).length;
    if (inUse >= uses.owned + uses.forSale) continue;
    const price = inUse < uses.owned ? 0 : (uses.supply.price ?? 0);
    for (const mode of uses.modes.length === 0 ? [null] : uses.modes) {
      const unit = filled(uses, mode, draft);
      if (unit.hung.length === 0) continue;
      const rated = rate({ cost: price + noiseOf(unit, mode, draft.question), pedals: unit.hung.length });
      if (best === null || rated < best.rated) best = { unit, rated };
    }
  }
  return best?.unit ?? null;
}

/** What the pedals that the mode exposes count for. */
function noiseOf({ uses, hung }: FilledUnit, mode: GroundMode | null, { bench }: Question): number {
  const exposed = hung.filter(({ pedal, outputs }) => {
    return mode !== null && !isIsolated(outputs, uses.supply) && exposedIn(mode, likeOf(pedal, bench));
  });
  return exposed.length * bench.policy.noisePrice;
}

/** A unit with as many of the waiting pedals as go on it, one after the other, those with the fewest ways first. */
function filled(uses: SupplyUses, mode: GroundMode | null, { waiting, leads, question }: Draft): FilledUnit {
  const unit = new FillingUnit(uses, mode);
  const taken = new Map(leads);
  const hung: SoloUse[] = [];
  const left: number[] = [];
  const waysOf = (pedal: number): readonly SoloUse[] => uses.solos.filter((use) => use.pedal === pedal);
  const order = [...waiting].sort((a, b) => waysOf(a).length - waysOf(b).length);
  for (const pedal of order) {
    const use = waysOf(pedal).find((each) => hangs(each, unit, mode, taken, question));
    if (use === undefined) {
      left.push(pedal);
      continue;
    }
    unit.add(itemOf(use, mode, uses, question), hung.length);
    hung.push(use);
    for (const kind of leadsOf(use)) taken.set(kind, (taken.get(kind) ?? 0) + 1);
  }
  return { uses, hung, waiting: left, leads: taken };
}

const leadsOf = (use: SoloUse): readonly number[] => [...use.route, ...(use.join === null ? [] : [use.join.lead])];

function itemOf(use: SoloUse, mode: GroundMode | null, uses: SupplyUses, { bench }: Question): PlacedItem {
  const common = isIsolated(use.outputs, uses.supply) ? null : mode;
  const sole = common !== null && takesThePlace(common, likeOf(use.pedal, bench));
  return { outputs: use.outputs, mode: common, weights: use.weights, sole: sole ? 1 : 0 };
}

function hangs(
  use: SoloUse,
  unit: FillingUnit,
  mode: GroundMode | null,
  taken: LeadCounts,
  question: Question,
): boolean {
  const { bench } = question;
  const item = itemOf(use, mode, unit.uses, question);
  const inStock = leadsOf(use).every((kind) => {
    const lead = bench.kinds[kind];
    return lead !== undefined && (taken.get(kind) ?? 0) < piecesOf(lead);
  });
  return inStock && (item.mode === null || admits(item.mode, likeOf(use.pedal, bench))) && unit.fits(item);
}
