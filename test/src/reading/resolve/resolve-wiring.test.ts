import { describe, expect, it } from 'vitest';

import { boardText, catalogueText, expectFault, expectRefused, expectToldOnce, faultsOf, readOf } from '../texts.js';

const catalogue = catalogueText();
const board = (...feeds: readonly string[]) =>
  boardText({
    owned: 'owned: {supplies: [quay]}',
    wiring: `wiring:\n${feeds.map((feed) => `  - {${feed}}`).join('\n')}`,
  });
const feed = 'pedal: echo, supply: quay, unit: 1, output: 2, volts: 9';
const joined = 'pedal: echo, supply: quay, unit: 1, outputs: [2, 1], volts: 18, join: {mode: series, part: flip}';
const refused = (text: string, key: string, message: string | readonly string[], remedy: string) =>
  expectFault({ board: board(text), catalogue }, key, message, remedy);

describe('a battery in the wiring', () => {
  const sold = `${catalogue}batteries:
  - {id: block, name: Block, type: 9V-block, price: 3, volts: 9, milliampHours: 550}
  - {id: pen, name: Pen, type: AA, price: 1, volts: 1.5, milliampHours: 2000}
`;
  const withBattery = (text: string, pedal = 'battery: {type: 9V-block, count: 1}') => ({
    board: board(text).replace('milliamps: 100}', `milliamps: 100, ${pedal}}`),
    catalogue: sold,
  });

  it('is one that its pedal takes', () => {
    const { board: text } = withBattery('pedal: echo, battery: Block');
    expect(readOf(text, sold).board.wiring).toMatchObject([{ pedal: 'echo', battery: 'block', millivolts: 9000 }]);
  });

  it.each([
    ['that nobody sells', 'blok', undefined],
    ['of another type', 'pen', undefined],
    ['for a pedal that takes none', 'block', 'digital: true'],
  ])('%s is told once', (_, battery, pedal) => {
    const texts = withBattery(`pedal: echo, battery: ‸${battery}`, pedal);
    const words = [`"${battery}"`, 'no battery that the pedal takes'];
    expectFault(texts, 'wiring[0].battery', words, 'of the type that the pedal states');
  });

  it('stands beside no supply', () => {
    const texts = withBattery('pedal: echo, supply: quay, battery: ‸block');
    expectFault(texts, 'wiring[0].battery', 'beside `supply`', 'Remove the one that is not plugged');
  });
});

describe('the wiring', () => {
  it('is resolved to exact domain values', () => {
    expect(readOf(board(`${feed}, parts: [flip], chain: flip`), catalogue).board.wiring).toEqual([
      {
        pedal: 'echo',
        supply: 'quay',
        unit: 1,
        outputs: [2],
        millivolts: 9000,
        join: null,
        chain: 'flip',
        adapters: ['flip'],
      },
    ]);
    expect(readOf(board(joined), catalogue).board.wiring[0]).toMatchObject({
      outputs: [1, 2],
      millivolts: 18_000,
      join: { mode: 'series', part: 'flip' },
      chain: null,
      adapters: [],
    });
  });

  it('keeps the number of a lead, which a chain has but one of', () => {
    const wah = 'pedal: wah, supply: quay, unit: 1, output: 1, volts: 9';
    const boardWith = (...feeds: readonly string[]) =>
      board(...feeds).replace('milliamps: 100}', 'milliamps: 100}\n  - {name: Wah, volts: 9, milliamps: 1}');
    const [echo, other] = readOf(boardWith(`${feed}, lead: 7`, wah), catalogue).board.wiring;
    expect([echo?.lead, other?.lead]).toEqual([7, undefined]);
    const onOne = wah.replace('output: 1', 'output: 2');
    expect(faultsOf(boardWith(`${feed}, lead: 7`, `${onOne}, lead: 7`), catalogue)).toEqual([]);
    const two = (first: string, second: string) => ({ board: boardWith(first, second), catalogue });
    expectFault(
      two(`${feed}, lead: 7`, `${wah}, lead: ‸7`),
      'wiring[1].lead',
      ['found 7', 'the lead of another output'],
      'a new lead gets a new number',
    );
    expectFault(
      two(`${feed}, lead: 7`, `${onOne}, lead: ‸8`),
      'wiring[1].lead',
      ['found 8', 'says 7 of the same output'],
      'Write the number that stands on the lead',
    );
    refused(`${feed}, lead: ‸0`, 'wiring[0].lead', ['found 0', 'from 1'], 'Write a whole number');
  });

  it('keeps the letter of a tail, which a chain lead has but once', () => {
    const wah = 'pedal: wah, supply: quay, unit: 1, output: 2, volts: 9, chain: fan';
    const boardWith = (...feeds: readonly string[]) =>
      board(...feeds).replace('milliamps: 100}', 'milliamps: 100}\n  - {name: Wah, volts: 9, milliamps: 1}');
    const shop = `${catalogue}  - {id: fan, name: Fan, fits: barrel-2.1, gives: barrel-2.1, tails: 3, price: 5}\n`;
    const both = (one: string, other: string) =>
      boardWith(`${feed}, chain: fan, lead: 7${one}`, `${wah}, lead: 7${other}`);
    expect(readOf(both(', tail: b', ''), shop).board.wiring.map(({ tail }) => tail)).toEqual(['b', undefined]);
    expect(faultsOf(both(', tail: a', ', tail: b'), shop)).toEqual([]);
    expectFault(
      { board: both(', tail: b', ', tail: ‸b'), catalogue: shop },
      'wiring[1].tail',
      ['found "b"', 'gives to another pedal on lead 7'],
      'it then gets one that is free',
    );
    refused(`${feed}, lead: 7, tail: ‸b`, 'wiring[0].tail', 'found "b" without `chain`', 'Remove `tail`');
    refused(`${feed}, chain: flip, tail: ‸b`, 'wiring[0].tail', 'found "b" without `lead`', 'Remove `tail`');
    refused(`${feed}, lead: 7, tail: ‸3`, 'wiring[0].tail', ['found 3', 'a letter such as b'], '');
  });

  it('has the outputs of a join in rising order, however they are written', () => {
    for (const outputs of ['[1, 2]', '[2, 1]'])
      expect(readOf(board(joined.replace('[2, 1]', outputs)), catalogue).board.wiring[0]?.outputs).toEqual([1, 2]);
  });

  it('is empty where nothing is plugged', () => {
    expect(readOf(boardText({ wiring: 'wiring: []' })).board.wiring).toEqual([]);
    expect(readOf(boardText()).board.wiring).toEqual([]);
  });

  it('names pedals of the board', () => {
    refused(feed.replace('echo', '‸ecko'), 'wiring[0].pedal', ['"ecko"', "board's pedals"], 'Did you mean echo?');
  });

  it('plugs a pedal once', () => {
    const text = board(feed, feed.replace('echo', '‸echo').replace('output: 2', 'output: 1'));
    expectFault({ board: text, catalogue }, 'wiring[1].pedal', ['"echo"', 'line 9'], 'Remove one');
  });

  it('names supplies and parts that something describes', () => {
    refused(feed.replace('quay', '‸quey'), 'wiring[0].supply', 'the supply "quey"', 'Did you mean quay?');
    refused(`${feed}, parts: [‸flap]`, 'wiring[0].parts[0]', 'the part "flap"', 'Did you mean flip?');
    refused(`${feed}, chain: ‸fan`, 'wiring[0].chain', 'the part "fan"', 'Describe it');
    refused(joined.replace('part: flip', 'part: ‸stack'), 'wiring[0].join.part', 'the part "stack"', 'Describe it');
  });

  it('uses units that are owned', () => {
    refused(feed.replace('unit: 1', 'unit: ‸2'), 'wiring[0].unit', ['found 2', 'only 1 unit'], 'from 1 to 1');
    const unowned = boardText({ wiring: `wiring:\n  - {${feed.replace('unit: 1', 'unit: ‸1')}}` });
    expectFault({ board: unowned, catalogue }, 'wiring[0].unit', '"quay", of which no unit is owned', 'If it is yours');
    refused(feed.replace('unit: 1', 'unit: ‸0'), 'wiring[0].unit', ['found 0', 'from 1'], 'Write a whole number');
  });

  it('says how many units are owned', () => {
    const owning = (count: number) => ({
      board: boardText({
        owned: `owned: {supplies: [${Array.from({ length: count }, () => 'quay').join(', ')}]}`,
        wiring: `wiring:\n  - {${feed.replace('unit: 1', 'unit: ‸4')}}`,
      }),
      catalogue,
    });
    const added = 'or add the unit to `owned.supplies`.';
    expectFault(
      owning(0),
      'wiring[0].unit',
      'names "quay", of which no unit is owned; what is plugged today has to be.',
      'If it is yours, add the id to `owned.supplies`',
    );
    expectFault(owning(1), 'wiring[0].unit', 'found 4, but only 1 unit of "quay" is owned.', `from 1 to 1, ${added}`);
    expectFault(owning(3), 'wiring[0].unit', 'found 4, but only 3 units of "quay" are owned.', `from 1 to 3, ${added}`);
    const four = owning(4);
    expect(faultsOf(four.board.replace('‸', ''), catalogue)).toEqual([]);
  });

  it('does not judge units when an owned id is wrong already', () => {
    const text = board(feed).replace('[quay]', '[quey]');
    expect(faultsOf(text, catalogue).map(({ key }) => key)).toEqual(['owned.supplies[0]']);
  });

  it('uses outputs that the supply has', () => {
    refused(feed.replace('output: 2', 'output: ‸3'), 'wiring[0].output', ['found 3', '1 to 2'], 'from 1 to 2');
    refused(joined.replace('[2, 1]', '[2, ‸3]'), 'wiring[0].outputs[1]', ['found 3', '1 to 2'], 'from 1 to 2');
  });

  it('uses the one output of a supply that has no other', () => {
    const adapter = catalogue.replace('outputs: 2', 'outputs: 1');
    const text = board(feed.replace('output: 2', 'output: ‸2'));
    expectFault({ board: text, catalogue: adapter }, 'wiring[0].output', '"quay" has one output.', 'Write 1.');
    expect(faultsOf(board(feed.replace('output: 2', 'output: 1')), adapter)).toEqual([]);
  });

  it('is not judged by a supply of which something is wrong', () => {
    const wrong = catalogue.replace('outputs: 2', 'outputs: two');
    const keys = faultsOf(board(feed.replace('output: 2, volts: 9', 'output: 7, volts: 15')), wrong).map(
      ({ key }) => key,
    );
    expect(keys).toEqual(['supplies[0].banks[0].outputs']);
  });

  it.each([
    ['pedal', feed.replace('pedal: echo, ', '')],
    ['supply', feed.replace('supply: quay, ', '')],
    ['unit', feed.replace('unit: 1', 'unit: first')],
    ['volts', feed.replace(', volts: 9', '')],
    ['output', feed.replace('output: 2, ', '')],
    ['output', feed.replace('output: 2', 'output: two')],
    ['outputs', joined.replace('[2, 1]', '2')],
    ['outputs', joined.replace('[2, 1]', '[1, 1]')],
    ['join', joined.replace(/, join: .*/, '')],
    ['join', joined.replace(/join: .*/, 'join: series')],
    ['join.part', joined.replace(', part: flip', '')],
  ])('comes to nothing where an entry has a wrong %s, or none (%s)', (field, entry) => {
    const other = '{name: Fuzz, volts: 9, milliamps: 1}';
    const withOther = (text: string) => text.replace('\nowned', `\n  - ${other}\nowned`);
    expectRefused({ board: board(entry), catalogue }, `wiring[0].${field}`);
    const second = board(feed.replace('echo', 'fuzz').replace('output: 2', 'output: 1'), entry);
    expectRefused({ board: withOther(second), catalogue }, `wiring[1].${field}`);
  });

  it('takes two entries without a pedal for two entries', () => {
    const bare = feed.replace('pedal: echo, ', '');
    expectRefused({ board: board(bare, bare), catalogue }, 'wiring[0].pedal', 'wiring[1].pedal');
  });

  it('has a wrong lead, which is told once', () => {
    expectToldOnce({ board: board(`${feed}, chain: 5`), catalogue }, 'wiring[0].chain');
    expectToldOnce({ board: board(`${feed}, parts: flip`), catalogue }, 'wiring[0].parts');
  });

  it('counts on volts that its outputs give', () => {
    refused(feed.replace('volts: 9', 'volts: ‸12'), 'wiring[0].volts', ['found 12', 'output 2', 'gives 9 V'], 'set to');
    refused(joined.replace('volts: 18', 'volts: ‸9'), 'wiring[0].volts', 'in series make 18 V', 'the sum');
    const parallel = joined.replace('series', 'parallel');
    refused(parallel.replace('volts: 18', 'volts: ‸18'), 'wiring[0].volts', 'in parallel give 9 V', 'set to');
    expect(faultsOf(board(parallel.replace('volts: 18', 'volts: 9')), catalogue)).toEqual([]);
  });

  it('counts on any sum of two settings in series, and on common ones in parallel', () => {
    const shop = catalogueText({
      supplies: [
        'supplies:',
        '  - {id: quay, name: Quay, price: 50, regulated: true, banks: [',
        '     {outputs: 1, isolated: true, power: DC, plug: barrel-2.1, polarity: centre-negative, switch: each,',
        '      settings: [{volts: 9, milliamps: 500}, {volts: 12, milliamps: 400}]},',
        '     {outputs: 1, isolated: true, power: DC, plug: barrel-2.1, polarity: centre-negative, switch: each,',
        '      settings: [{volts: 9.5, milliamps: 500}, {volts: 12, milliamps: 400}]},',
        '     {outputs: 1, isolated: true, power: DC, plug: barrel-2.1, polarity: centre-negative,',
        '      settings: [{volts: 6, milliamps: 500}]}]}',
      ].join('\n'),
    });
    for (const sum of [18.5, 21, 21.5, 24])
      expect(faultsOf(board(joined.replace('volts: 18', `volts: ${sum}`)), shop)).toEqual([]);
    const refusedBy = (text: string, message: string) =>
      expectFault({ board: board(text), catalogue: shop }, 'wiring[0].volts', [message], '');
    refusedBy(
      joined.replace('volts: 18', 'volts: ‸18'),
      'found 18; outputs 1 and 2 of "quay" in series make 18.5, 21, 21.5 or 24 V.',
    );
    const parallel = joined.replace('series', 'parallel');
    expect(faultsOf(board(parallel.replace('volts: 18', 'volts: 12')), shop)).toEqual([]);
    refusedBy(parallel.replace('volts: 18', 'volts: ‸9'), 'outputs 1 and 2 of "quay" in parallel give 12 V.');
    const apart = parallel.replace('[2, 1]', '[2, 3]').replace('volts: 18', 'volts: ‸6');
    refusedBy(apart, 'outputs 2 and 3 of "quay" cannot be set to the same volts');
  });

  it('tells one fault of an entry once: volts are not judged where the outputs are wrong', () => {
    const keys = (text: string) => faultsOf(board(text), catalogue).map(({ key }) => key);
    expect(keys(feed.replace('output: 2, volts: 9', 'output: 7, volts: 15'))).toEqual(['wiring[0].output']);
    expect(keys(joined.replace('[2, 1]', '[1, 1]'))).toEqual(['wiring[0].outputs']);
    expect(keys(feed.replace('volts: 9', 'volts: 9V'))).toEqual(['wiring[0].volts']);
    expect(keys(feed.replace('quay', 'quey').replace('volts: 9', 'volts: 15'))).toEqual(['wiring[0].supply']);
  });

  it('has one output, or two and a join', () => {
    const both = feed.replace('output: 2', 'output: 2, outputs: ‸[1, 2], join: {mode: series, part: flip}');
    refused(both, 'wiring[0].outputs', 'beside `output`', 'Remove one');
    refused(`${feed}, join: ‸{mode: series, part: flip}`, 'wiring[0].join', 'one output', 'outputs: [1, 2]');
    const neither = boardText({
      owned: 'owned: {supplies: [quay]}',
      wiring: `wiring:\n  - ‸{${feed.replace('output: 2, ', '')}}`,
    });
    expectFault({ board: neither, catalogue }, 'wiring[0].output', 'missing', 'Add `output`');
    const noJoin = neither.replace('unit: 1', 'unit: 1, outputs: [1, 2]');
    expectFault({ board: noJoin, catalogue }, 'wiring[0].join', 'missing', 'Add `join');
    refused(joined.replace('[2, 1]', '‸[2, 2]'), 'wiring[0].outputs', 'twice', 'two different');
    refused(
      joined.replace('[2, 1]', '‸[2]'),
      'wiring[0].outputs',
      ['a list of 1 entry', 'two output'],
      'Add what is missing',
    );
  });
});
