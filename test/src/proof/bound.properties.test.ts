import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { choosingAims, choosingTiersOf, isMoney, type ChoosingAim } from '../../../src/domain/aim.js';
import type { Policy } from '../../../src/domain/board.js';
import type { ProofBranch, ProofTags, ProofTier } from '../../../src/domain/proof.js';
import type { PartId, PedalId, SupplyId } from '../../../src/domain/quantities.js';
import { toldApart } from '../../../src/proof/apart.js';
import { groundOf, type StepClaim } from '../../../src/proof/claim.js';
import { conditionsOf, type Condition } from '../../../src/proof/conditions.js';
import { measureOf, numberOf } from '../../../src/proof/measure.js';
import { nodeBound } from '../../../src/proof/node-bound.js';
import { capsBehind } from '../../../src/proof/unit-caps.js';
import type { StockGroup } from '../../../src/proof/stock.js';
import { tinyCase } from '../../support/arbitraries.js';
import { sourceCase } from '../../support/arbitrary-fed.js';
import { bruteForce } from '../../support/brute-force.js';
import { counted } from './counting.js';
import { share, trying } from '../../support/runs.js';

const runs = 1500;
const small = fc.integer({ min: 0, max: 9 });

/** What tags, branches and claims are made of, whatever the case; each list is used as far as it is needed. */
const draws = fc.record({
  aim: fc.constantFrom(...choosingAims),
  partial: fc.boolean(),
  scale: fc.constantFrom(1, 3, 16),
  weights: fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 8, maxLength: 8 }),
  /** In percent of an equal share of the plan's number. */
  pedals: fc.array(fc.oneof(fc.constantFrom(0, 80, 100), fc.integer({ min: -10, max: 140 })), {
    minLength: 4,
    maxLength: 4,
  }),
  leads: fc.array(fc.option(fc.integer({ min: 0, max: 900 })), { minLength: 30, maxLength: 30 }),
  limits: fc.record({
    bricks: fc.integer({ min: -900, max: 0 }),
    sockets: fc.integer({ min: -900, max: 0 }),
    budget: fc.integer({ min: -9, max: 0 }),
  }),
  /** In percent of an equal share, as those of pedals: of inlets that are fed, and of units that have one. */
  inlets: fc.array(fc.record({ fed: fc.integer({ min: 0, max: 140 }), paid: fc.integer({ min: 0, max: 140 }) }), {
    minLength: 3,
    maxLength: 3,
  }),
  earlier: fc.record({ tiers: small, tag: fc.constantFrom(0, 0, -1, -7), more: fc.integer({ min: 0, max: 3 }) }),
  branches: fc.array(
    fc.record({
      count: fc.constantFrom('units', 'pedals', 'leads', 'inlets'),
      supply: fc.option(small),
      /** Where no supply is drawn, those of a set; none drawn stand for all. */
      among: fc.array(small, { maxLength: 3 }),
      source: fc.option(fc.constantFrom('owned', 'bought')),
      of: fc.array(fc.boolean(), { minLength: 30, maxLength: 30 }),
      most: fc.integer({ min: 0, max: 3 }),
      /** Of a unit told apart, as far as there are any. */
      slot: fc.option(fc.integer({ min: 1, max: 2 })),
      tag: fc.oneof(fc.constantFrom(0, 1), fc.integer({ min: 0, max: 1500 })),
    }),
    { maxLength: 3 },
  ),
  /** Only pedals have tags at first. */
  plain: fc.boolean(),
  /** How many units of each group are told apart. */
  apart: fc.array(fc.constantFrom(0, 0, 1, 2), { minLength: 8, maxLength: 8 }),
  above: fc.integer({ min: 1, max: 40 }),
  /** Changes of one tag each, in percent of an equal share; those that raise the bound are kept. */
  pushes: fc.array(fc.tuple(fc.nat(7), fc.integer({ min: -60, max: 60 })), { minLength: 25, maxLength: 25 }),
});
type Draws = typeof draws extends fc.Arbitrary<infer Value> ? Value : never;

describe('the bound of a case', () => {
  it('is never above the number of a plan in it, and caps never forbid its units, whatever the tags', () => {
    const seen = { plans: 0, tight: 0, capped: 0, conditions: 0, slots: 0, sets: 0, fed: 0, inlets: 0 };
    fc.assert(
      fc.property(fc.oneof(tinyCase, sourceCase(3, 3)), draws, ({ board, catalogue }, drawn) => {
        const plan = bruteForce(board, catalogue, { aim: drawn.aim, partial: drawn.partial });
        if (plan.kind === 'impossible') return;
        seen.plans += 1;
        if (plan.feeds.some(({ inletOf }) => inletOf !== undefined)) seen.fed += 1;
        const whole = groundOf(board, catalogue, drawn.partial, null);
        const apart = whole.stock.groups.flatMap(({ supply, source }, index) => {
          const units = drawn.apart[index] ?? 0;
          return units === 0 ? [] : [{ supply: supply.id, source, units }];
        });
        const ground = toldApart(whole, apart);
        const tiers = tiersFrom(drawn, board.policy);
        const number = numberOf(tiers, plan.score, board.policy);
        const measure = measureOf(tiers, board.policy);
        const earlierTiers = tiers.slice(0, drawn.earlier.tiers);
        const earlier = {
          measure: measureOf(earlierTiers, board.policy),
          value: numberOf(earlierTiers, plan.score, board.policy) + BigInt(drawn.earlier.more),
        };
        const claim: StepClaim = {
          ...ground,
          scale: BigInt(drawn.scale),
          value: number + BigInt(drawn.above),
          below: number + BigInt(drawn.above) - 1n,
          measure,
          earlier: [earlier],
        };
        const path: Condition[] = [];
        for (const drawnBranch of drawn.branches) {
          const branch = branchFrom(drawnBranch, claim);
          const { fewer, more } = conditionsOf(branch, path, ground);
          seen.slots += Number(branch.slot !== undefined);
          seen.sets += Number(branch.among !== undefined);
          seen.inlets += Number(branch.count === 'inlets');
          path.push(counted(plan.feeds, branch, { board, catalogue }, apart) <= branch.most ? fewer : more);
        }
        const quick = new Map(ground.stock.groups.map((group) => [group, group.most]));
        const exact = ({ most }: StockGroup): number => most;
        seen.conditions += path.length;
        const scaled = claim.scale * number;
        let [best, tags]: [bigint | null, ProofTags] = [null, tagsFrom(drawn, path, claim, Number(scaled))];
        for (const push of [null, ...drawn.pushes]) {
          const pushed = push === null ? tags : pushedTags(tags, push, path, Number(scaled));
          const shown = nodeBound(pushed, path, quick, claim);
          if (shown === null) throw new Error('a case with a better plan was closed');
          const bound = shown.bound(exact);
          expect(bound <= scaled).toBe(true);
          const left = capsBehind({ quick, exact }, shown);
          for (const group of ground.stock.groups) {
            const { supply, source, slot, most } = group;
            const of = { count: 'units', supply: supply.id, source, ...(slot === null ? {} : { slot }) } as const;
            const used = counted(plan.feeds, of, { board, catalogue }, apart);
            const cap = left.exact(group);
            expect(used).toBeLessThanOrEqual(cap);
            expect(cap).toBeLessThanOrEqual(left.quick.get(group) ?? 0);
            seen.capped += Number(cap < most);
          }
          if (best === null || bound > best) [best, tags] = [bound, pushed];
        }
        seen.tight += Number(100n * (best ?? 0n) > 90n * scaled);
      }),
      trying(runs),
    );
    expect(seen.plans).toBeGreaterThan(share(runs / 2));
    expect(seen.conditions).toBeGreaterThan(share(runs / 2));
    expect(seen.sets).toBeGreaterThan(share(runs / 20));
    expect(seen.inlets).toBeGreaterThan(share(runs / 20));
    expect(seen.fed).toBeGreaterThan(share(runs / 60));
    expect(seen.slots).toBeGreaterThan(share(runs / 20));
    expect(seen.capped).toBeGreaterThan(share(runs));
    expect(seen.tight).toBeGreaterThan(share(runs / 40));
  });
});

const tiersFrom = (
  { aim, weights }: { readonly aim: ChoosingAim; readonly weights: readonly number[] },
  policy: Policy,
): ProofTier[] =>
  choosingTiersOf(aim, policy).map((tier, index) => ({
    tier,
    unit: isMoney(tier) ? 50 : 1,
    weight: weights[index] ?? 0,
  }));

function branchFrom(
  { count: drawn, supply, among, source, slot, of, most }: Draws['branches'][number],
  claim: StepClaim,
): ProofBranch {
  const { groups, kinds } = claim.stock;
  const ids = [...claim.stock.supplies];
  // Inlets of one sort are counted together.
  const sort = claim.inlets[most % Math.max(1, claim.inlets.length)];
  const count = drawn === 'inlets' && sort === undefined ? 'units' : drawn;
  const isNamed = (_: unknown, index: number): boolean => of[index] === true;
  const named: Readonly<Record<ProofBranch['count'], readonly (PedalId | PartId | SupplyId)[]>> = {
    units: [],
    pedals: claim.board.pedals.filter(isNamed).map(({ id }) => id),
    leads: kinds.filter(isNamed).flatMap(({ parts }) => parts.map(({ id }) => id)),
    inlets: [...(sort?.supplies ?? [])],
  };
  const id = supply === null ? null : (groups[supply]?.supply.id ?? ids[0] ?? null);
  const set = id === null ? among.flatMap((index) => groups[index]?.supply.id ?? []) : [];
  const told = claim.stock.apart.find((entry) => entry.supply === id && entry.source === source);
  return {
    ...{ count, supply: id, source, of: named[count], most, fewer: {}, more: {} },
    ...(set.length === 0 ? {} : { among: set }),
    ...(slot === null || slot > (told?.units ?? 0) ? {} : { slot }),
  };
}

/** The first places stand for the pedals, the others for the conditions. */
function pushedTags(
  tags: ProofTags,
  [place, percent]: readonly [number, number],
  path: readonly Condition[],
  scaled: number,
): ProofTags {
  const ids = Object.keys(tags.pedals) as PedalId[];
  const by = Math.round((scaled / ids.length / 100) * percent);
  const id = ids[place];
  if (id !== undefined) return { ...tags, pedals: { ...tags.pedals, [id]: (tags.pedals[id] ?? 0) + by } };
  const conditions = (tags.conditions ?? []).map((tag, index) => {
    if (index !== place - ids.length) return tag;
    return path[index]?.side === 'at least' ? Math.max(0, tag + by) : Math.min(0, tag + by);
  });
  return { ...tags, conditions };
}

function tagsFrom(
  { pedals, plain, leads, limits, inlets, earlier, branches }: Draws,
  path: readonly Condition[],
  claim: StepClaim,
  scaled: number,
): ProofTags {
  const { board, stock } = claim;
  const share = scaled / board.pedals.length / 100;
  const none = { conditions: path.map(() => 0), earlier: [0] };
  const pedalTags = Object.fromEntries(
    board.pedals.map(({ id }, index) => [id, Math.round((pedals[index] ?? 0) * share)]),
  );
  if (plain) return { pedals: pedalTags, ...none };
  return {
    pedals: pedalTags,
    leads: stock.kinds.flatMap(({ parts, offers }, index) => {
      const tag = leads[index] ?? null;
      const isLimited = offers.every(({ pieces }) => pieces < Infinity);
      return tag === null || !isLimited ? [] : [{ parts: parts.map((part) => part.id), tag }];
    }),
    bricks: claim.limits.bricks === null ? 0 : limits.bricks,
    sockets: claim.limits.sockets === null ? 0 : limits.sockets,
    inlets: claim.inlets.map(({ supplies }, index) => ({
      supplies: [...supplies],
      fed: Math.round((inlets[index]?.fed ?? 0) * share),
      paid: Math.round((inlets[index]?.paid ?? 0) * share),
    })),
    budget: claim.limits.budget === null ? 0 : limits.budget,
    earlier: [earlier.tag],
    conditions: path.map(({ side }, index) => {
      const tag = branches[index]?.tag ?? 0;
      return side === 'at most' ? 0 - tag : tag;
    }),
  };
}
