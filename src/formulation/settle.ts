import type { UnitRef } from '../domain/inlet.js';
import { perCountedTier } from '../domain/counted-tiers.js';
import type { Completed } from '../../solver/cover/program.js';
import { admits } from '../loadout/ground-mode.js';
import { likeOf, type Bench } from '../loadout/bench.js';
import { classesOfSort, inletSorts } from '../loadout/inlet-classes.js';
import { inletSortOf, type InletSort } from '../loadout/inlet-sort.js';
import type { Hung, Loadout } from '../loadout/loadout.js';
import { isIsolated, type SupplyUses } from '../loadout/supply-uses.js';
import { isUnit, unitsHeld } from '../loadout/today.js';
import { scalarValue, type ScalarObjective, type Measures, type SettledStep } from './scalar-objective.js';
import { loadoutMeasures, waysOn } from './loadout-measures.js';

import { mostLeftOut, type Question } from './question.js';

/**
 * A whole plan out of loadouts that feed every pedal at least once: pedals that are fed twice are taken off where that
 * costs the least, units and leads are counted and paid. Null where pedals are missing, a limit does not hold, or a pedal
 * that is fed twice cannot be taken off. Of inlets there are as many as units in use that have one.
 */
export function settle(
  loadouts: readonly Loadout[],
  question: Question,
  supplies: readonly SupplyUses[],
  objective: ScalarObjective,
  earlier: readonly SettledStep[],
): Completed<Loadout> | null {
  const trimmed = withoutSurplus(loadouts, question, supplies, objective);
  if (trimmed === null) return null;
  const measures = measuresOf(trimmed, question, supplies);
  if (measures === null) return null;
  const { budget, bricks, sockets } = question.bench.policy;
  if (measures.money > (budget ?? Infinity)) return null;
  if (measures.bricks > (bricks ?? Infinity) || measures.sockets > (sockets ?? Infinity)) return null;
  if (earlier.some((settled) => scalarValue(settled.objective, measures) > settled.value)) return null;
  return { value: scalarValue(objective, measures), contents: trimmed };
}

function withoutSurplus(
  loadouts: readonly Loadout[],
  question: Question,
  supplies: readonly SupplyUses[],
  objective: ScalarObjective,
): readonly Loadout[] | null {
  const { classes } = question.bench;
  let units = loadouts;
  const trim = (isInlet: boolean, surplusOf: (pedal: number) => number): boolean => {
    for (const [pedal, { inlet }] of classes.entries()) {
      if ((inlet !== null) !== isInlet) continue;
      for (let left = surplusOf(pedal); left > 0; left -= 1) {
        const fewer = withoutOne(pedal, units, question, supplies, objective);
        if (fewer === null) return false;
        units = fewer;
      }
    }
    units = units.filter(({ hung }) => hung.length > 0);
    return true;
  };
  // Inlets come last: a unit that has no pedal left needs none.
  const areFedOnce = trim(false, (pedal) => fedOf(pedal, units) - (classes[pedal]?.members.length ?? 0));
  return areFedOnce && trim(true, (pedal) => surplusInlets(pedal, units, question)) ? units : null;
}

/** How often pedals of a class are fed. */
function fedOf(pedal: number, loadouts: readonly Loadout[]): number {
  let fed = 0;
  for (const { hung } of loadouts)
    for (const each of hung) for (const way of waysOn(each)) if (way.pedal === pedal) fed += 1;
  return fed;
}

/** By how many inlets of a class more are fed than there are, or than units of its sort are in use. */
function surplusInlets(pedal: number, loadouts: readonly Loadout[], { bench, required }: Question): number {
  const { inlet = null, members = [], pinned = false } = bench.classes[pedal] ?? {};
  if (inlet === null) return 0;
  const fed = fedOf(pedal, loadouts);
  const spare = unneededInlets(inlet, loadouts, bench);
  const needed = pinned ? members.length : (required.get(pedal) ?? 0);
  return Math.max(fed - members.length, Math.min(spare, fed - needed));
}

/** By how many inlets of a sort more are fed than units with such an inlet are in use; below 0 where inlets are missing. */
function unneededInlets(sort: InletSort, loadouts: readonly Loadout[], bench: Bench): number {
  const fed = classesOfSort(bench, sort).reduce((sum, each) => sum + fedOf(each, loadouts), 0);
  return fed - loadouts.filter(({ supply, hung }) => hung.length > 0 && inletSortOf(supply) === sort).length;
}

/** The loadouts with one pedal of the class less: of all ways the one that leaves the least. */
function withoutOne(
  pedal: number,
  loadouts: readonly Loadout[],
  question: Question,
  supplies: readonly SupplyUses[],
  objective: ScalarObjective,
): readonly Loadout[] | null {
  const held = unitsHeld(question.today);
  let best: { readonly loadouts: readonly Loadout[]; readonly saved: number } | null = null;
  for (const [index, loadout] of loadouts.entries()) {
    for (const [at, hung] of loadout.hung.entries()) {
      const rest = hungWithout(pedal, hung, loadout, question, supplies);
      if (rest === null || (loadout.hung.length + rest.length === 1 && held.some((one) => isUnit(loadout, one))))
        continue;
      const after = { ...loadout, hung: loadout.hung.toSpliced(at, 1, ...rest) };
      const saved = weighed(loadout, question, objective) - weighed(after, question, objective);
      if (best === null || saved > best.saved) best = { loadouts: loadouts.with(index, after), saved };
    }
  }
  return best?.loadouts ?? null;
}

const weighed = (loadout: Loadout, { bench }: Question, objective: ScalarObjective): number => {
  if (loadout.hung.length === 0) return 0;
  const { measures, leads } = loadoutMeasures(loadout, bench);
  const money = [...leads].reduce(
    (sum, [kind, count]) => sum + count * (bench.kinds[kind]?.supplyOf.at(-1)?.price ?? 0),
    0,
  );
  return scalarValue(objective, { ...measures, money: money + (loadout.supply.price ?? 0), unpowered: 0 });
};

/** What is left on the output when one pedal of the class goes; null when it is not there or what is left is not allowed. */
function hungWithout(
  pedal: number,
  hung: Hung,
  { mode, supply }: Loadout,
  { bench }: Question,
  supplies: readonly SupplyUses[],
): readonly Hung[] | null {
  if (hung.kind === 'solo') return hung.use.pedal === pedal ? [] : null;
  const at = hung.places.findIndex((place) => place.pedal === pedal);
  if (at < 0) return null;
  const places = hung.places.toSpliced(at, 1);
  const [last] = places;
  if (places.length > 1 || last === undefined) return [{ ...hung, places }];
  const { output } = hung.pool;
  const isolated = isIsolated([output], supply);
  if (!isolated && (mode === null || !admits(mode, likeOf(last.pedal, bench)))) return null;
  const uses = supplies.find((each) => each.supply === supply);
  const use = uses?.solos.find(
    ({ outputs, ...solo }) =>
      solo.pedal === last.pedal &&
      outputs.length === 1 &&
      outputs[0]?.bank === output.bank &&
      outputs[0].setting === output.setting,
  );
  return use === undefined ? null : [{ kind: 'solo', use }];
}

/** What the loadouts add up to; null when there are not as many units or leads, or a pedal is missing that must be fed. */
function measuresOf(
  loadouts: readonly Loadout[],
  question: Question,
  supplies: readonly SupplyUses[],
): Measures | null {
  const { bench } = question;
  const all = loadouts.map((loadout) => loadoutMeasures(loadout, bench));
  const sum = (of: (each: (typeof all)[number]) => number): number => all.reduce((total, each) => total + of(each), 0);
  const unpowered = bench.classes.map(
    ({ members }, pedal) => members.length - sum(({ pedals }) => pedals.get(pedal) ?? 0),
  );
  if (unpowered.some((count, pedal) => count > mostLeftOut(question, pedal))) return null;
  if (inletSorts(bench).some((sort) => unneededInlets(sort, loadouts, bench) < 0)) return null;
  const isInUse = (held: UnitRef): boolean => loadouts.some((loadout) => isUnit(loadout, held));
  if (!unitsHeld(question.today).every(isInUse)) return null;
  const units = paidUnits(loadouts, supplies);
  const leads = bench.kinds.map(({ supplyOf, index }) =>
    paidLeads(
      supplyOf,
      sum((each) => each.leads.get(index) ?? 0),
    ),
  );
  if (units === null || leads.includes(null)) return null;
  return {
    unpowered: unpowered.reduce(
      (total, count, pedal) => (bench.classes[pedal]?.inlet === null ? total + count : total),
      0,
    ),
    money: leads.reduce<number>((total, price) => total + (price ?? 0), units),
    exposed: sum(({ measures }) => measures.exposed),
    newlyExposed: sum(({ measures }) => measures.newlyExposed),
    moved: unpowered.reduce(
      (total, count, pedal) => (bench.classes[pedal]?.berth === null ? total : total + count),
      sum(({ measures }) => measures.moved),
    ),
    bricks: sum(({ measures }) => measures.bricks),
    sockets: sum(({ measures }) => measures.sockets),
    ...perCountedTier((tier) => sum(({ measures }) => measures[tier])),
  };
}

function paidUnits(loadouts: readonly Loadout[], supplies: readonly SupplyUses[]): number | null {
  let money = 0;
  for (const { supply, unit, owned, forSale } of supplies) {
    const used = loadouts.filter((loadout) => loadout.supply === supply && loadout.unit === unit).length;
    const bought = Math.max(0, used - owned);
    if (bought > forSale) return null;
    money += bought * (supply.price ?? 0);
  }
  return money;
}

/** What so many leads of a kind cost, taken from its sources in their order; null when there are not so many. */
function paidLeads(
  sources: readonly { readonly price: number; readonly pieces: number }[],
  count: number,
): number | null {
  let left = count;
  let money = 0;
  for (const { price, pieces } of sources) {
    const taken = Math.min(left, pieces);
    money += taken * price;
    left -= taken;
  }
  return left > 0 ? null : money;
}
