import { describe, expect, it } from 'vitest';

import type { Pedal } from '../../../src/domain/pedal.js';
import { pedalClasses } from '../../../src/loadout/pedal-class.js';
import { listed, milliamps, pedalOf, volts } from '../../support/builders.js';

const perVoltage = (...figures: readonly (readonly [number, number])[]): Partial<Pedal> => ({
  accepts: listed(9, 12),
  draw: { kind: 'per voltage', microamps: new Map(figures.map(([at, draw]) => [volts(at), milliamps(draw)])) },
});

const classesOf = (...pedals: readonly Pedal[]): readonly (readonly string[])[] =>
  pedalClasses(pedals).map(({ members }) => members.map(({ id }) => id));

describe('pedal classes', () => {
  it('hold pedals that are alike, in the order of the board', () => {
    const odd = pedalOf('odd', 20);
    const pedals = [pedalOf('first', 10), odd, pedalOf('second', 10), pedalOf('third', 10)];
    expect(classesOf(...pedals)).toEqual([['first', 'second', 'third'], ['odd']]);
    expect(pedalClasses(pedals).map(({ like }) => like.id)).toEqual(['first', 'odd']);
  });

  it.each<[string, Partial<Pedal>]>([
    ['what was assumed', { assumed: { power: 'DC' } }],
    ['where the figure was read, but for guesses', { figure: 'measured' }],
  ])('leave %s aside', (_, more) => {
    expect(classesOf(pedalOf('one', 10), pedalOf('two', 10, more))).toEqual([['one', 'two']]);
  });

  it('leave the order of the figures aside', () => {
    const one = pedalOf('one', 10, perVoltage([9, 30], [12, 20]));
    expect(classesOf(one, pedalOf('two', 10, perVoltage([12, 20], [9, 30])))).toEqual([['one', 'two']]);
    expect(classesOf(one, pedalOf('two', 10, perVoltage([9, 30], [12, 21])))).toEqual([['one'], ['two']]);
  });

  it.each<[string, Partial<Pedal>]>([
    ['power', { power: 'AC', polarity: null }],
    ['polarity', { polarity: 'centre-positive' }],
    ['inlet', { inlet: 'jack-3.5' }],
    ['ground', { ground: 'positive' }],
    ['accepted volts', { accepts: listed(9, 12) }],
    ['a range of volts', { accepts: { kind: 'range', from: volts(9), to: volts(9) } }],
    ['preferred volts', { prefers: volts(9) }],
    ['the most volts', { survives: volts(9) }],
    ['draw, by a microamp', { draw: { kind: 'flat', microamps: milliamps(10.001) } }],
    ['startup', { startup: milliamps(10) }],
    ['a guess', { figure: 'guess' }],
    ['digital', { digital: true }],
    ['high-gain', { highGain: true }],
    ['alone', { alone: true }],
  ])('tell pedals apart by %s', (_, more) => {
    expect(classesOf(pedalOf('one', 10), pedalOf('two', 10, more))).toEqual([['one'], ['two']]);
  });
});
