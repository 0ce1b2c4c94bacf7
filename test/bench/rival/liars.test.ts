import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { Engines } from '../../../bench/rival/engines/engines.js';
import {
  compactSearch,
  type CompactEffort,
  type CompactOutcome,
} from '../../../bench/rival/formulation/compact-search.js';
import { expectTrue, figuresOf, questionFor, type Asked } from '../../src/formulation/second-opinion.js';
import { tinyCase, type Case, withoutBatteries } from '../../support/arbitraries.js';
import { bruteForce } from '../../support/brute-force.js';
import { sharedEngines } from '../../support/engines.js';
import { liars, silent, silentAboutDuals, type Liar } from '../../support/liars.js';
import { remembering } from '../../support/remembering.js';

const shared = sharedEngines();
const honest = { trusted: remembering(shared.trusted) };
const second = remembering(shared.second);

const isPossible = ({ board, catalogue }: Case): boolean =>
  bruteForce(board, catalogue, { aim: 'cost', partial: false }).kind === 'plan';

/** A dozen boards, eight of which can be powered. */
const sample = fc.sample(tinyCase.map(withoutBatteries), { seed: 7, numRuns: 60 });
const boards = [...sample.filter(isPossible).slice(0, 8), ...sample.filter((of) => !isPossible(of)).slice(0, 4)];

/** How far the outcomes go for all boards, none of them being wrong. */
async function extents(engines: Engines, partial: boolean): Promise<readonly CompactOutcome['kind'][]> {
  const found: CompactOutcome['kind'][] = [];
  for (const of of boards) found.push((await truthful(of, partial, { engines, remainingMs: () => Infinity })).kind);
  return found;
}

/** What the compact program says, which must be true. */
async function truthful(of: Case, partial: boolean, effort: CompactEffort): Promise<CompactOutcome> {
  const asked: Asked = { of, aim: 'cost', partial };
  const truth = bruteForce(of.board, of.catalogue, { aim: 'cost', partial });
  const outcome = await compactSearch(questionFor(asked), effort);
  expectTrue(outcome, truth.kind === 'plan' ? figuresOf(truth.score, asked) : null, asked);
  return outcome;
}

const named = liars.map((liar) => [liar(honest.trusted).name, liar] as const);

it('the boards are a dozen', () => {
  expect(boards).toHaveLength(12);
});

describe.each(named)('an engine that %s', (_, liar) => {
  it('in the second place keeps nothing from being shown', async () => {
    const engines = { trusted: honest.trusted, second: liar(second) };
    expect(await extents(engines, false)).toEqual([
      ...Array<string>(8).fill('proven'),
      ...Array<string>(4).fill('impossible'),
    ]);
  });

  it('in the first place makes no answer wrong', async () => {
    await extents({ trusted: liar(honest.trusted), second }, false);
    await extents({ trusted: liar(honest.trusted), second }, true);
  });

  it('by itself makes no answer wrong', async () => {
    await extents({ trusted: liar(honest.trusted), second: null }, false);
  });
});

// Two engines that share no code and tell the same lie are beyond what can be shown. Two that lie differently are not.
describe('two engines that lie differently', () => {
  const pairs = named.flatMap(([first, one], index) =>
    named.slice(index + 1).map(([other, two]) => [first, other, one, two] as const),
  );
  const chosen = pairs.filter((__, index) => index % 11 === 0);

  it.each(chosen)('make no answer wrong: one %s, the other %s', async (_, __, one, two) => {
    await extents({ trusted: one(honest.trusted), second: two(second) }, false);
  });
});

describe('an engine that does not answer', () => {
  const { trusted, second: other } = shared;
  const [of] = boards;
  /** Asked so often, there is a little time left; then none. */
  const patience = (): (() => number) => {
    let asked = 0;
    return () => ((asked += 1) > 6 ? 0 : 200);
  };

  it.each<[string, (liar: Liar) => Engines, Liar]>([
    ['first', (liar) => ({ trusted: liar(trusted), second: other }), silent],
    ['second', (liar) => ({ trusted, second: liar(other) }), silent],
    ['for duals', (liar) => ({ trusted: liar(trusted), second: other }), silentAboutDuals],
    ['nor the other', (liar) => ({ trusted: liar(trusted), second: liar(other) }), silent],
  ])('keeps nobody waiting for ever: %s', async (_, enginesWith, liar) => {
    if (of === undefined) throw new Error('no board');
    await truthful(of, false, { engines: enginesWith(liar), remainingMs: patience() });
  });
});
