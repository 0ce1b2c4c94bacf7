import { describe, expect, it } from 'vitest';

import { boardText, catalogueText, expectFault, faultsOf } from '../texts.js';

const dc = 'isolated: true, power: DC, plug: barrel-2.1, polarity: centre-negative, switch: each';

/** A shop with one supply, whose banks have one output each, which can be set to these volts. */
const shopWith = (...banks: readonly (readonly number[])[]) =>
  catalogueText({
    supplies: [
      'supplies:',
      '  - {id: quay, name: Quay, price: 50, regulated: true, banks: [',
      ...banks.map(
        (volts) =>
          `     {outputs: 1, ${dc}, settings: [${volts.map((each) => `{volts: ${each}, milliamps: 500}`).join(', ')}]},`,
      ),
      '    ]}',
    ].join('\n'),
  });

const wired = (fields: string) =>
  boardText({
    owned: 'owned: {supplies: [quay]}',
    wiring: `wiring:\n  - {pedal: echo, supply: quay, unit: 1, ${fields}}`,
  });
const joined = (mode: string, volts: string) =>
  wired(`outputs: [1, 2], volts: ${volts}, join: {mode: ${mode}, part: flip}`);
const key = 'wiring[0].volts';
const keysOf = (fields: string, catalogue: string) => faultsOf(wired(fields), catalogue).map((fault) => fault.key);

describe('the volts of an entry', () => {
  it('are those that its own output can be set to, whatever the others give', () => {
    const catalogue = shopWith([9, 12], [18], [24]);
    expect(keysOf('output: 1, volts: 12', catalogue)).toEqual([]);
    expect(keysOf('output: 2, volts: 18', catalogue)).toEqual([]);
    expect(keysOf('output: 3, volts: 24', catalogue)).toEqual([]);
    const remedy = 'Write what it is set to.';
    const texts = (output: number, volts: string) => ({
      board: wired(`output: ${output}, volts: ${volts}`),
      catalogue,
    });
    expectFault(texts(1, '‸18'), key, 'found 18; output 1 of "quay" gives 9 or 12 V.', remedy);
    expectFault(texts(2, '‸9'), key, 'found 9; output 2 of "quay" gives 18 V.', remedy);
    expectFault(texts(3, '‸24.001'), key, 'found 24.001; output 3 of "quay" gives 24 V.', remedy);
  });

  it('are told in rising order', () => {
    const board = wired('output: 1, volts: ‸15');
    expectFault({ board, catalogue: shopWith([18, 9, 12.5]) }, key, 'gives 9, 12.5 or 18 V.', '');
  });

  it('are told how to be mended by what the join does', () => {
    const catalogue = shopWith([9, 12], [9, 12]);
    expectFault(
      { board: joined('series', '‸9'), catalogue },
      key,
      'outputs 1 and 2 of "quay" in series make 18, 21 or 24 V.',
      'Write the sum of what both are set to.',
    );
    expectFault(
      { board: joined('parallel', '‸18'), catalogue },
      key,
      'outputs 1 and 2 of "quay" in parallel give 9 or 12 V.',
      'Write what it is set to.',
    );
    expectFault(
      { board: joined('parallel', '‸18'), catalogue: shopWith([9], [12]) },
      key,
      'outputs 1 and 2 of "quay" cannot be set to the same volts, as a parallel join asks for.',
      'Join outputs that can be, or use one of them alone.',
    );
  });

  it('are told up to twelve, and counted beyond', () => {
    const whole = (count: number) => Array.from({ length: count }, (_, index) => index + 1);
    const text = (last: number) => whole(last).slice(0, -1).join(', ');
    const series = (catalogue: string, words: string) =>
      expectFault({ board: joined('series', '‸500'), catalogue }, key, [words], 'the sum');
    series(shopWith(whole(6), [6, 12]), 'in series make 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17 or 18 V.');
    series(
      shopWith(whole(10), [10, 15]),
      'in series make 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22 V or 3 others.',
    );
    const board = wired('output: 1, volts: ‸500');
    expectFault({ board, catalogue: shopWith(whole(12)) }, key, `gives ${text(12)} or 12 V.`, '');
    expectFault({ board, catalogue: shopWith(whole(13)) }, key, `gives ${text(12)}, 12 V or 1 other.`, '');
  });
});

describe('volts are not judged', () => {
  const catalogue = shopWith([9], [9]);

  it.each([
    ['one of two outputs is not there', 'outputs: [2, 9], volts: 15, join: {mode: series, part: flip}', ['outputs[1]']],
    ['one of two outputs is not there, and no join stated', 'outputs: [2, 9], volts: 15', ['join', 'outputs[1]']],
    ['the output is not there', 'output: 9, volts: 15', ['output']],
    ['an output is named twice', 'outputs: [1, 1], volts: 15, join: {mode: series, part: flip}', ['outputs']],
    ['both one output and two are stated', 'output: 1, outputs: [1, 2], volts: 15', ['outputs']],
    [
      'both are stated, and the one is wrong',
      'output: one, outputs: [1, 2], volts: 15, join: {mode: series, part: flip}',
      ['output'],
    ],
    ['both are stated, and the two are wrong', 'output: 1, outputs: one, volts: 15', ['outputs']],
    ['neither is stated', 'volts: 15', ['output']],
    ['no join is stated', 'outputs: [1, 2], volts: 15', ['join']],
    ['the join is wrong', 'outputs: [1, 2], volts: 15, join: {mode: both, part: flip}', ['join.mode']],
    ['one output is joined', 'output: 1, volts: 15, join: {mode: series, part: flip}', ['join']],
  ])('where %s', (_what, fields, wrong) => {
    expect(keysOf(fields, catalogue)).toEqual(wrong.map((field) => `wiring[0].${field}`));
  });

  it('where the supply is not known', () => {
    expect(keysOf('output: 1, volts: 15', catalogueText({ supplies: 'supplies: none' }))).toEqual(['supplies']);
  });
});
