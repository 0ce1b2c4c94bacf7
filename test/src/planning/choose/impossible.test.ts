import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { Board, Catalogue, Policy } from '../../../../src/domain/board.js';
import type { Answer, Reason } from '../../../../src/planning/answer.js';
import { tinyCase, type Case } from '../../../support/arbitraries.js';
import { bruteForce } from '../../../support/brute-force.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  euros,
  factor,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
} from '../../../support/builders.js';
import { sharedChoose } from '../../../support/choosing.js';
import { conflictsOf } from '../../../support/conflicts.js';
import { box, caseOf, fan, one, pairWith, type Given } from '../given.js';
import { share, trying } from '../../../support/runs.js';

const choose = sharedChoose();

/** Why the case is impossible. @throws Error when it is not. */
async function reasonsFor(board: Board, catalogue: Catalogue): Promise<readonly Reason[]> {
  const answer: Answer = await choose(board, catalogue);
  if (answer.kind !== 'impossible') throw new Error(`not impossible: ${JSON.stringify(answer)}`);
  return answer.reasons;
}

const reasonsGiven = (given: Given): Promise<readonly Reason[]> => {
  const { board, catalogue } = caseOf(given);
  return reasonsFor(board, catalogue);
};

describe('limits that are too tight', () => {
  const limitsOf = (reasons: readonly Reason[]) =>
    reasons.flatMap((reason) => (reason.kind === 'limit' ? [[reason.limit, reason.allowed, reason.needed]] : []));
  const given: Given = { pedals: pairWith(), supplies: [box(1)] };

  it.each<[string, Partial<Policy>, readonly (readonly [string, number, number])[]]>([
    // Lifting one of them alone is of no use.
    [
      'two of them at once',
      { budget: euros(10), bricks: 1 },
      [
        ['budget', 1000, 2000],
        ['bricks', 1, 2],
      ],
    ],
    [
      'as many bricks as sockets',
      { bricks: 1, sockets: 1 },
      [
        ['bricks', 1, 2],
        ['sockets', 1, 2],
      ],
    ],
  ])('are named with the least that would do: %s', async (_, policy, expected) => {
    expect(limitsOf(await reasonsGiven({ ...given, policy }))).toEqual(expected);
  });

  it('are named in words, too', async () => {
    const reasons = await reasonsGiven({ ...given, policy: { budget: euros(19.99) } });
    expect(reasons[0]).toMatchObject({
      message: 'the budget is 19.99 EUR; powering every pedal takes at least 20.00 EUR',
    });
  });

  it('are not named where lifting them is of no use', async () => {
    const reasons = await reasonsGiven({ pedals: one(400), supplies: [box(1)], policy: { budget: euros(5) } });
    expect(reasons.map(({ kind }) => kind)).toEqual(['pedal']);
    const short = await reasonsGiven({ ...given, supplies: [box(1, {}, { stock: 1 })], policy: { budget: euros(99) } });
    expect(short.map(({ kind }) => kind)).toEqual(['together']);
  });
});

describe('pedals that cannot be fed together', () => {
  const together = (reasons: readonly Reason[]) => reasons.find((reason) => reason.kind === 'together');

  it('are a smallest set of those', async () => {
    const boxes = [box(1, {}, { stock: 2 })];
    const reasons = await reasonsGiven({
      pedals: [...pairWith(), pedalOf('three', 90), pedalOf('four', 80)],
      supplies: boxes,
    });
    const [reason] = reasons;
    expect(reasons).toHaveLength(1);
    expect(reason).toMatchObject({ kind: 'together', smallest: true });
    expect(together(reasons)?.pedals).toHaveLength(3);
  });

  it('are found among pedals that could be fed by themselves', async () => {
    const pedals = [...pairWith(), pedalOf('hungry', 400)];
    const reasons = await reasonsGiven({ pedals, supplies: [box(1, {}, { stock: 1 })] });
    expect(reasons.map(({ kind }) => kind)).toEqual(['pedal', 'together']);
    expect(together(reasons)).toMatchObject({ pedals: ['one', 'two'], smallest: true });
  });

  it('may be one that needs company and has none', async () => {
    const { headroom } = policyOf();
    const given: Given = {
      pedals: one(60),
      supplies: [box(1, {}, { stock: 1 })],
      parts: [fan],
      policy: { headroom: { ...headroom, alone: factor(2) } },
    };
    expect((await reasonsGiven(given)).map(({ kind }) => kind)).toEqual(['pedal']);
    // Together they draw 110 mA.
    const tooMuch = await reasonsGiven({ ...given, pedals: [...one(60), pedalOf('two', 50)] });
    expect(together(tooMuch)).toMatchObject({ pedals: ['one'], smallest: true });
    // The first two can share the only output; the third wants it for itself.
    const third = pedalOf('three', 50, { alone: true });
    const three = await reasonsGiven({ ...given, pedals: [...one(60), pedalOf('two', 40), third] });
    expect(together(three)?.pedals).toHaveLength(2);
    expect(together(three)?.pedals).toContain('three');
  });
});

const limits = ['budget', 'bricks', 'sockets'] as const;
type Limit = (typeof limits)[number];

/** The least money, in minor units, or the fewest bricks or sockets of a plan when limits are lifted; null when there is none. */
function needed(of: Limit, lifted: readonly Limit[], { board, catalogue }: Case): number | null {
  const free = Object.fromEntries(lifted.map((limit) => [limit, null]));
  const policy = { ...board.policy, ...free, noisePrice: euros(0), supplyPrice: euros(0) };
  if (of === 'sockets') return fewestSockets({ ...board, policy }, catalogue);
  const aim = of === 'budget' ? 'cost' : 'bricks';
  const answer = bruteForce({ ...board, policy }, catalogue, { aim, partial: false });
  if (answer.kind === 'impossible') return null;
  return of === 'budget' ? answer.score.money : answer.score.bricks;
}

/** Tried one by one, for it is not the fewest bricks: a power bank takes no socket. A pedal takes one at the most. */
function fewestSockets(board: Board, catalogue: Catalogue): number | null {
  const counts = Array.from({ length: board.pedals.length + 1 }, (_, sockets) => sockets);
  const isEnough = (sockets: number): boolean => {
    const policy = { ...board.policy, sockets };
    return bruteForce({ ...board, policy }, catalogue, { aim: 'bricks', partial: false }).kind === 'plan';
  };
  return counts.find(isEnough) ?? null;
}

/** The limits each of which makes the board impossible by itself, and what it takes in place of it. */
const tightLimits = (of: Case): ReadonlyMap<Limit, number> =>
  new Map(
    limits.flatMap((limit) => {
      const allowed = of.board.policy[limit];
      const least = allowed === null ? null : needed(limit, [limit], of);
      return allowed === null || least === null || least <= allowed ? [] : [[limit, least] as const];
    }),
  );

describe('the reasons of an impossible board', () => {
  it('are conflicts from which no pedal can be taken away, and limits with the least that would do', async () => {
    const seen = { impossible: 0, pedal: 0, together: 0, smallest: 0, limit: 0, request: 0, unowned: 0 };
    await fc.assert(
      fc.asyncProperty(tinyCase, async (of) => {
        const { board, catalogue } = of;
        if (bruteForce(board, catalogue, { aim: 'bricks', partial: false }).kind === 'plan') return;
        seen.impossible += 1;
        const { isConflict, feedable, smallest } = conflictsOf(board, catalogue);
        const reasons = await reasonsFor(board, catalogue);
        expect(reasons.length).toBeGreaterThan(0);
        const unfed = reasons.flatMap((reason) => (reason.kind === 'pedal' ? [reason.pedal] : []));
        // Limits are judged for the pedals that can be fed.
        const rest = { catalogue, board: { ...board, pedals: board.pedals.filter(({ id }) => !unfed.includes(id)) } };
        const tight = rest.board.pedals.length > 0 ? tightLimits(rest) : new Map<Limit, number>();
        const named = reasons.flatMap((reason) => (reason.kind === 'limit' ? [reason.limit] : []));
        expect(named).toEqual(expect.arrayContaining([...tight.keys()]));
        for (const reason of reasons) {
          seen[reason.kind] += 1;
          if (reason.kind === 'pedal') expect(isConflict([reason.pedal])).toBe(true);
          if (reason.kind === 'limit')
            expect(reason.needed).toBe(tight.get(reason.limit) ?? needed(reason.limit, limits, rest));
          if (reason.kind !== 'together') continue;
          const { pedals } = reason;
          expect(isConflict(pedals)).toBe(true);
          for (const gone of pedals) expect(isConflict(pedals.filter((each) => each !== gone))).toBe(false);
          if (!reason.smallest) continue;
          seen.smallest += 1;
          // Of the pedals that are not named one by one, any that cannot be fed at all is a conflict by itself.
          const others = board.pedals.some(({ id }) => !unfed.includes(id) && !feedable.includes(id));
          expect(pedals.length).toBe(others ? 1 : smallest);
        }
      }),
      trying(1200),
    );
    const { impossible, request, unowned, ...kinds } = seen;
    expect(impossible).toBeGreaterThanOrEqual(share(300));
    // Nobody asked for anything that could be in the way, and nothing is plugged.
    expect([request, unowned]).toEqual([0, 0]);
    for (const count of Object.values(kinds)) expect(count).toBeGreaterThan(share(20));
  });
});

describe('a pedal that nothing can feed', () => {
  it('is named with the figures of the output that comes nearest', async () => {
    const named = {
      ...supplyOf('quay-6', 10, [bankOf(4, [settingOf(9, 100)]), bankOf(2, [settingOf(9, 250)])]),
      name: 'Quay 6',
    };
    const policy = policyOf({ headroom: { ...policyOf().headroom, alone: factor(1.2) } });
    const reasons = await reasonsFor(boardOf([pedalOf('echo', 300)], { policy }), catalogueOf([named]));
    expect(reasons).toEqual([
      {
        kind: 'pedal',
        pedal: 'echo',
        refusals: [
          {
            rule: 'current',
            at: { supply: 'quay-6', outputs: [5, 6] },
            message: 'needs 300 mA × 1.2 = 360 mA; the strongest 9 V output gives 250 mA (Quay 6)',
          },
        ],
      },
    ]);
  });

  it('is named once for every pedal, in the order of the board', async () => {
    const reasons = await reasonsGiven({
      pedals: [pedalOf('b', 400), ...one(), pedalOf('a', 400)],
      supplies: [box(1)],
    });
    expect(reasons.map((reason) => reason.kind === 'pedal' && reason.pedal)).toEqual(['b', 'a']);
  });
});
