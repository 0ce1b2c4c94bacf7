import { describe, expect, it } from 'vitest';

import type { Part } from '../../../src/domain/part.js';
import type { Pedal, Polarity } from '../../../src/domain/pedal.js';
import { behind, router, type Exit } from '../../../src/loadout/routes.js';
import { idsOf, kindsOf } from '../../support/bench.js';
import { partOf, pedalOf } from '../../support/builders.js';

const negative: Exit = { plug: 'barrel-2.1', polarities: ['centre-negative'] };
const switched: Exit = { plug: 'barrel-2.1', polarities: ['centre-negative', 'centre-positive'] };
const alternating: Exit = { plug: 'barrel-2.1', polarities: [] };

const adapter = (id: string, fits: string, gives: string, price = 5, more: Partial<Part> = {}): Part =>
  partOf(id, price, { kind: 'adapter' }, { fits, gives, ...more });
const flip = adapter('flip', 'barrel-2.1', 'barrel-2.1', 4, { reverses: true });
const mini = adapter('mini', 'barrel-2.1', 'jack-3.5');

const plain = pedalOf('plain', 10);
const positive = pedalOf('positive', 10, { polarity: 'centre-positive' });
const jack = pedalOf('jack', 10, { inlet: 'jack-3.5' });
const positiveJack = pedalOf('positive-jack', 10, { inlet: 'jack-3.5', polarity: 'centre-positive' });

/** The routes as lists of part ids, in no order. */
function routes(exit: Exit, pedal: Pedal, parts: readonly Part[], owned: Record<string, number> = {}) {
  const kinds = kindsOf(parts, owned);
  return router(kinds)(exit)(pedal)
    .map((route) => idsOf(route, kinds).join(' then '))
    .sort();
}

describe('routes to an inlet', () => {
  it.each<[string, Exit, Pedal, readonly Part[], readonly string[]]>([
    ['none is needed where plug and polarity agree', negative, plain, [flip, mini], ['']],
    ['a polarity switch agrees with both', switched, positive, [flip], ['']],
    ['without a reversing lead the polarity stays wrong', negative, positive, [mini], []],
    ['one reversing lead turns it', negative, positive, [flip], ['flip']],
    ['an adapter changes the plug', negative, jack, [mini, flip], ['mini']],
    ['two leads change both', negative, positiveJack, [mini, flip], ['flip then mini']],
    ['AC has no polarity', alternating, pedalOf('ac', 10, { power: 'AC', polarity: null }), [flip], ['']],
    ['no DC pedal hangs on AC', alternating, plain, [flip], []],
  ])('%s', (_, exit, pedal, parts, expected) => {
    expect(routes(exit, pedal, parts)).toEqual(expected);
  });

  it('turns the polarity by an odd number of reversing leads only', () => {
    const parts = [
      adapter('first', 'barrel-2.1', 'snap-clip', 5, { reverses: true }),
      adapter('second', 'snap-clip', 'jack-3.5', 5, { reverses: true }),
    ];
    expect(routes(negative, jack, parts)).toEqual(['first then second']);
    expect(routes(negative, positiveJack, parts)).toEqual([]);
  });

  it('goes through two adapters and never through three', () => {
    const first = adapter('first', 'barrel-2.1', 'snap-clip');
    const second = adapter('second', 'snap-clip', 'barrel-2.5');
    const third = adapter('third', 'barrel-2.5', 'jack-3.5');
    expect(routes(negative, { ...plain, inlet: 'barrel-2.5' }, [first, second, third])).toEqual(['first then second']);
    expect(routes(negative, jack, [first, second, third])).toEqual([]);
  });

  it('has no use for a part that changes nothing, nor for two that undo each other', () => {
    const extension = adapter('extension', 'barrel-2.1', 'barrel-2.1');
    expect(routes(negative, positive, [extension, flip])).toEqual(['flip']);
    expect(routes(negative, plain, [extension, flip])).toEqual(['']);
    expect(routes(negative, positive, [extension])).toEqual([]);
  });

  it('takes no chain lead and no join lead for an adapter', () => {
    const chain = partOf('chain', 1, { kind: 'chain', tails: 2 }, { gives: 'jack-3.5' });
    const join = partOf('join', 1, { kind: 'join', mode: 'series' }, { gives: 'jack-3.5' });
    expect(routes(negative, jack, [chain, join])).toEqual([]);
  });
});

describe('routes that another one makes needless', () => {
  const ready = (price: number, more: Partial<Part> = {}): Part =>
    adapter('ready', 'barrel-2.1', 'jack-3.5', price, { reverses: true, ...more });

  it('leaves out a longer one that costs as much', () => {
    expect(routes(negative, positiveJack, [flip, mini, ready(9)])).toEqual(['ready']);
  });

  it('keeps a longer one that is a cent cheaper', () => {
    expect(routes(negative, positiveJack, [flip, mini, ready(9.01)])).toEqual(['flip then mini', 'ready']);
  });

  it('keeps a dear one where the cheap one may run out', () => {
    expect(routes(negative, positiveJack, [flip, mini, ready(1, { stock: 3 })])).toEqual(['flip then mini', 'ready']);
  });

  it('keeps a long one of which the leads are owned', () => {
    const owned = { flip: 1, mini: 1 };
    expect(routes(negative, positiveJack, [flip, mini, ready(1)], owned)).toEqual(['flip then mini', 'ready']);
  });

  it('leaves out one that contains another, even one that may run out', () => {
    const parts = [
      adapter('snap', 'barrel-2.1', 'snap-clip', 1),
      adapter('direct', 'barrel-2.1', 'jack-3.5', 8, { stock: 1 }),
      adapter('longer', 'jack-3.5', 'jack-3.5', 0),
      adapter('rest', 'snap-clip', 'jack-3.5', 1),
    ];
    expect(routes(negative, jack, parts)).toEqual(['direct', 'snap then rest']);
  });
});

describe('the exit behind a lead', () => {
  const behindOf = (exit: Exit, part: Part): Exit | undefined => kindsOf([part]).map((kind) => behind(exit, kind))[0];

  it.each<[readonly Polarity[], boolean, readonly Polarity[]]>([
    [['centre-negative'], false, ['centre-negative']],
    [['centre-negative'], true, ['centre-positive']],
    [['centre-positive'], true, ['centre-negative']],
    [[], true, []],
  ])('has the plug that the lead gives; polarity %j, reversed %j: %j', (polarities, reverses, expected) => {
    const exit = behindOf(
      { plug: 'barrel-2.1', polarities },
      adapter('lead', 'barrel-2.1', 'jack-3.5', 1, { reverses }),
    );
    expect(exit).toEqual({ plug: 'jack-3.5', polarities: expected });
  });
});
