import { kitOf } from '../../../src/domain/kit.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { perPedalTier } from '../../../src/domain/pedal-tier.js';
import { keepsCaps } from '../../../solver/cover/decisions.js';
import type { CoverColumn } from '../../../solver/cover/program.js';
import { choosingAims, tiersOf, type ChoosingAim } from '../../../src/domain/aim.js';
import {
  scalarValue,
  scalarObjectives,
  type ScalarObjective,
  type Measures,
  type SettledStep,
} from '../../../src/formulation/scalar-objective.js';
import { natureOf, type Nature, type Source } from '../../../src/domain/source.js';
import type { Features } from '../../../src/formulation/loadout-features.js';
import type { UnitGroup } from '../../../src/formulation/loadout-groups.js';
import { loadoutMeasures } from '../../../src/formulation/loadout-measures.js';
import { loadoutProgram } from '../../../src/formulation/loadout-program.js';
import { questionOf, type Question } from '../../../src/formulation/question.js';
import { loadoutPricer } from '../../../src/loadout/best-loadout.js';
import type { LeadKind } from '../../../src/loadout/lead-kinds.js';
import type { Loadout } from '../../../src/loadout/loadout.js';
import type { SupplyUses } from '../../../src/loadout/supply-uses.js';
import { tinyCase, type Case } from '../../support/arbitraries.js';
import { everyUnit, type Carried } from '../loadout/every-unit.js';
import { leadsCounted } from '../../support/brute-force-tiers.js';
import { share, trying } from '../../support/runs.js';

/** What one unit takes, in the words of the audit. */
type Taken = Omit<Carried, 'feeds'>;

/** The steps before one step of an aim, and that step. */
type Steps = {
  readonly question: Question;
  readonly objective: ScalarObjective;
  readonly earlier: readonly SettledStep[];
};

/** An aim's tiers, cut in two at a place; none come before the cut at 0. */
function stepsOf({ board, catalogue }: Case, aim: ChoosingAim, cut: number): Steps {
  const question = questionOf(kitOf(board, catalogue), { tiers: tiersOf(aim, board.policy), partial: true });
  const tiers = (from: number, to: number): readonly ScalarObjective[] =>
    from === to ? [] : scalarObjectives({ ...question, tiers: question.tiers.slice(from, to) });
  const [objective] = tiers(cut, question.tiers.length);
  if (objective === undefined) throw new RangeError('nothing comes after the cut');
  return { question, objective, earlier: tiers(0, cut).map((each) => ({ objective: each, value: 0 })) };
}

/** A lead's one price; nothing where it is paid by a row of its own. */
const onePrice = ({ supplyOf: [first] }: LeadKind): number => (first?.pieces === Infinity ? first.price : 0);

/** What a unit costs by itself, and where it has its power from. */
type Bought = { readonly price: number; readonly source: Source };

const pick = ({ bricks, sockets }: Nature): Pick<Nature, 'bricks' | 'sockets'> => ({ bricks, sockets });

const boughtOf = ({ price, uses }: UnitGroup): Bought => ({ price, source: uses.supply.source });

/** What a unit adds to a plan, but for the leads that have rows of their own. */
const measuresOf = (
  { leads, exposed, pedals: _, ...counted }: Taken,
  { price, source }: Bought,
  { bench }: Question,
): Measures => ({
  unpowered: 0,
  money: leads.reduce((sum, kind) => sum + onePrice(leadAt(kind, bench.kinds)), price),
  exposed,
  ...pick(natureOf(source)),
  ...leadsCounted(leads.map((kind) => leadAt(kind, bench.kinds))),
  ...counted,
});

function leadAt(kind: number, kinds: readonly LeadKind[]): LeadKind {
  const lead = kinds[kind];
  if (lead === undefined) throw new RangeError(`there is no lead kind ${kind}`);
  return lead;
}

/** How many pedals of each class a unit has. */
const countsOf = ({ pedals }: Taken): ReadonlyMap<number, number> =>
  new Map(pedals.map((pedal) => [pedal, pedals.filter((each) => each === pedal).length]));

/** How much of every feature a unit has. */
function amountsOf(taken: Taken, bought: Bought, features: Features, { question, earlier }: Steps): readonly number[] {
  const amounts = new Array<number>(features.count).fill(0);
  const add = (feature: number, amount: number): void => void (amounts[feature] = (amounts[feature] ?? 0) + amount);
  const measures = measuresOf(taken, bought, question);
  for (const pedal of taken.pedals) add(pedal, 1);
  for (const kind of taken.leads) add(features.leads + kind, 1);
  add(features.unit, 1);
  add(features.bricks, measures.bricks);
  add(features.sockets, measures.sockets);
  add(features.money, measures.money);
  earlier.forEach(({ objective }, step) => {
    add(features.earlier + step, scalarValue(objective, measures));
  });
  return amounts;
}

/** What the dearest unit costs by itself, in this step and by the duals of those before. */
function typicalCost({ question, objective, earlier }: Steps, scale: number, earlierDuals: readonly number[]): number {
  const bare = { pedals: [], leads: [0], exposed: 0, newlyExposed: 0, moved: 0, ...perPedalTier(() => 0) };
  const costs = question.supplies.map(({ supply }) => {
    const measures = measuresOf(
      question.bench.kinds.length === 0 ? { ...bare, leads: [] } : bare,
      { price: supply.price ?? 0, source: supply.source },
      question,
    );
    return earlier.reduce(
      (sum, step, index) => sum - (earlierDuals[index] ?? 0) * scalarValue(step.objective, measures),
      scale * scalarValue(objective, measures),
    );
  });
  return Math.max(scale, ...costs);
}

/** Dual prices of any size; those of leads make no lead cheaper than its cheapest piece nor dearer than one for sale. */
function dualsFrom(next: (most: number) => number, scale: number, features: Features, steps: Steps): Float64Array {
  const { question, objective, earlier } = steps;
  const duals = new Float64Array(features.count);
  const earlierDuals = earlier.map(() => -next(2) * next(1) * scale);
  const typical = typicalCost(steps, scale, earlierDuals);
  question.bench.classes.forEach((_, pedal) => (duals[pedal] = Math.round(((next(120) - 20) * typical) / 40)));
  duals[features.unit] = Math.round(((next(60) - 30) * typical) / 60);
  duals[features.bricks] = -Math.round((next(30) * typical) / 240);
  duals[features.sockets] = -Math.round((next(30) * typical) / 240);
  duals[features.money] = -next(3) * scale;
  duals.set(earlierDuals, features.earlier);
  // What one minor unit of money costs in all.
  const perMoney = earlier.reduce(
    (sum, settled, step) =>
      sum - ((duals[features.earlier + step] ?? 0) * settled.objective.weights.money) / settled.objective.moneyUnit,
    (scale * objective.weights.money) / objective.moneyUnit - (duals[features.money] ?? 0),
  );
  for (const kind of question.bench.kinds) {
    const [first] = kind.supplyOf;
    const unlimited = kind.supplyOf.find(({ pieces }) => pieces === Infinity);
    if (first === undefined || first === unlimited) continue;
    const dearest = unlimited?.price ?? first.price + 500;
    const price = first.price + Math.round(((dearest - first.price) * next(100)) / 100);
    duals[features.leads + kind.index] = -Math.round(perMoney * price);
  }
  return duals;
}

const worth = (amounts: readonly number[], cost: number, duals: Float64Array, scale: number): number =>
  amounts.reduce((sum, amount, feature) => sum + amount * (duals[feature] ?? 0), 0) - scale * cost;

function dense(column: CoverColumn<Loadout>, features: Features): readonly number[] {
  const amounts = new Array<number>(features.count).fill(0);
  for (const [feature, amount] of column.amounts) amounts[feature] = (amounts[feature] ?? 0) + amount;
  return amounts;
}

function takenBy(loadout: Loadout, { bench }: Question): Taken {
  const { pedals, leads, measures } = loadoutMeasures(loadout, bench);
  const repeated = (counts: ReadonlyMap<number, number>): readonly number[] =>
    [...counts].flatMap(([key, count]) => new Array<number>(count).fill(key));
  return { ...measures, pedals: repeated(pedals), leads: repeated(leads) };
}

/** How many pedals on it take a lead, for each pair of pedals and leads that is counted. */
const takingsOf = ({ hung }: Loadout, { pairs }: Features): readonly number[] =>
  pairs.map(({ pedal, lead }) => {
    const solos = hung.flatMap((each) => (each.kind === 'solo' ? [each.use] : []));
    const places = hung.flatMap((each) => (each.kind === 'chain' ? each.places : []));
    const own = [...solos, ...places].filter((way) => way.pedal === pedal).flatMap(({ route }) => route);
    const joins = solos.filter((use) => use.pedal === pedal).flatMap(({ join }) => join?.lead ?? []);
    return [...own, ...joins].filter((kind) => kind === lead).length;
  });

describe('the price of a column', () => {
  const numbers = fc.array(fc.nat({ max: 9_999 }), { minLength: 20, maxLength: 20, size: 'max' });

  it('is what its unit adds to a plan, and no unit is worth more than the bound', () => {
    const seen = { columns: 0, none: 0, owned: 0, bought: 0, cut: 0, chains: 0, capped: 0, taking: 0 };
    fc.assert(
      fc.property(tinyCase, fc.constantFrom(...choosingAims), fc.nat({ max: 4 }), numbers, (of, aim, cut, drawn) => {
        const steps = stepsOf(of, aim, cut);
        const { question } = steps;
        const pricer = new Map(question.supplies.map((uses) => [uses, loadoutPricer(uses, question.bench)]));
        const pricers = (uses: SupplyUses) => pricer.get(uses) ?? loadoutPricer(uses, question.bench);
        const { cover, groups, features } = loadoutProgram(
          question,
          question.supplies,
          steps.objective,
          steps.earlier,
          pricers,
        );
        let at = 0;
        const next = (most: number): number => (drawn[at++ % drawn.length] ?? 0) % (most + 1);
        const scale = 2 ** next(6);
        const duals = dualsFrom(next, scale, features, steps);
        const floor = next(1) * Math.round((next(100) * Math.max(scale, ...duals)) / 100);
        const worthOf = (taken: Taken, group: UnitGroup): number => {
          const cost = scalarValue(steps.objective, measuresOf(taken, boughtOf(group), question));
          return worth(amountsOf(taken, boughtOf(group), features, steps), cost, duals, scale);
        };
        for (const [index, group] of groups.entries()) {
          const caps = new Map(next(2) === 0 ? [[next(question.bench.classes.length - 1), next(1)]] : []);
          const { bound, columns } = cover.price({ group: index, duals, scale, floor, caps, effort: 'exact' });
          for (const column of columns) {
            const taken = takenBy(column.content, question);
            expect(column.group).toBe(index);
            expect(column.cost).toBe(scalarValue(steps.objective, measuresOf(taken, boughtOf(group), question)));
            const takings = takingsOf(column.content, features);
            expect(dense(column, features)).toEqual([
              ...amountsOf(taken, boughtOf(group), features, steps).slice(0, features.taking),
              ...takings,
            ]);
            if (takings.some((count) => count > 0)) seen.taking += 1;
            expect(worth(dense(column, features), column.cost, duals, scale)).toBeGreaterThan(floor);
            expect(keepsCaps(column.amounts, caps)).toBe(true);
            seen[group.owned ? 'owned' : 'bought'] += 1;
            if (steps.earlier.length > 0) seen.cut += 1;
            if (column.content.hung.some(({ kind }) => kind === 'chain')) seen.chains += 1;
          }
          const units = everyUnit(group.uses.supply, of, question);
          const held = units.filter((unit) => keepsCaps([...countsOf(unit)], caps));
          const most = Math.max(...held.map((unit) => worthOf(unit, group)));
          if (units.some((unit) => worthOf(unit, group) > Math.max(most, floor))) seen.capped += 1;
          expect(Math.max(bound, floor)).toBeGreaterThanOrEqual(most);
          // Where nothing is worth more than the floor, the bound must say so: that is what a proof rests on.
          if (most > floor) expect(columns.length).toBeGreaterThan(0);
          else expect(bound).toBeLessThanOrEqual(floor);
          seen[columns.length > 0 ? 'columns' : 'none'] += 1;
        }
      }),
      trying(500),
    );
    for (const [what, count] of Object.entries(seen)) expect([what, count > share(12)]).toEqual([what, true]);
  });
});
