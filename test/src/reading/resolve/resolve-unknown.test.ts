import { describe, expect, it } from 'vitest';

import { boardText, boardWithPedals, expectFault, readOf } from '../texts.js';

const guess = 'policy: {headroom: {alone: 1.2, chained: 2, supply: 1.2}, chains: allow, guess: 1.5}';
const assuming = (more: string): string =>
  `assume: {power: DC, polarity: centre-negative, inlet: barrel-2.1, ground: negative${more}}`;

const readBoard = (text: string) => readOf(text).board;
const pedalsOf = (text: string) => readBoard(text).pedals;

describe('what nobody has read of a pedal', () => {
  it('is never filled by what the board assumes', () => {
    const [mole] = pedalsOf(
      boardWithPedals('{name: Mole, volts: 9, milliamps: 30, polarity: unknown, ground: unknown}'),
    );
    expect(mole).toMatchObject({
      polarity: 'unknown',
      ground: 'unknown',
      unknown: ['polarity', 'ground'],
      assumed: { power: 'DC', inlet: 'barrel-2.1' },
      kept: null,
    });
    expect(mole?.assumed).not.toHaveProperty('polarity');
  });

  it('is planned with for volts, power and inlet, and the place is kept until they are read', () => {
    const text = boardText({
      assume: assuming(', volts: 9'),
      pedals:
        'pedals:\n  - {name: Plover, volts: unknown, power: unknown, inlet: unknown, milliamps: 500, later: true}',
    });
    expect(pedalsOf(text)[0]).toMatchObject({
      accepts: { kind: 'listed', millivolts: [9000] },
      power: 'DC',
      inlet: 'barrel-2.1',
      unknown: ['power', 'inlet', 'volts'],
      kept: 'unread',
      assumed: { volts: 9000, power: 'DC', inlet: 'barrel-2.1' },
    });
  });

  it('is, of a draw, what such circuits usually draw, as a guess', () => {
    const text = boardText({
      policy: guess,
      pedals: 'pedals:\n  - {name: Ruff, volts: 9, milliamps: unknown, circuit: tuner}',
    });
    expect(pedalsOf(text)[0]).toMatchObject({
      draw: { kind: 'flat', microamps: 100_000 },
      figure: 'guess',
      unknown: ['milliamps'],
      kept: null,
    });
  });

  it.each([
    [
      'volts',
      '{name: Plover, volts: ‸unknown, milliamps: 5}',
      'Add to `assume` what is likely, for example `volts: 9`',
    ],
    ['circuit', '‸{name: Ruff, volts: 9, milliamps: unknown}', 'for example `circuit: drive`'],
  ])('%s without anything to plan with is refused', (field, pedal, remedy) => {
    const board = boardText({ policy: guess, pedals: `pedals:\n  - ${pedal}` });
    expectFault({ board }, `pedals[0].${field}`, '"', remedy);
  });
});

describe('kept places', () => {
  it('are for what is bought later, and for spare outputs, which the board describes as it assumes', () => {
    const board = readBoard(
      boardText({
        policy:
          'policy: {headroom: {alone: 1.2, chained: 2, supply: 1.2}, chains: allow, spare: [{volts: 9, milliamps: 100, outputs: 2}, {volts: 18, milliamps: 50}]}',
        pedals: 'pedals:\n  - {name: Echo, volts: 9, milliamps: 100, later: true}',
      }),
    );
    expect(board.pedals.map(({ id, kept, alone }) => [id, kept, alone])).toEqual([
      ['echo', 'later', false],
      ['spare-1', 'spare', true],
      ['spare-2', 'spare', true],
      ['spare-3', 'spare', true],
    ]);
    expect(board.pedals[3]).toMatchObject({
      accepts: { millivolts: [18_000] },
      draw: { microamps: 50_000 },
      assumed: {},
    });
  });

  it('are not plugged', () => {
    const board = boardText({
      pedals: 'pedals:\n  - {name: Echo, volts: 9, milliamps: 100, later: true}',
      owned: 'owned: {supplies: [box]}',
      gear: 'gear: {supplies: [{id: box, name: Box, regulated: true, banks: [{outputs: 1, isolated: true, power: DC, plug: barrel-2.1, polarity: centre-negative, settings: [{volts: 9, milliamps: 500}]}]}]}',
      wiring: 'wiring: [{pedal: ‸echo, supply: box, unit: 1, output: 1, volts: 9}]',
    });
    expectFault({ board }, 'wiring[0].pedal', ['bought later', 'only kept'], 'take `later` out');
  });
});
