import { describe, expect, it } from 'vitest';

import { boardText, catalogueText, expectFault, faultsOf, readOf } from '../texts.js';

const catalogue = catalogueText({
  parts: [
    'parts:',
    '  - {id: flip, name: Turning lead, price: 4, fits: barrel-2.1, gives: barrel-2.1, reverses: true}',
    '  - {id: fan, name: Fan of five, price: 8, fits: barrel-2.1, gives: barrel-2.1, tails: 5}',
    '  - {id: stack, name: Stack, price: 8, fits: barrel-2.1, gives: barrel-2.1, joins: series}',
  ].join('\n'),
});
const board = (feeds: readonly string[], owned = 'supplies: [quay]') =>
  boardText({
    pedals: 'pedals:\n  - {name: Grey echo, volts: 9, milliamps: 100}\n  - {name: Fuzz, volts: 9, milliamps: 4}',
    owned: `owned: {${owned}}`,
    wiring: `wiring:\n${feeds.map((feed) => `  - {${feed}}`).join('\n')}`,
  });

describe('an entry of the wiring', () => {
  it('may have names for ids, where only one thing has that name, and so may what is owned', () => {
    const feed = 'pedal: Grey echo, supply: QUAY, unit: 1, output: 2, volts: 9, parts: [turning lead]';
    const { wiring, owned } = readOf(
      board([feed], 'supplies: [Quay], parts: {Fan of five: 2, flip: 1}'),
      catalogue,
    ).board;
    expect(wiring).toMatchObject([{ pedal: 'grey-echo', supply: 'quay', outputs: [2], adapters: ['flip'] }]);
    expect([...owned.supplies]).toEqual([['quay', 1]]);
    expect([...owned.parts]).toEqual([
      ['fan', 2],
      ['flip', 1],
    ]);
  });

  it('names nothing by a name that two have', () => {
    const two = catalogue.replace(
      'parts:',
      '  - {id: barge, name: Quay, price: 50, regulated: true, banks: [{outputs: 2, isolated: true, power: DC, plug: barrel-2.1, polarity: centre-negative, settings: [{volts: 9, milliamps: 500}]}]}\nparts:',
    );
    const feed = 'pedal: fuzz, supply: ‸Quay, output: 2, volts: 9';
    expectFault(
      { board: board([feed]), catalogue: two },
      'wiring[0].supply',
      '"Quay", which is the name of 2 things',
      'Write the id of the one that is meant: quay or barge.',
    );
  });

  it('plugs a pedal once, by whatever name', () => {
    const feeds = [
      'pedal: grey-echo, supply: quay, output: 1, volts: 9',
      'pedal: ‸Grey echo, supply: quay, output: 2, volts: 9',
    ];
    expectFault({ board: board(feeds), catalogue }, 'wiring[1].pedal', ['"grey-echo"', 'plugs already'], 'Remove one');
  });

  it('may leave out the unit where one is owned', () => {
    const feed = 'pedal: fuzz, supply: quay, output: 2, volts: 9';
    expect(readOf(board([feed]), catalogue).board.wiring).toMatchObject([{ unit: 1 }]);
    expectFault(
      { board: board([`‸${feed}`], 'supplies: [quay, quay]').replace('- {‸', '- ‸{'), catalogue },
      'wiring[0].unit',
      'missing; 2 units of "quay" are owned',
      'Add `unit`, a number from 1 to 2.',
    );
    expectFault(
      { board: board([feed.replace('quay', '‸quay')], 'supplies: []'), catalogue },
      'wiring[0].supply',
      '"quay", of which no unit is owned',
      'If it is yours, add the id to `owned.supplies`',
    );
  });

  it('has its chain lead under `chain`: for all pedals of the chain that is told once', () => {
    const feed = (pedal: string) => `pedal: ${pedal}, supply: quay, output: 2, volts: 9, parts: [fan]`;
    const faults = faultsOf(board([feed('grey-echo'), feed('fuzz')]), catalogue);
    expect(faults).toMatchObject([
      {
        key: 'wiring[0].parts[0]',
        message: 'names "Fan of five", a chain lead; `parts` are adapters.',
        remedy: 'Write `chain: fan` instead.',
        alike: [{ key: 'wiring[1].parts[0]' }],
      },
    ]);
    const twice = board([`${feed('fuzz')}, chain: fan`.replace('[fan]', '[‸fan]')]);
    expectFault({ board: twice, catalogue }, 'wiring[0].parts[0]', 'a chain lead', '`chain` names it already');
  });

  it('has its join lead under `join`', () => {
    const feed = 'pedal: fuzz, supply: quay, output: 2, volts: 9, parts: [‸stack]';
    expectFault(
      { board: board([feed]), catalogue },
      'wiring[0].parts[0]',
      'a join lead',
      'Write `join: {mode: series, part: stack}` instead',
    );
  });
});
