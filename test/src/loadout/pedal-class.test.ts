import { describe, expect, it } from 'vitest';

import type { Pedal } from '../../../src/domain/pedal.js';
import { pedalClasses } from '../../../src/loadout/pedal-class.js';
import { pedalOf } from '../../support/builders.js';
import { alike, inOrders, unlike } from '../../support/unlike-pedals.js';

const classesOf = (pedals: readonly Pedal[]): readonly (readonly string[])[] =>
  pedalClasses(pedals).map(({ members }) => members.map(({ id }) => id));

describe('pedal classes', () => {
  it('hold pedals that are alike, in the order of the board', () => {
    const odd = pedalOf('odd', 20);
    const pedals = [pedalOf('first', 10), odd, pedalOf('second', 10), pedalOf('third', 10)];
    expect(classesOf(pedals)).toEqual([['first', 'second', 'third'], ['odd']]);
    expect(pedalClasses(pedals).map(({ like }) => like.id)).toEqual(['first', 'odd']);
  });

  it.each(alike)('leave the %s aside', (_, pedals) => {
    expect(classesOf(pedals)).toEqual([pedals.map(({ id }) => id)]);
  });

  it('leave aside where the figure was read, but for guesses', () => {
    expect(classesOf([pedalOf('one', 10), pedalOf('two', 10, { figure: 'measured' })])).toEqual([['one', 'two']]);
  });

  it('leave the order of the figures aside', () => {
    expect(classesOf(inOrders)).toEqual([['one', 'two'], ['three']]);
  });

  it.each(unlike)('tell pedals apart by the %s', (_, pedals) => {
    expect(classesOf(pedals)).toEqual(pedals.map(({ id }) => [id]));
  });
});
