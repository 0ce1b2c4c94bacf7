import { describe, expect, it } from 'vitest';

import { boardText, boardWithPedals, expectFault, readOf } from '../texts.js';

const boardWith = (...pedals: readonly string[]) => readOf(boardWithPedals(...pedals)).board;

describe('the adapter that a pedal came with', () => {
  it('is an owned supply for that pedal', () => {
    const board = boardWith(
      '{name: Ruff, volts: [9, 12], prefers: 12, milliamps: 30, adapter: {mains: {from: 220, to: 240}}}',
    );
    expect(board.pedals[0]).toMatchObject({ adapter: { supply: 'own-ruff', only: false }, kept: null, unknown: [] });
    expect(board.gear.supplies).toMatchObject([
      {
        id: 'own-ruff',
        name: 'Own adapter of Ruff',
        price: null,
        source: { kind: 'adapter', volts: { from: 220_000, to: 240_000 } },
        banks: [{ outputs: 1, isolated: true, settings: [{ millivolts: 12_000 }] }],
      },
    ]);
    expect([...board.owned.supplies]).toEqual([['own-ruff', 1]]);
  });

  it('may say nothing of its mains', () => {
    const [own] = boardWith('{name: Ruff, volts: 9, milliamps: 30, adapter: {}}').gear.supplies;
    expect(own?.source).toEqual({ kind: 'adapter', volts: null });
  });

  it.each([
    ['volts', '{name: Ruff, milliamps: 30, adapter: {}}'],
    ['milliamps', '{name: Ruff, volts: 9, adapter: {}}'],
    ['known volts', '{name: Ruff, volts: unknown, milliamps: 30, adapter: {}}'],
    ['a known draw or a circuit', '{name: Ruff, volts: 9, milliamps: unknown, adapter: {}}'],
    ['a known inlet', '{name: Ruff, volts: 9, milliamps: 5, inlet: unknown, adapter: {}}'],
    ['known power', '{name: Ruff, volts: 9, milliamps: 5, power: unknown, adapter: {}}'],
  ])('is the only right one for a pedal without %s, of which nothing is to be confirmed', (_, pedal) => {
    expect(boardWith(pedal).pedals[0]).toMatchObject({
      adapter: { only: true },
      assumed: {},
      unknown: [],
      kept: null,
    });
  });

  it('is the only right one where neither pedal nor board states what a supply has to match', () => {
    const pedals = 'pedals:\n  - {name: Ruff, volts: 9, milliamps: 5, adapter: {}}';
    const [ruff] = readOf(boardText({ assume: 'assume: {power: DC}', pedals })).board.pedals;
    expect(ruff).toMatchObject({ adapter: { only: true }, power: 'DC', polarity: 'unknown', ground: 'unknown' });
  });

  it('is not needed to feed a pedal of unknown polarity', () => {
    const [ruff] = boardWith('{name: Ruff, volts: 9, milliamps: 5, polarity: unknown, adapter: {}}').pedals;
    expect(ruff).toMatchObject({ adapter: { only: false }, polarity: 'unknown', unknown: ['polarity'] });
  });

  it.each([
    ['volts', '‸{name: Ruff, milliamps: 30}'],
    ['milliamps', '‸{name: Ruff, volts: 9}'],
  ])('is what %s may be left out for', (field, pedal) => {
    expectFault(
      { board: boardText({ pedals: `pedals:\n  - ${pedal}` }) },
      `pedals[0].${field}`,
      'missing. Allowed: ',
      `Add \`${field}\`.`,
    );
  });

  it('has an id of its own', () => {
    const board = boardText({
      pedals: 'pedals:\n  - {name: Ruff, adapter: {}}',
      rest: 'gear:\n  supplies:\n    - {id: ‸own-ruff, name: Box, regulated: true, banks: [{outputs: 1, isolated: true, power: DC, plug: barrel-2.1, polarity: centre-negative, settings: [{volts: 9, milliamps: 100}]}]}',
    });
    expectFault({ board }, 'gear.supplies[0].id', '"own-ruff"', 'Give the supply another id.');
  });

  it('states mains in order', () => {
    const board = boardText({ pedals: 'pedals:\n  - {name: Ruff, adapter: {mains: ‸{from: 240, to: 220}}}' });
    expectFault({ board }, 'pedals[0].adapter.mains', 'from 240 to 220', 'Write {from: 220, to: 240}.');
  });

  it('stands in a wiring without output and volts', () => {
    const wired = (entry: string) =>
      boardText({ pedals: 'pedals:\n  - {name: Ruff, adapter: {}}', rest: `wiring:\n  - ${entry}` });
    expect(readOf(wired('{pedal: ruff, supply: own-ruff, lead: 3}')).board.wiring).toEqual([
      {
        pedal: 'ruff',
        supply: 'own-ruff',
        unit: 1,
        outputs: [1],
        millivolts: 9000,
        join: null,
        chain: null,
        adapters: [],
        lead: 3,
        own: true,
      },
    ]);
  });
});
