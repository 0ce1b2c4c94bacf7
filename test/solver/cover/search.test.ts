import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { CoverProgram } from '../../../solver/cover/program.js';
import type { CoverOutcome } from '../../../solver/cover/outcome.js';
import { cheapest, completed, exactPrice, leastCost, programOf, smallCovers, type SmallCover } from './small-covers.js';
import { proves } from './proof-tree.js';
import { ended, expectTrue, search, toldApart } from './searching.js';
import { share, trying } from '../../support/runs.js';

/** What a search has shown that no solution is below; Infinity where there is none. */
const leastOf = (outcome: CoverOutcome<number>): number =>
  outcome.kind === 'optimal' ? outcome.value : outcome.kind === 'infeasible' ? Infinity : outcome.bound;

/** With all costs five times as high. */
const timesFive = (cover: SmallCover): SmallCover => ({
  ...cover,
  columns: cover.columns.map((column) => ({ ...column, cost: 5 * column.cost })),
  resource:
    cover.resource === null ? null : { ...cover.resource, rented: cover.resource.rented.map((cost) => 5 * cost) },
  without: cover.without.map((free) => (free === null ? null : { ...free, cost: 5 * free.cost })),
});

/** The program with another row: the columns of some of its groups are limited. */
const withRow = (
  program: CoverProgram<number>,
  groups: readonly number[],
  sense: 'at least' | 'at most',
  bound: number,
): CoverProgram<number> => ({
  ...program,
  rows: [...program.rows, { name: 'set', feature: program.unit, groups, sense, bound }],
});

describe('the search of a cover', () => {
  it('finds what trying everything finds, or that there is nothing, and proves it', async () => {
    const seen = { optimal: 0, infeasible: 0, stopped: 0, stuck: 0 };
    const rules = { resource: 0, units: 0, without: 0, branched: 0 };
    await fc.assert(
      fc.asyncProperty(smallCovers, async (given) => {
        const truth = leastCost(given);
        const { outcome, cover } = await ended(given);
        seen[outcome.kind] += 1;
        expectTrue(outcome, cover, truth);
        if (truth === null) return;
        if (truth !== leastCost({ ...given, resource: null })) rules.resource += 1;
        if (truth !== leastCost({ ...given, units: null })) rules.units += 1;
        if (truth !== leastCost({ ...given, without: given.without.map(() => null) })) rules.without += 1;
        if (outcome.kind === 'optimal' && outcome.proof.tree.branch !== null) rules.branched += 1;
      }),
      trying(600),
    );
    expect(seen.optimal).toBeGreaterThan(share(200));
    expect(seen.infeasible).toBeGreaterThan(share(60));
    expect(seen.stopped).toBe(0);
    // Half of one column and half of another may look whole in every number that is branched on.
    expect(seen.stuck).toBeLessThan(share(50));
    for (const [rule, count] of Object.entries(rules)) expect([rule, count > 1]).toEqual([rule, true]);
  });

  it.each([1, 2])('finds and proves the same where it begins anew after %i nodes', async (anewAfter) => {
    let branched = 0;
    await fc.assert(
      fc.asyncProperty(smallCovers, async (given) => {
        const { outcome, cover } = await ended(given, undefined, { anewAfter });
        expectTrue(outcome, cover, leastCost(given));
        if (outcome.kind === 'optimal' && outcome.proof.tree.branch !== null) branched += 1;
      }),
      trying(300),
    );
    expect(branched).toBeGreaterThan(share(1));
  });

  it('tells cases apart by the columns of a set of groups where their number alone is not whole', async () => {
    // Two of three demands each, three times, for 10: half of each column, three in all; two of either three are needed.
    const pairs = [0, 3].flatMap((first) =>
      [
        [0, 1],
        [0, 2],
        [1, 2],
      ].map((pair) => pair.map((each) => first + each)),
    );
    const cover: SmallCover = {
      demands: [1, 1, 1, 1, 1, 1],
      columns: pairs.map((pair, index) => ({
        ...{ group: index, cost: 10, content: index },
        amounts: [...pair, 7].map((feature) => [feature, 1] as const),
      })),
      groups: pairs.map(() => ({ name: 'group', most: 1 })),
      resource: null,
      units: null,
      without: pairs.map(() => null),
    };
    const { branching, ...program } = programOf(cover);
    const sets = [
      [0, 1, 2],
      [3, 4, 5],
    ];
    const outcome = await search({ ...program, branching: { ...branching, sets: () => sets } });
    expectTrue(outcome, cover, 40);
    const conditions = outcome.kind === 'optimal' ? (outcome.proof.tree.branch ?? []) : [];
    expect(sets).toContainEqual(conditions[0]?.condition.groups);
  });

  it('finds the same in two halves by the columns of a set of groups, one of which has the best', async () => {
    const seen = { fewer: 0, more: 0, neither: 0, stuck: 0 };
    await fc.assert(
      fc.asyncProperty(smallCovers, fc.nat(2), fc.integer({ min: 0, max: 3 }), async (given, last, most) => {
        const apart = toldApart(given);
        // The set tells units apart that are alike otherwise.
        const cover = { ...apart, groups: apart.groups.map(({ name, most }) => ({ name, most })) };
        const set = [...cover.groups.keys()].filter((group) => group % 3 <= last);
        const program = programOf(cover);
        const outcomes = [
          await search(withRow(program, set, 'at most', most)),
          await search(withRow(program, set, 'at least', most + 1)),
        ];
        const truth = leastCost(cover) ?? Infinity;
        const [fewer = NaN, more = NaN] = outcomes.map(leastOf);
        if (outcomes.some(({ kind }) => kind === 'stuck')) {
          expect(Math.min(fewer, more)).toBeLessThanOrEqual(truth);
          seen.stuck += 1;
          return;
        }
        expect(Math.min(fewer, more)).toBe(truth);
        seen[truth === Infinity ? 'neither' : fewer === truth ? 'fewer' : 'more'] += 1;
      }),
      trying(300),
    );
    expect(seen.stuck).toBeLessThan(share(30));
    expect(Math.min(seen.fewer, seen.more)).toBeGreaterThan(share(40));
  });

  it('passes over costs that no solution can have', async () => {
    const seen = { optimal: 0, passedOver: 0 };
    const upToFive = (cost: number): number => 5 * Math.ceil(cost / 5);
    const possible = { below: (cost: number) => upToFive(cost) - 5, from: upToFive };
    await fc.assert(
      fc.asyncProperty(smallCovers, async (given) => {
        const cover = timesFive(given);
        const program = programOf(cover);
        const outcome = await search({ ...program, possible });
        if (outcome.kind !== 'optimal') return;
        expect(outcome.value).toBe(leastCost(cover));
        const { tree, scale } = outcome.proof;
        const holds = (value: number): boolean => proves({ program, columns: cover.columns }, tree, scale, value);
        // The bound need not exceed what no solution can cost.
        if (outcome.value > 0) expect(holds(outcome.value - 4)).toBe(true);
        expect(holds(outcome.value + 1)).toBe(false);
        seen.optimal += 1;
        if (outcome.value > 0 && !holds(outcome.value)) seen.passedOver += 1;
      }),
      trying(300),
    );
    expect(seen.optimal).toBeGreaterThan(share(100));
    expect(seen.passedOver).toBeGreaterThan(0);
  });

  it('starts from a solution that is known, and returns it when nothing is better', async () => {
    const seen = { better: 0, kept: 0 };
    await fc.assert(
      fc.asyncProperty(
        smallCovers,
        fc.array(fc.nat(8), { maxLength: 8 }),
        fc.boolean(),
        async (given, chosen, atWorst) => {
          const some = chosen.map((index) => index % given.columns.length);
          const known = atWorst ? dearest(given) : completed(some, given);
          if (known === null) return;
          const outcome = await search(programOf(given), { known });
          const truth = leastCost(given);
          expectTrue(outcome, given, truth);
          if (outcome.kind !== 'optimal') return;
          if (outcome.value < known.value) seen.better += 1;
          else if (outcome.contents === known.contents) seen.kept += 1;
        },
      ),
      trying(500),
    );
    expect(Math.min(seen.better, seen.kept)).toBeGreaterThan(share(2));
  });

  it('needs no more columns than those that it begins with, where these are all', async () => {
    let solved = 0;
    await fc.assert(
      fc.asyncProperty(smallCovers, async (given) => {
        const none: CoverProgram<number>['price'] = (request) => ({
          ...exactPrice(given.columns, request),
          columns: [],
        });
        const outcome = await search({ ...programOf(given, none), start: given.columns });
        expectTrue(outcome, given, leastCost(given));
        if (outcome.kind === 'optimal' && outcome.contents.length > 0) solved += 1;
      }),
      trying(200),
    );
    expect(solved).toBeGreaterThan(share(50));
  });

  it('tells how far it has come, and never more than is true', async () => {
    let told = 0;
    await fc.assert(
      fc.asyncProperty(smallCovers, async (given) => {
        const truth = leastCost(given) ?? Infinity;
        await search(programOf(given), {
          onProgress: ({ value, bound }) => {
            told += 1;
            expect(bound).toBeLessThanOrEqual(Math.min(truth, programOf(given).greatest + 1));
            if (value !== null) expect(value).toBeGreaterThanOrEqual(truth);
          },
        });
      }),
      trying(150),
    );
    expect(told).toBeGreaterThan(share(100));
  });
});

/** A solution that would be the cheapest if dear columns were cheap. */
function dearest(cover: SmallCover): ReturnType<typeof completed> {
  const upsideDown = cover.columns.map((column) => ({ ...column, cost: 20 - column.cost }));
  const found = cheapest({ ...cover, columns: upsideDown });
  return found === null ? null : completed(found.contents, cover);
}

describe('a search that is stopped', () => {
  it('by its time or its signal says what it has, and no more than is true', async () => {
    const seen = { optimal: 0, infeasible: 0, stopped: 0, stuck: 0 };
    await fc.assert(
      fc.asyncProperty(smallCovers, fc.nat(12), fc.constantFrom('time', 'signal'), async (given, after, by) => {
        const controller = new AbortController();
        let left = after;
        const outcome = await search(
          programOf(given, (request) => {
            left -= 1;
            if (by === 'signal' && left <= 0) controller.abort();
            return exactPrice(given.columns, request);
          }),
          {
            ...(by === 'time' ? { remainingMs: () => left } : {}),
            signal: controller.signal,
          },
        );
        seen[outcome.kind] += 1;
        expectTrue(outcome, given, leastCost(given));
      }),
      trying(300),
    );
    expect(seen.stopped).toBeGreaterThan(share(60));
    expect(seen.optimal).toBeGreaterThan(share(30));
  });

  it('before it began has nothing', async () => {
    const cover: SmallCover = {
      demands: [1],
      columns: [
        {
          group: 0,
          cost: 3,
          amounts: [
            [0, 1],
            [2, 1],
          ],
          content: 0,
        },
      ],
      groups: [{ name: 'group', most: 1 }],
      resource: null,
      units: null,
      without: [null],
    };
    const nothing = { kind: 'stopped', best: null, bound: 0 };
    expect(await search(programOf(cover), { remainingMs: () => 0 })).toEqual(nothing);
    expect(await search(programOf(cover), { signal: AbortSignal.abort() })).toEqual(nothing);
    expect(await search(programOf(cover))).toMatchObject({ kind: 'optimal', value: 3, contents: [0] });
  });
});
