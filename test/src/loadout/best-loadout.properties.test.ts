import { kitOf } from '../../../src/domain/kit.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { perPedalTier } from '../../../src/domain/pedal-tier.js';
import { audit } from '../../../src/audit/audit.js';
import type { Board } from '../../../src/domain/board.js';
import { loadoutMeasures } from '../../../src/formulation/loadout-measures.js';
import { namedFeeds } from '../../../src/formulation/named-feeds.js';
import { questionOf, type Question } from '../../../src/formulation/question.js';
import { loadoutPricer, type LoadoutPricer } from '../../../src/loadout/best-loadout.js';
import type { LeadKind } from '../../../src/loadout/lead-kinds.js';
import type { Loadout } from '../../../src/loadout/loadout.js';
import type { LoadoutDuals } from '../../../src/loadout/loadout-duals.js';
import { berthsOf, nothingToday } from '../../../src/loadout/today.js';
import { tinyCase, type Case } from '../../support/arbitraries.js';
import { wiredCase } from '../../support/arbitrary-wirings.js';
import { exposedBefore } from '../../support/brute-force-moves.js';
import { everyUnit, worthOf } from './every-unit.js';
import { share, trying } from '../../support/runs.js';

/** Numbers from which duals are made, so that a case may have any number of pedal classes and lead kinds. */
type Draw = { readonly next: (most: number) => number };

const draws: fc.Arbitrary<() => Draw> = fc
  .array(fc.nat(9_999), { minLength: 24, maxLength: 24, size: 'max' })
  .map((numbers) => () => {
    let at = 0;
    return { next: (most) => (numbers[at++ % numbers.length] ?? 0) % (most + 1) };
  });

/**
 * Dual prices under which an adapter costs its price or more: routes that cannot be needed are left out on that ground. Chain leads
 * may be worth more than they cost, as where a case asks for so many of them. Pedals may be worth less than nothing, and
 * many are worth the same.
 */
function dualsFrom({ next }: Draw, { bench }: Question, scale: number): LoadoutDuals {
  const [money, parts] = [next(2), next(20) * scale];
  const pedalTag = [
    () => (next(60) - 12) * 50 * scale,
    () => next(3) * 400 * scale,
    () => 900 * scale,
    () => (next(9_999) - 900) * scale,
  ][next(3)];
  return {
    pedals: Float64Array.from(bench.classes, () => pedalTag?.() ?? 0),
    leads: Float64Array.from(bench.kinds, (kind) => {
      const bonus = kind.role.kind === 'chain' && next(2) === 0 ? next(40) * 50 * scale : 0;
      return parts + money * scale * leadPrice(kind, next(100)) - bonus;
    }),
    ...perPedalTier(() => next(2) * next(10) * 20 * scale),
    exposed: next(3) * next(20) * 20 * scale,
    newlyExposed: next(3) * next(20) * 20 * scale,
    moved: next(3) * next(20) * 20 * scale,
  };
}

/** Between the cheapest piece's price and that of a piece that never runs out, in so many hundredths of the way. */
function leadPrice({ supplyOf }: LeadKind, share: number): number {
  const least = supplyOf[0]?.price ?? 0;
  const most = supplyOf.find(({ pieces }) => pieces === Infinity)?.price ?? least + 500;
  return least + Math.round((share * (most - least)) / 100);
}

/** A board on which nothing limits a plan, and on which there is more than enough of everything. */
function unlimited({ board, catalogue }: Case): Board {
  const plenty = <Id>(things: readonly { readonly id: Id }[]) => new Map(things.map(({ id }) => [id, 99]));
  return {
    ...board,
    policy: { ...board.policy, budget: null, bricks: null, sockets: null },
    owned: {
      supplies: plenty([...board.gear.supplies, ...catalogue.supplies]),
      parts: plenty([...board.gear.parts, ...catalogue.parts]),
    },
  };
}

/** What the audit finds in a unit by itself. */
function faultsOf(loadout: Loadout, given: Case, { today }: Question): readonly string[] {
  const board = unlimited(given);
  const question = questionOf(kitOf(board, given.catalogue), { tiers: ['cost'], partial: true, today });
  const feeds = namedFeeds([loadout], question);
  const { violations, malformed } = audit(board, given.catalogue, feeds, { partial: true });
  return [...violations, ...malformed].map(({ message }) => message);
}

const measured = (loadout: Loadout, { bench }: Question) => {
  const { pedals, leads, measures } = loadoutMeasures(loadout, bench);
  const list = (counts: ReadonlyMap<number, number>): readonly number[] =>
    [...counts].flatMap(([key, count]) => Array.from({ length: count }, () => key));
  return { pedals: list(pedals), leads: list(leads), ...measures };
};

/** Raises the floor to what is found until nothing is: the last floor is then the most, if the bound says so. */
function climb(pricer: LoadoutPricer, duals: LoadoutDuals, counts: readonly number[], floor: number) {
  const found: { readonly loadout: Loadout; readonly value: number }[] = [];
  const bounds: { readonly floor: number; readonly bound: number }[] = [];
  for (let most = floor; ;) {
    const { bound, loadouts } = pricer.best(duals, counts, most);
    bounds.push({ floor: most, bound });
    const better = loadouts.filter(({ value }) => value > most);
    if (better.length === 0) return { found, bounds, most, exact: bound <= most };
    found.push(...better);
    most = Math.max(...better.map(({ value }) => value));
  }
}

/** With a wiring it matters who stays; some of those who are plugged in must. */
function questionFor({ board, catalogue }: Case, { next }: Draw): Question {
  const { wiring } = board;
  const pinned = wiring.filter(() => next(5) === 0).map(({ pedal }) => pedal);
  const today =
    wiring.length === 0
      ? nothingToday
      : { berths: berthsOf(wiring), exposed: exposedBefore(board, catalogue), pinned: new Set(pinned) };
  return questionOf(kitOf(board, catalogue), { tiers: ['cost'], partial: true, today });
}

const counted = { asked: 0, none: 0, found: 0, chains: 0, joins: 0, below: 0, raised: 0 };
const cases = [
  { of: 'a board', given: tinyCase, scale: 1, runs: 700, more: {} },
  { of: 'a board', given: tinyCase, scale: 2 ** 20, runs: 700, more: {} },
  {
    of: 'a board that is plugged already',
    given: wiredCase,
    scale: 2 ** 10,
    runs: 700,
    more: { stays: 0, inUse: 0 },
  },
] as const;

describe('the best loadout of a supply', () => {
  it.each(cases)('is what trying everything finds for $of, under dual prices in steps of $scale', (of) => {
    const { scale } = of;
    const seen: Record<string, number> = { ...counted, ...of.more };
    const count = (what: string, by = 1): void => void (seen[what] = (seen[what] ?? 0) + by);
    const inexact: unknown[] = [];
    fc.assert(
      fc.property(of.given, draws, (given, drawn) => {
        const draw = drawn();
        const question = questionFor(given, draw);
        const { bench } = question;
        const counts = bench.classes.map(({ members }) => members.length);
        for (const uses of question.supplies) {
          const all = everyUnit(uses.supply, given, question, uses.unit);
          const pricer = loadoutPricer(uses, bench);
          for (let round = 0; round < 4; round += 1) {
            const duals = dualsFrom(draw, question, scale);
            const truth = Math.max(...all.map((carried) => worthOf(carried, duals)));
            const floor = [0, -1, truth - 1, truth, Math.max(0, truth - draw.next(40) * scale)][draw.next(4)] ?? 0;
            const { found, bounds, most, exact } = climb(pricer, duals, counts, floor);
            count('asked');
            count(found.length === 0 ? 'none' : 'found');
            if (floor < 0) count('below');
            if (found.length > 1) count('raised');
            if (uses.unit !== null) count('inUse');
            bounds.push({ floor, bound: pricer.best(duals, counts, floor, 'quick').bound });
            // Where nothing is worth more than the floor, a bound may say no more than that.
            for (const asked of bounds) expect(Math.max(asked.bound, asked.floor)).toBeGreaterThanOrEqual(truth);
            if (!exact) inexact.push({ scale, truth, floor });
            else expect(most).toBe(Math.max(truth, floor));
            for (const { loadout, value } of found) {
              const measures = measured(loadout, question);
              expect(worthOf(measures, duals)).toBeGreaterThanOrEqual(value);
              expect(value).toBeLessThanOrEqual(truth);
              expect(faultsOf(loadout, given, question)).toEqual([]);
              if (loadout.hung.some(({ kind }) => kind === 'chain')) count('chains');
              if (loadout.hung.some((hung) => hung.kind === 'solo' && hung.use.join !== null)) count('joins');
              if (uses.unit !== null && measures.moved < measures.pedals.length) count('stays');
            }
          }
        }
      }),
      trying(of.runs),
    );
    expect(inexact).toEqual([]);
    for (const [what, times] of Object.entries(seen)) expect([what, times > share(5)]).toEqual([what, true]);
  });
});
