import { describe, expect, it } from 'vitest';

import { boardText, catalogueText, catalogueWithSupplies, expectFault, faultsOf, readOf } from '../files/texts.js';

const dc = 'power: DC, plug: barrel-2.1, polarity: centre-negative';
const bank = `{outputs: 1, isolated: true, ${dc}, settings: [{volts: 9, milliamps: 100}]}`;
const supply = (fields: string, banks = bank) => ({
  catalogue: catalogueWithSupplies(`{name: Quay, price: 5, ${fields}, banks: [${banks}]}`),
});
const resolved = (texts: { readonly catalogue: string }) => readOf(boardText(), texts.catalogue).catalogue?.supplies[0];

describe('a supply', () => {
  it('is resolved to exact domain values, its outputs numbered through the banks', () => {
    const second = `{outputs: 3, isolated: false, power: AC, plug: x, settings: [{volts: 12.5, milliamps: 0.5}], joins: both}`;
    const first = bank.replace('outputs: 1', 'outputs: 4').replace(']}', '], total: {watts: 1.5}}');
    expect(resolved(supply('mains: 230, regulated: true, total: {milliamps: 1800}', `${first}, ${second}`))).toEqual({
      id: 'quay',
      name: 'Quay',
      price: 500,
      stock: null,
      mains: { from: 230_000, to: 230_000 },
      total: { kind: 'current', microamps: 1_800_000 },
      banks: [
        {
          firstOutput: 1,
          outputs: 4,
          isolated: true,
          power: 'DC',
          plug: 'barrel-2.1',
          polarity: 'centre-negative',
          switching: 'each',
          settings: [{ millivolts: 9000, rating: 100_000, openCircuit: null }],
          joins: [],
          total: { kind: 'power', milliwatts: 1500 },
        },
        {
          firstOutput: 5,
          outputs: 3,
          isolated: false,
          power: 'AC',
          plug: 'x',
          polarity: null,
          switching: 'each',
          settings: [{ millivolts: 12_500, rating: 500, openCircuit: null }],
          joins: ['series', 'parallel'],
          total: null,
        },
      ],
      assumed: {},
    });
  });

  it('need not be in a catalogue, which says so', () => {
    const empty = catalogueText({ supplies: 'supplies: []' });
    expect(faultsOf(boardText(), empty).filter(({ key }) => key === 'supplies')).toEqual([]);
    const catalogue = catalogueText({ catalogue: '‸catalogue: Shop', supplies: '' });
    expectFault({ catalogue }, 'supplies', ['missing', 'up to 5000'], 'Add `supplies`');
  });

  it('needs a price in a catalogue', () => {
    const catalogue = catalogueWithSupplies(`‸{name: Quay, regulated: true, banks: [${bank}]}`);
    expectFault({ catalogue }, 'supplies[0].price', ['missing'], 'Add `price`');
  });

  it('its mains range must not run backwards', () => {
    expectFault(
      supply('regulated: true, mains: ‸{from: 240, to: 100}'),
      'supplies[0].mains',
      ['from 240 to 100'],
      'Write {from: 100, to: 240}.',
    );
  });

  it('its total is in milliamps or in watts', () => {
    expectFault(
      supply('regulated: true, total: ‸{milliamps: 1, watts: 1}'),
      'supplies[0].total',
      ['both milliamps and watts'],
      'Write the one',
    );
    const banks = bank.replace(']}', '], total: ‸{}}');
    expectFault(supply('regulated: true', banks), 'supplies[0].banks[0].total', ['neither'], 'Write the one');
  });
});

describe('what bears on safety has no silent default', () => {
  it.each(['power', 'plug', 'polarity'] as const)('%s of a bank', (field) => {
    const kept = dc.split(', ').filter((text) => !text.startsWith(field));
    const banks = `‸{outputs: 1, isolated: true, ${kept.join(', ')}, settings: [{volts: 9, milliamps: 100}]}`;
    expectFault(
      supply('regulated: true', banks),
      `supplies[0].banks[0].${field}`,
      ['missing for "Quay"', 'no default'],
      'or add it to `assume`',
    );
  });

  it('whether a DC supply is regulated', () => {
    const catalogue = catalogueWithSupplies(`‸{name: Quay, price: 5, banks: [${bank}]}`);
    expectFault(
      { catalogue },
      'supplies[0].regulated',
      ['missing for "Quay"', 'true or false'],
      'or add it to `assume`',
    );
  });

  it('whether the outputs are isolated', () => {
    const banks = bank.replace('{outputs', '‸{outputs').replace('isolated: true, ', '');
    expectFault(supply('regulated: true', banks), 'supplies[0].banks[0].isolated', ['missing'], 'Add `isolated`');
  });

  it('comes from the assume block of the catalogue, polarity also as either, and is listed', () => {
    const assume = 'assume: {power: DC, plug: barrel-2.1, polarity: either, regulated: true}';
    const bare = '{outputs: 1, isolated: true, settings: [{volts: 9, milliamps: 100}]}';
    const supplies = `supplies:\n  - {name: Quay, price: 5, banks: [${bare}]}`;
    const [found] =
      readOf(boardText(), catalogueText({ currency: `currency: EUR\n${assume}`, supplies })).catalogue?.supplies ?? [];
    expect(found?.banks[0]).toMatchObject({ power: 'DC', plug: 'barrel-2.1', polarity: 'either' });
    expect(found?.assumed).toEqual({ power: 'DC', plug: 'barrel-2.1', polarity: 'either', regulated: true });
  });

  it('an assumed polarity or regulation does not apply to AC', () => {
    const assume = 'assume: {plug: x, polarity: either, regulated: false}';
    const bare = '{outputs: 1, isolated: true, power: AC, settings: [{volts: 9, milliamps: 100}]}';
    const supplies = `supplies:\n  - {name: Quay, price: 5, banks: [${bare}]}`;
    const [found] =
      readOf(boardText(), catalogueText({ currency: `currency: EUR\n${assume}`, supplies })).catalogue?.supplies ?? [];
    expect(found?.banks[0]?.polarity).toBeNull();
    expect(found?.assumed).toEqual({ plug: 'x' });
  });

  it('gear is not filled by any assume block', () => {
    const bare = `‸{outputs: 1, isolated: true, power: DC, plug: x, settings: [{volts: 9, milliamps: 1}]}`;
    const gear = `gear:\n  supplies: [{name: Old, regulated: true, banks: [${bare}]}]`;
    const board = boardText({ gear });
    expectFault({ board }, 'gear.supplies[0].banks[0].polarity', ['missing for "Old"'], 'and add `polarity`.');
  });
});

describe('gear', () => {
  it('needs no price; a price and stock that it has count for nothing', () => {
    const gear = [
      'gear:',
      `  supplies: [{name: Old, price: 7, stock: 4, regulated: true, banks: [${bank}]}]`,
      '  parts: [{name: Flip, fits: a, gives: b}]',
    ].join('\n');
    const { board } = readOf(boardText({ gear }));
    expect(board.gear.supplies[0]).toMatchObject({ id: 'old', price: null, stock: 0 });
    expect(board.gear.parts[0]).toMatchObject({ id: 'flip', price: null, stock: 0, role: { kind: 'adapter' } });
  });

  it('shares its ids with the catalogue: a repeated one names the line there', () => {
    const gear = `gear:\n  supplies:\n    - {name: Mine, id: ‸quay, regulated: true, banks: [${bank}]}`;
    expectFault(
      { board: boardText({ gear }), catalogue: catalogueText() },
      'gear.supplies[0].id',
      ['"quay"', 'line 4 of shop.yaml'],
      'another id',
    );
  });
});
