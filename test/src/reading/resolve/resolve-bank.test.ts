import { describe, expect, it } from 'vitest';

import { boardText, catalogueWithSupplies, expectFault, expectRefused, readOf } from '../texts.js';

const catalogueWithBank = (bank: string) => ({
  catalogue: catalogueWithSupplies(`{name: Quay, price: 5, regulated: true, banks: [${bank}]}`),
});
const settings = 'settings: [{volts: 9, milliamps: 1}, {volts: 12, milliamps: 1}]';
const resolved = (bank: string) =>
  readOf(boardText(), catalogueWithBank(bank).catalogue).catalogue?.supplies[0]?.banks[0];
const dc = 'outputs: 1, isolated: true, power: DC, plug: x, polarity: either';

describe('the switch of a bank', () => {
  it('is needed with several settings', () => {
    expectFault(
      catalogueWithBank(`‸{${dc}, ${settings}}`),
      'supplies[0].banks[0].switch',
      ['missing', '2 settings', 'each or together'],
      'switch: together',
    );
  });

  it('says nothing about one setting', () => {
    expect(resolved(`{${dc}, switch: together, ${settings}}`)?.switching).toBe('together');
    expect(resolved(`{${dc}, switch: together, settings: [{volts: 9, milliamps: 1}]}`)?.switching).toBe('each');
  });
});

describe('the joins of a bank', () => {
  it.each([
    ['series', ['series']],
    ['parallel', ['parallel']],
    ['both', ['series', 'parallel']],
    ['[parallel]', ['parallel']],
    ['[series, parallel]', ['series', 'parallel']],
    ['[both]', ['series', 'parallel']],
    ['[]', []],
  ])('%s', (joins, modes) => {
    expect(resolved(`{${dc}, settings: [{volts: 9, milliamps: 1}], joins: ${joins}}`)?.joins).toEqual(modes);
  });

  it('are no other words', () => {
    const bank = `{${dc}, settings: [{volts: 9, milliamps: 1}], joins: [‸serial]}`;
    expectFault(
      catalogueWithBank(bank),
      'supplies[0].banks[0].joins[0]',
      ['"serial"', 'series'],
      'Did you mean series?',
    );
  });
});

describe('a bank of alternating current', () => {
  it('has no polarity', () => {
    expectFault(
      catalogueWithBank(
        '{outputs: 1, isolated: true, power: AC, plug: x, polarity: ‸either, settings: [{volts: 9, milliamps: 1}]}',
      ),
      'supplies[0].banks[0].polarity',
      ['either', 'AC, which has no polarity'],
      'Remove `polarity`',
    );
  });
});

describe('a bank of which something is wrong', () => {
  const whole = `${dc}, settings: [{volts: 9, milliamps: 1}]`;

  it.each([
    ['how many outputs it has', 'outputs', whole.replace('outputs: 1, ', '')],
    ['a number of outputs', 'outputs', whole.replace('outputs: 1', 'outputs: 0')],
    ['whether they are isolated', 'isolated', whole.replace('isolated: true, ', '')],
    ['its plug', 'plug', whole.replace('plug: x, ', '')],
    ['its polarity', 'polarity', whole.replace(', polarity: either', '')],
    ['a clear polarity', 'polarity', whole.replace('either', 'unclear')],
    ['its settings', 'settings', dc],
    ['any setting', 'settings', `${dc}, settings: []`],
    ['its switch', 'switch', `${dc}, ${settings}`],
    ['a clear switch', 'switch', `${dc}, switch: sideways, ${settings}`],
    ['its total', 'total', `${whole}, total: 5`],
    ['a figure in its total', 'total', `${whole}, total: {}`],
    ['one unit of its total', 'total', `${whole}, total: {milliamps: 1, watts: 1}`],
  ])('lacks %s: the catalogue is not read', (_what, field, fields) => {
    expectRefused(catalogueWithBank(`{${fields}}`), `supplies[0].banks[0].${field}`);
  });

  it('lacks its power, and is not asked for its polarity yet', () => {
    const fields = whole.replace('power: DC, ', '').replace(', polarity: either', '');
    expectRefused(catalogueWithBank(`{${fields}}`), 'supplies[0].banks[0].power');
  });
});

describe('the total of a bank', () => {
  it('is in milliamps or in watts', () => {
    const total = (fields: string) =>
      resolved(`{${dc}, settings: [{volts: 9, milliamps: 1}], total: {${fields}}}`)?.total;
    expect(total('milliamps: 1800')).toEqual({ kind: 'current', microamps: 1_800_000 });
    expect(total('watts: 18.5')).toEqual({ kind: 'power', milliwatts: 18_500 });
  });
});
