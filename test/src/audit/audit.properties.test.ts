import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { minorUnits } from '../../../src/domain/quantities.js';
import { faults, judge, type Case } from './cases.js';
import { tightCase } from './tight-wirings.js';
import { share, trying } from '../../support/runs.js';

const runs = 400;

describe('an audit', () => {
  it('finds nothing wrong with a wiring that uses every limit up', () => {
    fc.assert(
      fc.property(tightCase, (of) => {
        expect(judge(of)).toMatchObject({ violations: [], malformed: [], missing: [] });
      }),
      trying(runs),
    );
  });

  it('does not depend on the order of the feeds', () => {
    const shuffledCase = tightCase.chain((of) =>
      fc.record({
        of: fc.constant(of),
        feeds: fc.shuffledSubarray([...of.feeds], { minLength: of.feeds.length }),
        spoiled: fc.boolean(),
      }),
    );
    fc.assert(
      fc.property(shuffledCase, ({ of, feeds, spoiled }) => {
        // A spoiled case has something to say: no lead or limit is left.
        const judged = spoiled ? { ...of, parts: [], policy: { ...of.policy, bricks: 0 } } : of;
        expect(judge({ ...judged, feeds })).toEqual(judge(judged));
      }),
      trying(runs),
    );
  });

  it('names the limit that is lowered by the smallest amount', () => {
    const exercised = { budget: 0, bricks: 0, stock: 0, total: 0, startup: 0, parts: 0 };
    fc.assert(
      fc.property(tightCase, (of) => {
        const { budget, bricks } = of.policy ?? {};
        if (typeof budget === 'number' && budget > 0) {
          exercised.budget += 1;
          expect(faults({ ...of, policy: { ...of.policy, budget: minorUnits(budget - 1) } })).toEqual(['limit']);
        }
        if (typeof bricks === 'number') {
          exercised.bricks += 1;
          expect(faults({ ...of, policy: { ...of.policy, bricks: bricks - 1 } })).toEqual(['limit']);
          expect(faults({ ...of, policy: { ...of.policy, sockets: bricks - 1 } })).toEqual(['limit']);
        }
        const unowned = of.supplies.filter((each) => each.stock === 1);
        if (unowned.length > 0) {
          exercised.stock += 1;
          const supplies = of.supplies.map((each) => ({ ...each, stock: 0 }));
          expect(faults({ ...of, supplies })).toEqual(unowned.map(() => 'stock'));
        }
        const used = (of.parts ?? []).filter((each) => (each.stock ?? 0) > 0);
        if (used.length > 0) {
          exercised.parts += 1;
          const parts = (of.parts ?? []).map((each) => ({ ...each, stock: Math.max(0, (each.stock ?? 0) - 1) }));
          expect(faults({ ...of, parts })).toEqual(used.map(() => 'stock'));
        }
        const lowered = judge({ ...of, supplies: of.supplies.map(lowerTotal) });
        for (const { id } of of.supplies) {
          // The loads with their factor use it up, or what is taken at switch-on, or both.
          const broken = lowered.violations.filter(({ place }) => place?.supply === id).map(({ rule }) => rule);
          expect([['total'], ['startup'], ['startup', 'total']]).toContainEqual(broken);
          for (const rule of ['total', 'startup'] as const) if (broken.includes(rule)) exercised[rule] += 1;
        }
        expect(lowered.violations.filter(({ place }) => place?.outputs.length !== 0)).toEqual([]);
      }),
      trying(runs),
    );
    for (const count of Object.values(exercised)) expect(count).toBeGreaterThan(share(runs / 4));
  });
});

function lowerTotal(of: Case['supplies'][number]): Case['supplies'][number] {
  if (of.total === null) return of;
  const { total } = of;
  return {
    ...of,
    total:
      total.kind === 'current'
        ? { ...total, microamps: (total.microamps - 1) as typeof total.microamps }
        : { ...total, milliwatts: (total.milliwatts - 1) as typeof total.milliwatts },
  };
}

describe('taking one feed out of a sound wiring', () => {
  const removal = tightCase.chain((of) =>
    fc.record({ of: fc.constant(of), index: fc.nat({ max: of.feeds.length - 1 }) }),
  );
  const sharing = (of: Case, index: number): readonly number[] => {
    const out = of.feeds[index];
    return of.feeds.flatMap((each, position) =>
      position !== index && each.supply === out?.supply && each.outputs.join() === out.outputs.join() ? [position] : [],
    );
  };

  it('breaks no rule, unless it leaves a pedal alone on a chain', () => {
    const exercised = { single: 0, joined: 0, chained: 0, leftAlone: 0 };
    fc.assert(
      fc.property(removal, ({ of, index }) => {
        const rest = sharing(of, index);
        const out = of.feeds[index];
        const report = judge({ ...of, feeds: of.feeds.filter((_, position) => position !== index) });
        expect(report.missing).toEqual([out?.pedal]);
        expect(report.malformed).toEqual([]);
        if (rest.length === 1) {
          exercised.leftAlone += 1;
          // The chain lead is one too many now, and `alone` may ask for more headroom than `chained` did.
          const broken = report.violations.map((violation) => violation.rule);
          expect(broken).toContain('chain');
          expect(new Set([...broken, 'current'])).toEqual(new Set(['chain', 'current']));
          return;
        }
        exercised[rest.length > 1 ? 'chained' : out?.join === null ? 'single' : 'joined'] += 1;
        expect(report.violations).toEqual([]);
      }),
      trying(1000),
    );
    for (const count of Object.values(exercised)) expect(count).toBeGreaterThan(share(50));
  });

  it('breaks no rule either where the pedal left alone also loses the chain lead, unless `alone` asks for more', () => {
    const exercised = { more: 0, less: 0 };
    fc.assert(
      fc.property(removal, ({ of, index }) => {
        const [left, ...others] = sharing(of, index);
        fc.pre(left !== undefined && others.length === 0);
        const feeds = of.feeds
          .map((each, position) => (position === left ? { ...each, chain: null } : each))
          .filter((_, position) => position !== index);
        const { alone, chained } = of.headroom ?? {};
        if (alone === undefined || chained === undefined) throw new Error('every case states its headroom');
        const asksForMore = alone.numerator * chained.denominator > chained.numerator * alone.denominator;
        exercised[asksForMore ? 'more' : 'less'] += 1;
        const broken = judge({ ...of, feeds }).violations.map((violation) => violation.rule);
        expect(asksForMore ? broken.filter((rule) => rule !== 'current') : broken).toEqual([]);
      }),
      trying(300),
    );
    expect(exercised.less).toBeGreaterThan(share(50));
    expect(exercised.more).toBeGreaterThan(share(50));
  });
});
