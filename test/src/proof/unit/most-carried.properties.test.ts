import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { perPedalTier } from '../../../../src/domain/pedal-tier.js';
import type { Bank, Supply } from '../../../../src/domain/supply.js';
import { stockOf } from '../../../../src/proof/stock.js';
import { itemsOf } from '../../../../src/proof/unit/items.js';
import { mostCarriedBy } from '../../../../src/proof/unit/most-carried.js';
import { classesOf } from '../../../../src/proof/unit/pedal-class.js';
import { routesOver } from '../../../../src/proof/unit/routes.js';
import { unitShape } from '../../../../src/proof/unit/unit-shape.js';
import { routeCosts } from '../../../../src/proof/unit/values.js';
import type { Case } from '../../../support/arbitraries.js';
import { tinyCase } from '../../../support/arbitraries.js';
import { mostByTrial } from './contents.js';
import { share, trying } from '../../../support/runs.js';

const runs = 600;

/** Some tags in common, so that equal pedals are worth the same now and then. */
const tags = fc.array(fc.oneof(fc.integer({ min: -20, max: 100 }), fc.constantFrom(0, 50, 60)), {
  minLength: 4,
  maxLength: 4,
});
const worths = fc.record({
  tags,
  leads: fc.array(fc.oneof(fc.integer({ min: 0, max: 40 }), fc.constant(0)), { minLength: 30, maxLength: 30 }),
  exposed: fc.constantFrom<number>(0, 5, 20, 45),
  off: fc.constantFrom<number>(0, 1, 30),
});
type Drawn = typeof worths extends fc.Arbitrary<infer Value> ? Value : never;

/** How often a quick answer was above the exact one. */
const seenLoose = { count: 0 };

/** For every supply of the case: a way to ask for the most it carries, and one that tries everything. */
function carriersOf({ board, catalogue }: Case) {
  const { kinds } = stockOf(board, catalogue, false);
  const classes = classesOf(board.pedals);
  const routes = routesOver(kinds);
  const leadPrices = ({ leads }: Drawn) =>
    kinds.map(({ offers }, kind) => (offers.length === 0 ? Infinity : (leads[kind] ?? 0)));
  const parts = kinds.flatMap(({ parts: [part], offers }) => (part === undefined || offers.length === 0 ? [] : [part]));
  return [...board.gear.supplies, ...catalogue.supplies].map((supply) => {
    const shape = unitShape(supply, null, { policy: board.policy, classes, kinds, routes });
    const carried = shape === null ? null : mostCarriedBy(shape, classes);
    const trial = (drawn: Drawn, other: Partial<Case['board']> = {}, unit: Supply = supply): number | null => {
      const leads = leadPrices(drawn);
      const pedals = other.pedals ?? board.pedals;
      return mostByTrial(unit, { ...board, ...other }, parts, {
        tag: (pedal) => drawn.tags[pedals.indexOf(pedal)] ?? 0,
        lead: (part) => leads[kinds.findIndex((kind) => kind.parts.includes(part))] ?? 0,
        exposed: drawn.exposed,
        counted: perPedalTier(() => drawn.off),
      });
    };
    return {
      supply,
      expected: (drawn: Drawn) => trial(drawn),
      /** The rules without which more could be carried, or without which there would be less to carry. */
      bites: (drawn: Drawn): readonly string[] => {
        const value = trial(drawn);
        const quick = { pedals: board.pedals.map((pedal) => ({ ...pedal, startup: null })) };
        const unlimited = withBanks({ ...supply, total: null }, (bank) => ({ ...bank, total: null }));
        const others = {
          startup: trial(drawn, quick),
          alone: trial(drawn, { pedals: board.pedals.map((pedal) => ({ ...pedal, alone: false })) }),
          grounds: trial(drawn, { pedals: board.pedals.map((pedal) => ({ ...pedal, ground: 'negative' })) }),
          noise: trial({ ...drawn, exposed: 0 }),
          preferred: trial({ ...drawn, off: 0 }),
          chains: trial(drawn, { policy: { ...board.policy, chains: 'never' } }),
          joins: trial(
            drawn,
            {},
            withBanks(supply, (bank) => ({ ...bank, joins: [] })),
          ),
          totals: trial(drawn, {}, unlimited),
          together: trial(
            drawn,
            {},
            withBanks(supply, (bank) => ({ ...bank, switching: 'each' })),
          ),
        };
        const bitten = Object.entries(others).flatMap(([rule, other]) => (other === value ? [] : [rule]));
        // Where no output minds the startups, it is the totals that do.
        const onTotal = others.startup !== value && trial(drawn, quick, unlimited) === others.totals;
        return onTotal ? [...bitten, 'startupOnTotal'] : bitten;
      },
      most: (drawn: Drawn, enough: number) => {
        const leads = leadPrices(drawn);
        const items = itemsOf(
          classes,
          board.pedals.map((_, index) => drawn.tags[index] ?? 0),
        );
        const prices = {
          leads,
          routes: routeCosts(routes.sets, leads),
          exposed: drawn.exposed,
          newlyExposed: 0,
          moved: 0,
          ...perPedalTier(() => drawn.off),
        };
        if (carried === null) return null;
        const { bound, exactly } = carried(items, prices, enough);
        const exact = exactly();
        expect(bound).toBeGreaterThanOrEqual(exact);
        if (bound > exact) seenLoose.count += 1;
        return exact;
      },
    };
  });
}

const withBanks = (supply: Supply, change: (bank: Bank) => Bank): Supply => ({
  ...supply,
  banks: supply.banks.map(change),
});

/** How often each rule has to bite in so many runs. */
const leastBites = { chains: 40, joins: 20, totals: 15, grounds: 10, startup: 15, startupOnTotal: 5, alone: 15 };
const otherBites = { noise: 15, preferred: 30, together: 10 };

describe('the most that a unit can carry', () => {
  it('is what trying every content finds, whichever rule bites', () => {
    const bitten = new Map<string, number>();
    let positive = 0;
    fc.assert(
      fc.property(tinyCase, worths, (of, drawn) => {
        for (const { expected, bites, most } of carriersOf(of)) {
          const value = expected(drawn);
          const found = most(drawn, 0);
          // What can carry nothing under any tags has no one to ask.
          if (found === null) expect(value).toBeNull();
          else expect(found).toBe(Math.max(0, value ?? 0));
          if (value === null || value <= 0) continue;
          positive += 1;
          for (const rule of bites(drawn)) bitten.set(rule, (bitten.get(rule) ?? 0) + 1);
        }
      }),
      trying(4 * runs),
    );
    expect(positive).toBeGreaterThan(share(2 * runs));
    expect(seenLoose.count).toBeGreaterThan(share(runs / 60));
    for (const [rule, least] of Object.entries({ ...leastBites, ...otherBites }))
      expect([rule, (bitten.get(rule) ?? 0) >= share(least)]).toEqual([rule, true]);
  });

  it('is the same whatever was asked before, is told apart from what is not enough only, and may be below zero', () => {
    const seen = { above: 0, enough: 0, below: 0 };
    const questions = fc.array(fc.tuple(worths, fc.integer({ min: -150, max: 150 })), { minLength: 3, maxLength: 6 });
    fc.assert(
      fc.property(tinyCase, questions, fc.boolean(), (of, asked, lossy) => {
        for (const { expected, most } of carriersOf(of))
          for (const [drawn, enough] of asked) {
            // Now and then nothing is worth anything.
            const judged = lossy ? { ...drawn, tags: drawn.tags.map((tag) => tag - 100) } : drawn;
            const value = expected(judged);
            const found = most(judged, enough);
            if (found === null || value === null) continue;
            seen[value <= enough ? 'enough' : value < 0 ? 'below' : 'above'] += 1;
            expect(found).toBe(Math.max(enough, value));
          }
      }),
      trying(runs / 2),
    );
    expect(Math.min(seen.above, seen.enough, seen.below)).toBeGreaterThan(share(runs / 6));
  });

  it('is never too little for numbers too large to be added up exactly, and hardly too much', () => {
    let large = 0;
    fc.assert(
      fc.property(tinyCase, worths, fc.constantFrom(2 ** 43, 2 ** 45), (of, drawn, factor) => {
        const times = (value: number): number => value * factor;
        const huge = { ...drawn, tags: drawn.tags.map(times), leads: drawn.leads.map(times) };
        const judged = { ...huge, exposed: times(drawn.exposed), off: times(drawn.off) };
        for (const { expected, most } of carriersOf(of)) {
          const value = expected(judged) ?? 0;
          const found = most(judged, 0);
          if (found === null || value <= 0) continue;
          large += 1;
          expect(found).toBeGreaterThanOrEqual(value);
          expect(found - value).toBeLessThan(factor);
        }
      }),
      trying(runs / 4),
    );
    expect(large).toBeGreaterThan(share(runs / 10));
  });
});
