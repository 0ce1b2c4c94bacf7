import { describe, expect, it } from 'vitest';

import { boardWithPedals, expectFault, readOf } from '../texts.js';

const pedal = (fields: string) => ({ board: boardWithPedals(`{name: Echo, ${fields}}`) });
const resolved = (fields: string) => readOf(pedal(fields).board).board.pedals[0];

describe('accepted volts', () => {
  it('are one number, a list or a range', () => {
    expect(resolved('volts: 9.5, milliamps: 1')?.accepts).toEqual({ kind: 'listed', millivolts: [9500] });
    expect(resolved('volts: [18, 9], milliamps: 1')?.accepts).toEqual({ kind: 'listed', millivolts: [18000, 9000] });
    expect(resolved('volts: {from: 9, to: 18}, milliamps: 1')?.accepts).toEqual({
      kind: 'range',
      from: 9000,
      to: 18000,
    });
    expect(resolved('volts: {from: 9, to: 9}, milliamps: 1')?.accepts).toEqual({ kind: 'range', from: 9000, to: 9000 });
  });

  it('a range must not run backwards', () => {
    expectFault(
      pedal('volts: ‸{from: 18, to: 9}, milliamps: 1'),
      'pedals[0].volts',
      'from 18 to 9',
      'Write {from: 9, to: 18}.',
    );
  });

  it('a voltage is listed once', () => {
    expectFault(pedal('volts: [9, 12, ‸9.0], milliamps: 1'), 'pedals[0].volts[2]', 'found 9 a second time', 'Remove');
  });

  it('a list must not be empty', () => {
    expectFault(pedal('volts: ‸[], milliamps: 1'), 'pedals[0].volts', 'an empty list', 'Add what is missing');
  });
});

describe('a per-voltage map', () => {
  it('narrows a list to its keys, which may have decimals', () => {
    const narrowed = resolved('volts: [18, 9.5, 9], milliamps: {9: 300, 9.5: 250.5, 24: 1}');
    expect(narrowed?.accepts).toEqual({ kind: 'listed', millivolts: [9500, 9000] });
    expect(narrowed?.draw).toEqual({
      kind: 'per voltage',
      microamps: new Map([
        [9500, 250_500],
        [9000, 300_000],
      ]),
    });
  });

  it('narrows a range to its keys, in rising order', () => {
    const narrowed = resolved('volts: {from: 9, to: 18}, milliamps: {18: 100, 9: 200, 8.999: 1, 18.001: 1}');
    expect(narrowed?.accepts).toEqual({ kind: 'listed', millivolts: [9000, 18000] });
    const mixed = resolved('volts: {from: 9, to: 18}, milliamps: {12: 1, 18: 2, 9.5: 3, 10.5: 4}');
    expect(mixed?.accepts).toEqual({ kind: 'listed', millivolts: [9500, 10_500, 12_000, 18_000] });
  });

  it('may name the most volts that there are', () => {
    const most = resolved('volts: [9, 1000], milliamps: {9: 1, 1000: 5}');
    expect(most?.accepts).toEqual({ kind: 'listed', millivolts: [9000, 1_000_000] });
    expect(resolved('volts: 0.001, milliamps: {0.001: 1}')?.accepts).toMatchObject({ millivolts: [1] });
  });

  it('must leave a voltage', () => {
    expectFault(
      pedal('volts: [9, 12], milliamps: ‸{18: 100, 24: 90}'),
      'pedals[0].milliamps',
      ['18, 24 V', '9, 12 V', 'accept none'],
      'Give a figure',
    );
  });

  it('must not be empty', () => {
    expectFault(pedal('volts: 9, milliamps: ‸{}'), 'pedals[0].milliamps', 'an empty map', 'one for each voltage');
  });

  it('has one figure for each voltage', () => {
    expectFault(
      pedal('volts: 9, milliamps: {9: 1, ‸9.0: 2}'),
      'pedals[0].milliamps["9.0"]',
      'second figure for 9 V',
      'Keep the one that the label gives.',
    );
  });

  it('has plain volts as keys', () => {
    expectFault(pedal('volts: 9, milliamps: {‸9V: 1}'), 'pedals[0].milliamps.9V', 'the key "9V"', 'Write 9.');
    expectFault(
      pedal('volts: 9, milliamps: {‸0x9: 1}'),
      'pedals[0].milliamps.0x9',
      'the key "0x9"',
      'Write plain volts',
    );
    expectFault(pedal('volts: 9, milliamps: {‸0: 1}'), 'pedals[0].milliamps.0', 'the key "0"', 'above 0');
    expectFault(pedal('volts: 9, milliamps: {‸1000.1: 1}'), 'pedals[0].milliamps["1000.1"]', 'up to 1000', 'Write');
    expectFault(pedal('volts: 9, milliamps: {‸9.0001: 1}'), 'pedals[0].milliamps["9.0001"]', 'three decimals', 'Write');
    expectFault(
      pedal('volts: 9, milliamps: {‸constructor: 1}'),
      'pedals[0].milliamps.constructor',
      '"constructor"',
      'Write',
    );
  });

  it('asks for the space that YAML needs after a colon', () => {
    expectFault(
      pedal('volts: 9, milliamps: {‸9:300}'),
      'pedals[0].milliamps["9:300"]',
      'the key "9:300"',
      'Put a space after the colon: "9: 300".',
    );
  });
});
