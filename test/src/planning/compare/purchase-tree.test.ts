import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { supplyId } from '../../../../src/domain/quantities.js';
import {
  bestPurchases,
  type BestWithin,
  type BoughtUnits,
  type PurchaseCaps,
} from '../../../../src/planning/compare/purchase-tree.js';
import { share, trying } from '../../../support/runs.js';

/** A plan that is nothing but what it buys and what it is worth. */
type Plan = { readonly bought: BoughtUnits; readonly value: number };

const ids = ['adit', 'bole', 'culm', 'dell'].map(supplyId);

const plans: fc.Arbitrary<readonly Plan[]> = fc.array(
  fc.record({
    bought: fc
      .array(fc.integer({ min: 0, max: 2 }), { minLength: ids.length, maxLength: ids.length })
      .map((units): BoughtUnits => new Map(ids.flatMap((id, at) => (units[at] === 0 ? [] : [[id, units[at] ?? 0]])))),
    value: fc.integer({ min: 0, max: 30 }),
  }),
  { maxLength: 40, size: 'max' },
);

const holds = (all: BoughtUnits, some: BoughtUnits): boolean =>
  [...some].every(([id, units]) => (all.get(id) ?? 0) >= units);

/** A shop whose plans are all known; counts how often it is asked. */
function shop(all: readonly Plan[], patience = Infinity) {
  let asked = 0;
  const solve = (caps: PurchaseCaps): Promise<BestWithin<Plan>> => {
    asked += 1;
    if (asked > patience) return Promise.resolve({ kind: 'stopped' });
    const within = all.filter(({ bought }) => [...bought].every(([id, units]) => units <= (caps.get(id) ?? Infinity)));
    const [best] = [...within].sort((first, second) => first.value - second.value);
    return Promise.resolve(best === undefined ? { kind: 'none' } : { kind: 'plan', plan: best, bought: best.bought });
  };
  return { solve, compare: (first: Plan, second: Plan) => first.value - second.value, asked: () => asked };
}

async function listed(buying: ReturnType<typeof shop>, most = Infinity) {
  const found: Plan[] = [];
  const search = bestPurchases(buying);
  for (;;) {
    const next = await search.next();
    if (next.done === true) return { found, end: next.value };
    found.push(next.value.plan);
    if (found.length === most) return { found, end: 'enough' };
  }
}

describe('the best purchases', () => {
  it('are each the best of those that hold no earlier one, to the last', async () => {
    let several = 0;
    await fc.assert(
      fc.asyncProperty(plans, async (all) => {
        const { found, end } = await listed(shop(all));
        if (found.length > 2) several += 1;
        expect(end).toBe('all');
        for (const [at, { bought, value }] of found.entries()) {
          const earlier = found.slice(0, at);
          const left = all.filter((plan) => !earlier.some((other) => holds(plan.bought, other.bought)));
          expect(left).toContainEqual({ bought, value });
          expect(value).toBe(Math.min(...left.map((plan) => plan.value)));
        }
        expect(all.filter((plan) => !found.some((other) => holds(plan.bought, other.bought)))).toEqual([]);
      }),
      trying(2000),
    );
    expect(several).toBeGreaterThan(share(500));
  });

  it('are sought no further than they are asked for', async () => {
    const all = ids.map((id, at) => ({ bought: new Map([[id, 1]]), value: at }));
    const asked = await Promise.all(
      [1, 2, 3].map(async (most) => {
        const buying = shop(all);
        await listed(buying, most);
        return buying.asked();
      }),
    );
    expect(asked).toEqual([1, 2, 3]);
  });

  it('end where nothing has to be bought', async () => {
    const nothing: Plan = { bought: new Map(), value: 3 };
    const quieter: Plan = { bought: new Map([[supplyId('adit'), 1]]), value: 1 };
    const louder: Plan = { bought: new Map([[supplyId('bole'), 1]]), value: 5 };
    expect(await listed(shop([louder, nothing, quieter]))).toEqual({ found: [quieter, nothing], end: 'all' });
  });

  it('say when the time ran out, after those that are known', async () => {
    const all = ids.map((id, at) => ({ bought: new Map([[id, 1]]), value: at }));
    const { found, end } = await listed(shop(all, 2));
    expect(end).toBe('stopped');
    expect(found.map(({ value }) => value)).toEqual([0, 1]);
  });
});
