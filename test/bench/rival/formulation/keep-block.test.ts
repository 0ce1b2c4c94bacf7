import { kitOf } from '../../../../src/domain/kit.js';
import { describe, expect, it } from 'vitest';

import type { Board, WiredFeed } from '../../../../src/domain/board.js';
import type { Pedal } from '../../../../src/domain/pedal.js';
import { partId, pedalId, supplyId } from '../../../../src/domain/quantities.js';
import { compactProgram } from '../../../../bench/rival/formulation/compact-program.js';
import { compactSearch } from '../../../../bench/rival/formulation/compact-search.js';
import { coarse } from '../../../../bench/rival/formulation/detail.js';
import { questionOf } from '../../../../src/formulation/question.js';
import { berthsOf } from '../../../../src/loadout/today.js';
import { bankOf, boardOf, listed, partOf, pedalOf, settingOf, supplyOf, volts } from '../../../support/builders.js';
import { sharedEngines } from '../../../support/engines.js';
import { wiredOn } from '../../../support/wired.js';

const engines = sharedEngines();

const quay = (pedal: string, output: number, more: Partial<WiredFeed> = {}) => wiredOn('quay', pedal, output, more);

/** A board whose supply `quay` is owned, with so many units and leads for every need. */
function boardWith(
  pedals: readonly Pedal[],
  banks: readonly ReturnType<typeof bankOf>[],
  wiring: readonly WiredFeed[],
  units = 1,
): Board {
  const owned = { price: null, stock: 0 };
  const parts = [
    partOf('fan', 0, { kind: 'chain', tails: 3 }, owned),
    partOf('stack', 0, { kind: 'join', mode: 'series' }, owned),
  ];
  return boardOf(pedals, {
    gear: { supplies: [supplyOf('quay', 0, banks, owned)], parts },
    owned: { supplies: new Map([[supplyId('quay'), units]]), parts: new Map(parts.map(({ id }) => [id, 9])) },
    wiring,
  });
}

const questionFor = (board: Board, pinned: readonly string[] = []) =>
  questionOf(kitOf(board, null), {
    tiers: ['moved'],
    partial: false,
    today: { berths: berthsOf(board.wiring), exposed: new Set(), pinned: new Set(pinned.map(pedalId)) },
  });

/** The fewest pedals that move. */
async function fewest(board: Board, pinned: readonly string[] = []): Promise<number | 'impossible'> {
  const outcome = await compactSearch(questionFor(board, pinned), { engines, remainingMs: () => Infinity });
  if (outcome.kind === 'stopped') throw new Error('it stopped without any reason to');
  return outcome.kind === 'impossible' ? 'impossible' : (outcome.values.get('moved') ?? 0);
}

const pedals = (ids: string, draw = 40, more: Partial<Pedal> = {}) => Array.from(ids, (id) => pedalOf(id, draw, more));
const nine = (outputs: number, rating = 100) => bankOf(outputs, [settingOf(9, rating)]);

describe('who stays', () => {
  it('is whoever today’s output can feed, and nobody else', async () => {
    const board = boardWith(pedals('ab'), [nine(2), nine(1, 30)], [quay('a', 1), quay('b', 3)]);
    expect(await fewest(board)).toBe(1);
    expect(await fewest({ ...board, wiring: [quay('a', 1), quay('b', 2)] })).toBe(0);
  });

  it('is one of two alone on one output, or both on a chain', async () => {
    const both = [quay('a', 1), quay('b', 1)];
    expect(await fewest(boardWith(pedals('ab'), [nine(2)], both))).toBe(0);
    expect(await fewest(boardWith(pedals('ab', 40, { alone: true }), [nine(2)], both))).toBe(1);
  });

  it('is as many of a chain as one output can feed', async () => {
    const together = [quay('a', 1), quay('b', 1), quay('c', 1)];
    expect(await fewest(boardWith(pedals('abc'), [nine(2)], together))).toBe(1);
    expect(await fewest(boardWith(pedals('abc', 33), [nine(2)], together))).toBe(0);
  });

  it('is told apart by chains of one kind, each on its own output', async () => {
    const banks = [nine(2)];
    const today = [quay('a', 1), quay('b', 1), quay('c', 2), quay('d', 2)];
    expect(await fewest(boardWith(pedals('abcd'), banks, today))).toBe(0);
    // Two and two again, but a and b cannot share an output.
    const uneven = [...pedals('ab', 60), ...pedals('cd', 40)];
    expect(await fewest(boardWith(uneven, banks, today))).toBe(2);
  });

  it('is at the volts of today', async () => {
    const banks = [bankOf(1, [settingOf(9, 100), settingOf(18, 100)])];
    const higher = [quay('a', 1, { millivolts: volts(18) })];
    expect(await fewest(boardWith(pedals('a', 40, { accepts: listed(9, 18) }), banks, higher))).toBe(0);
    expect(await fewest(boardWith(pedals('a'), banks, higher))).toBe(1);
  });

  it('is on both outputs of a join, which nobody else can stay on then', async () => {
    const banks = [bankOf(3, [settingOf(9, 100)], { joins: ['series'] })];
    const big = pedalOf('a', 40, { accepts: listed(18) });
    const joined = quay('a', 1, {
      outputs: [1, 2],
      millivolts: volts(18),
      join: { mode: 'series', part: partId('stack') },
    });
    expect(await fewest(boardWith([big, ...pedals('b')], banks, [joined, quay('b', 3)]))).toBe(0);
    expect(await fewest(boardWith([big, ...pedals('b')], banks, [joined, quay('b', 2)]))).toBe(1);
  });

  it('is on the unit of today', async () => {
    const today = [quay('a', 1, { unit: 2 }), quay('b', 1)];
    expect(await fewest(boardWith(pedals('ab'), [nine(1)], today, 2))).toBe(0);
    const crowded = [quay('a', 1, { unit: 2 }), quay('b', 1, { unit: 2 })];
    expect(await fewest(boardWith(pedals('ab', 60), [nine(1)], crowded, 2))).toBe(1);
  });
});

describe('who must stay', () => {
  it('stays in another one’s stead', async () => {
    const board = boardWith(pedals('ab', 60), [nine(2)], [quay('a', 1), quay('b', 1)]);
    for (const pinned of ['a', 'b']) expect(await fewest(board, [pinned])).toBe(1);
    expect(await fewest(board, ['a', 'b'])).toBe('impossible');
  });

  it('makes it impossible where nothing can feed it there', async () => {
    const board = boardWith(pedals('a'), [nine(1), nine(1, 30)], [quay('a', 2)]);
    expect(await fewest(board)).toBe(1);
    expect(await fewest(board, ['a'])).toBe('impossible');
  });
});

describe('the program', () => {
  it('has columns for staying on units of today alone', () => {
    const count = (wiring: readonly WiredFeed[]): number => {
      const question = questionFor(boardWith(pedals('ab'), [nine(2)], wiring, 2));
      const { program } = compactProgram(question, question.supplies, coarse);
      return program.columns.filter(({ name }) => name.includes('stays')).length;
    };
    expect(count([])).toBe(0);
    // By itself, on a chain, and the chain's own.
    expect(count([quay('a', 1)])).toBe(3);
  });
});
