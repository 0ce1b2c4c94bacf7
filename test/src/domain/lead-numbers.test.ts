import { describe, expect, it } from 'vitest';

import type { WiredFeed } from '../../../src/domain/board.js';
import { kitOf } from '../../../src/domain/kit.js';
import { leadNumbers } from '../../../src/domain/lead-numbers.js';
import { pedalId, supplyId } from '../../../src/domain/quantities.js';
import { bankOf, boardOf, catalogueOf, pedalOf, settingOf, supplyOf, volts } from '../../support/builders.js';

const supplies = ['quay', 'dory'].map((id) => supplyOf(id, 10, [bankOf(6, [settingOf(9, 500)])]));

/** A pedal by its letter on an output of a unit: "a quay 2". */
const hung = (text: string) => {
  const [pedal = '', supply = '', output = ''] = text.split(' ');
  return { pedal: pedalId(pedal), supply: supplyId(supply), unit: 1, outputs: [Number(output)] };
};

/** The same with the number of its lead, where it has one: "a quay 2 7". */
function wired(text: string): WiredFeed {
  const lead = text.split(' ')[3];
  const rest = { millivolts: volts(9), join: null, chain: null, adapters: [] };
  return { ...hung(text), ...rest, ...(lead === undefined ? {} : { lead: Number(lead) }) };
}

/** Pedals whose letter is a capital have a place kept. */
function numbers(today: readonly string[], plan: readonly string[]): Readonly<Record<string, number>> {
  const pedals = [...new Set([...today, ...plan].map((text) => text.slice(0, 1)))].map((id) =>
    pedalOf(id, 10, { kept: id === id.toUpperCase() ? 'later' : null }),
  );
  const kit = kitOf(boardOf(pedals, { wiring: today.map(wired) }), catalogueOf(supplies));
  return Object.fromEntries(leadNumbers(kit, plan.map(hung)));
}

describe('the numbers of leads', () => {
  it('are counted in the order of hooking up where the file gives none', () => {
    expect(numbers([], ['c dory 1', 'a quay 3', 'b quay 1'])).toEqual({ b: 1, a: 2, c: 3 });
    expect(numbers(['a quay 1', 'b quay 2'], ['a quay 2', 'b quay 1'])).toEqual({ b: 1, a: 2 });
  });

  it('are shared by all pedals of a chain', () => {
    expect(numbers([], ['a quay 2', 'b quay 1', 'c quay 2'])).toEqual({ b: 1, a: 2, c: 2 });
  });

  it('go with their pedals, wherever these move', () => {
    const today = ['a quay 1 3', 'b quay 2 1', 'c quay 3 7'];
    expect(numbers(today, ['a dory 1', 'b quay 3', 'c quay 2'])).toEqual({ a: 3, b: 1, c: 7 });
  });

  it('of new leads are above all that the file remembers, those of pedals that go included', () => {
    expect(numbers(['a quay 1 3', 'b quay 2 9'], ['a quay 1', 'c quay 2', 'd quay 3'])).toEqual({ a: 3, c: 10, d: 11 });
  });

  it('are new for pedals that are plugged without a number', () => {
    expect(numbers(['a quay 1 3', 'b quay 2'], ['a quay 1', 'b quay 2'])).toEqual({ a: 3, b: 4 });
  });

  it('of kept places come last: only what is plugged is remembered', () => {
    expect(numbers(['b quay 2 5'], ['A quay 1', 'b quay 2', 'c quay 3'])).toEqual({ b: 5, c: 6, A: 7 });
    expect(numbers([], ['A quay 1', 'b quay 1', 'c quay 3'])).toEqual({ A: 1, b: 1, c: 2 });
  });

  it('stay with the larger part of a chain that is taken apart', () => {
    const today = ['a quay 1 5', 'b quay 1 5', 'c quay 1 5'];
    expect(numbers(today, ['a quay 1', 'b dory 1', 'c dory 1'])).toEqual({ b: 5, c: 5, a: 6 });
  });

  it('are given once: of leads that become one the smaller number stays, where they bring as many pedals', () => {
    expect(numbers(['a quay 1 5', 'b quay 2 4'], ['a quay 1', 'b quay 1'])).toEqual({ a: 4, b: 4 });
    expect(numbers(['a quay 1 5', 'b quay 1 5', 'c quay 2 4'], ['a quay 1', 'b quay 1', 'c quay 1'])).toEqual({
      ...{ a: 5, b: 5, c: 5 },
    });
  });
});
