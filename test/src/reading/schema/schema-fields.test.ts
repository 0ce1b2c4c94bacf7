import { describe, expect, it } from 'vitest';
import * as z from 'zod/mini';

import { descriptionOf } from '../../../../src/reading/schema/described.js';
import {
  connector,
  count,
  currencyCode,
  factor,
  flag,
  ground,
  id,
  milliamps,
  money,
  name,
  outputPolarity,
  polarity,
  power,
  volts,
  voltsRange,
  watts,
  wordings,
} from '../../../../src/reading/schema/schema-fields.js';

const isAllowed = (schema: z.ZodMiniType, value: unknown): boolean => schema.safeParse(value).success;

/** Expects that the schema allows exactly the first of these values, and says what is allowed in these words. */
function expectAllowed(
  schema: z.ZodMiniType,
  right: readonly unknown[],
  wrong: readonly unknown[],
  words: string,
): void {
  expect(right.filter((value) => !isAllowed(schema, value))).toEqual([]);
  expect(wrong.filter((value) => isAllowed(schema, value))).toEqual([]);
  expect(wordings.get(schema)?.allowed).toBe(words);
}

describe('numbers with a unit', () => {
  it.each([
    ['volts', volts, 1000, 'V'],
    ['milliamps', milliamps, 100_000, 'mA'],
    ['watts', watts, 100_000, 'W'],
  ] as const)('%s are above 0, up to a bound and have three decimals at most', (noun, field, largest, unit) => {
    expectAllowed(
      field('What it is.'),
      [0.001, 9, 12.345, largest - 0.001, largest],
      [0, -0.001, 0.0001, 12.3456, largest + 0.001, Number.POSITIVE_INFINITY, '9', null, undefined],
      `a number of ${noun} above 0 and up to ${largest}, with at most three decimals`,
    );
    expect(wordings.get(field('What it is.'))?.unit).toBe(unit);
    expect(descriptionOf(field('What it is.'))).toBe('What it is.');
  });

  it('tell a decimal too many from any other fault, so that a rounded number can be offered', () => {
    for (const schema of [volts(''), milliamps(''), watts(''), factor('')]) {
      const { error } = schema.safeParse(12.3456);
      expect(error?.issues).toMatchObject([{ code: 'custom', params: { check: 'decimals' } }]);
    }
  });

  it('factors are from 1 to 100', () => {
    const words = 'a factor from 1 to 100, with at most three decimals';
    expectAllowed(factor(''), [1, 1.001, 2, 99.999, 100], [0.999, 0, -1, 1.0001, 100.001, '2'], words);
    expect(wordings.get(factor(''))?.unit).toBe('factor');
  });

  it('money is at least 0, with as many decimals as its currency, which is not known here', () => {
    expectAllowed(money(''), [0, 119.5, 1.2345, 1e12], [-0.01, '5'], "an amount of at least 0 in the file's currency");
    expect(wordings.get(money(''))?.unit).toBe('money');
  });

  it('counts are whole, between bounds that belong to them', () => {
    expectAllowed(count(2, 5, ''), [2, 3, 5], [1, 6, 2.5, '3'], 'a whole number from 2 to 5');
    expectAllowed(count(0, 10_000, ''), [0, 10_000], [-1, 10_001], 'a whole number from 0 to 10000');
    expect(wordings.get(count(0, 1, ''))?.unit).toBe('count');
  });

  it('a range has two ends, and nothing else', () => {
    expectAllowed(
      voltsRange(''),
      [
        { from: 9, to: 18 },
        { from: 9, to: 9 },
      ],
      [{ from: 9 }, { to: 9 }, { from: 0, to: 9 }, { from: 9, to: 1000.001 }, { from: 9, to: 18, by: 1 }, 9],
      'a map {from: …, to: …} of volts',
    );
  });
});

describe('texts', () => {
  const longest = 'n'.repeat(200);

  it('a name is any text of 1 to 200 characters', () => {
    expectAllowed(name(''), ['n', 'Krähe № 5!', ' ', longest], ['', `${longest}n`, 5], 'text of 1 to 200 characters');
  });

  it('an id has letters, digits and three signs, but no spaces', () => {
    expectAllowed(
      id(''),
      ['a', 'Quay_6.5-b', 'ファズ', '6', '-', longest],
      ['', 'two words', 'a/b', 'a:b', 'a\n', '\u001b', `${longest}n`, 5],
      'letters, digits, ".", "_" and "-", without spaces',
    );
  });

  it('a connector is any text of 1 to 200 characters, with the usual ones as examples', () => {
    const words = 'the name of a connector, such as barrel-2.1';
    expectAllowed(connector(''), ['barrel-2.1', 'screw terminal', longest], ['', `${longest}n`, 2.1], words);
    expect(z.globalRegistry.get(connector(''))?.examples).toEqual(['barrel-2.1', 'barrel-2.5', 'jack-3.5']);
  });

  it('a currency is any text here, since whether there is such a one is looked up', () => {
    expectAllowed(currencyCode, ['EUR', 'euro', ''], [978, null], 'an ISO 4217 code in capitals, such as EUR');
    expect(z.globalRegistry.get(currencyCode)).toMatchObject({
      pattern: '^[A-Z]{3}$',
      examples: ['EUR', 'USD', 'GBP'],
    });
  });

  it('have no unit', () => {
    for (const schema of [name(''), id(''), connector(''), currencyCode, flag(''), voltsRange('')])
      expect(wordings.get(schema)?.unit).toBeNull();
  });
});

describe('words to choose from', () => {
  it.each([
    ['power', power, ['DC', 'AC'], ['dc', 'battery'], 'DC or AC'],
    [
      'the polarity of a pedal',
      polarity,
      ['centre-negative', 'centre-positive'],
      ['either', 'negative', 'center-negative'],
      'centre-negative or centre-positive',
    ],
    [
      'the polarity of an output',
      outputPolarity,
      ['centre-negative', 'centre-positive', 'either'],
      ['both', 'positive'],
      'centre-negative, centre-positive or either',
    ],
    ['ground', ground, ['negative', 'positive'], ['centre-negative', 'none'], 'negative or positive'],
    ['yes or no', flag(''), [true, false], ['true', 'yes', 1, 0, null], 'true or false'],
  ])('%s', (_what, schema, right, wrong, words) => {
    expectAllowed(schema, right, wrong, words);
    expect(wordings.get(schema)?.unit).toBeNull();
  });
});
