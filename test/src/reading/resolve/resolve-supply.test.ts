import { describe, expect, it } from 'vitest';

import {
  boardText,
  catalogueText,
  catalogueWithSupplies,
  expectFault,
  expectRefused,
  expectToldOnce,
  faultsOf,
  readOf,
} from '../texts.js';

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
      source: { kind: 'mains', volts: { from: 230_000, to: 230_000 } },
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
    expectFault({ catalogue }, 'supplies[0].price', 'missing', 'Add `price`');
  });

  const mains = (from: number, to: number) => ({ kind: 'mains', volts: { from, to } });

  it('accepts one figure of mains volts, or all between two, both included', () => {
    expect(resolved(supply('regulated: true, mains: 115'))?.source).toEqual(mains(115_000, 115_000));
    expect(resolved(supply('regulated: true, mains: {from: 100, to: 240}'))?.source).toEqual(mains(100_000, 240_000));
    expect(resolved(supply('regulated: true, mains: {from: 230, to: 230}'))?.source).toEqual(mains(230_000, 230_000));
    expect(resolved(supply('regulated: true'))?.source).toEqual({ kind: 'mains', volts: null });
  });

  it('has a stock, which may be none, or no limit', () => {
    expect(resolved(supply('regulated: true, stock: 3'))?.stock).toBe(3);
    expect(resolved(supply('regulated: true, stock: 0'))?.stock).toBe(0);
    expect(resolved(supply('regulated: true'))?.stock).toBeNull();
  });

  it('of alternating current that calls itself regulated holds its volts', () => {
    const alternating = (openCircuit: string) =>
      `{outputs: 1, isolated: true, power: AC, plug: x, settings: [{volts: 9, milliamps: 100, openCircuitVolts: ${openCircuit}}]}`;
    expectFault(
      supply('regulated: true', alternating('‸12')),
      'supplies[0].banks[0].settings[0].openCircuitVolts',
      ['found 12', 'the supply is regulated'],
      '`regulated: false`',
    );
    expect(resolved(supply('regulated: true', alternating('9')))?.banks[0]?.settings[0]?.openCircuit).toBeNull();
    expect(resolved(supply('regulated: false', alternating('12')))?.banks[0]?.settings[0]?.openCircuit).toBe(12_000);
  });

  it('its mains range must not run backwards', () => {
    expectFault(
      supply('regulated: true, mains: ‸{from: 240, to: 100}'),
      'supplies[0].mains',
      'from 240 to 100',
      'Write {from: 100, to: 240}.',
    );
  });

  it('its total is in milliamps or in watts', () => {
    expectFault(
      supply('regulated: true, total: ‸{milliamps: 1, watts: 1}'),
      'supplies[0].total',
      'both milliamps and watts',
      'the tighter one',
    );
    const banks = bank.replace(']}', '], total: ‸{}}');
    expectFault(supply('regulated: true', banks), 'supplies[0].banks[0].total', 'neither', 'Write the one');
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

  it('whether a supply with one DC bank among others is regulated', () => {
    const alternating = '{outputs: 1, isolated: true, power: AC, plug: x, settings: [{volts: 9, milliamps: 100}]}';
    for (const banks of [`${bank}, ${alternating}`, `${alternating}, ${bank}`]) {
      const catalogue = catalogueWithSupplies(`{name: Quay, price: 5, banks: [${banks}]}`);
      expectRefused({ catalogue }, 'supplies[0].regulated');
    }
    const none = catalogueWithSupplies(`{name: Quay, price: 5, banks: [${alternating}, ${alternating}]}`);
    expect(resolved({ catalogue: none })?.assumed).toStrictEqual({});
  });

  it('whether a supply is regulated is not asked while its power is not known', () => {
    const banks = bank.replace('power: DC, ', '').replace('polarity: centre-negative, ', '');
    const catalogue = catalogueWithSupplies(`{name: Quay, price: 5, banks: [${banks}]}`);
    expectRefused({ catalogue }, 'supplies[0].banks[0].power');
    const both = catalogueWithSupplies(`{name: Quay, price: 5, banks: [${banks}, ${bank}]}`);
    expectRefused({ catalogue: both }, 'supplies[0].regulated', 'supplies[0].banks[0].power');
  });

  it('whether the outputs are isolated', () => {
    const banks = bank.replace('{outputs', '‸{outputs').replace('isolated: true, ', '');
    expectFault(supply('regulated: true', banks), 'supplies[0].banks[0].isolated', 'missing', 'Add `isolated`');
  });

  it('comes from the assume block of the catalogue, polarity also as either, and is listed', () => {
    const assume = 'assume: {power: DC, plug: barrel-2.1, polarity: either, regulated: true}';
    const bare = '{outputs: 1, isolated: true, settings: [{volts: 9, milliamps: 100}]}';
    const supplies = `supplies:\n  - {name: Quay, price: 5, banks: [${bare}]}`;
    const [found] =
      readOf(boardText(), catalogueText({ currency: `currency: EUR\n${assume}`, supplies })).catalogue?.supplies ?? [];
    expect(found?.banks[0]).toMatchObject({ power: 'DC', plug: 'barrel-2.1', polarity: 'either' });
    expect(found?.assumed).toStrictEqual({ power: 'DC', plug: 'barrel-2.1', polarity: 'either', regulated: true });
  });

  it.each(['power', 'plug', 'polarity', 'regulated'] as const)(
    '%s that one bank lacks is listed as assumed, and nothing else',
    (field) => {
      const whole = { power: 'DC', plug: 'barrel-2.1', polarity: 'centre-negative', regulated: true } as const;
      const assume = `assume: {${Object.entries(whole)
        .map(([name, value]) => `${name}: ${value}`)
        .join(', ')}}`;
      const stated = `{outputs: 1, isolated: true, ${dc}, settings: [{volts: 9, milliamps: 100}]}`;
      const bare = stated.replace(new RegExp(`${field}: [^,]+, `), '');
      const regulated = field === 'regulated' ? '' : 'regulated: true, ';
      for (const banks of [`${stated}, ${bare}`, `${bare}, ${stated}`]) {
        const supplies = `supplies:\n  - {name: Quay, price: 5, ${regulated}banks: [${banks}]}`;
        const found = resolved({ catalogue: catalogueText({ currency: `currency: EUR\n${assume}`, supplies }) });
        expect(found?.assumed).toStrictEqual({ [field]: whole[field] });
        expect(found?.banks).toHaveLength(2);
        for (const one of found?.banks ?? []) expect(one).toMatchObject({ power: 'DC', polarity: 'centre-negative' });
      }
    },
  );

  it('an assumed polarity or regulation does not apply to AC', () => {
    const assume = 'assume: {plug: x, polarity: either, regulated: false}';
    const bare = '{outputs: 1, isolated: true, power: AC, settings: [{volts: 9, milliamps: 100}]}';
    const supplies = `supplies:\n  - {name: Quay, price: 5, banks: [${bare}]}`;
    const [found] =
      readOf(boardText(), catalogueText({ currency: `currency: EUR\n${assume}`, supplies })).catalogue?.supplies ?? [];
    expect(found?.banks[0]?.polarity).toBeNull();
    expect(found?.assumed).toStrictEqual({ plug: 'x' });
  });

  it('gear states what of it nobody has read, which is listed, and a catalogue does not', () => {
    const banks = `[{outputs: 1, isolated: true, power: AC, plug: x, settings: [{volts: 9, milliamps: 1}]}, ${bank}]`;
    const old = `{name: Old, regulated: true, assumed: [polarity, plug, regulated], banks: ${banks}}`;
    const found = readOf(boardText({ gear: `gear:\n  supplies: [${old}]` })).board.gear.supplies[0];
    expect(found?.assumed).toStrictEqual({ plug: 'x', polarity: 'centre-negative', regulated: true });
    const some = old.replace('polarity, plug, ', '');
    expect(readOf(boardText({ gear: `gear:\n  supplies: [${some}]` })).board.gear.supplies[0]?.assumed).toStrictEqual({
      regulated: true,
    });
    const wrong = boardText({ gear: `gear:\n  supplies: [${old.replace('plug,', 'volts,')}]` });
    expectRefused({ board: wrong }, 'gear.supplies[0].assumed[1]');
    expectToldOnce(
      { catalogue: catalogueWithSupplies(old.replace('{name', '{price: 5, name')) },
      'supplies[0].assumed',
    );
  });

  it('gear is not filled by any assume block', () => {
    const bare = '‸{outputs: 1, isolated: true, power: DC, plug: x, settings: [{volts: 9, milliamps: 1}]}';
    const gear = `gear:\n  supplies: [{name: Old, regulated: true, banks: [${bare}]}]`;
    const board = boardText({ gear });
    expectFault({ board }, 'gear.supplies[0].banks[0].polarity', 'missing for "Old"', 'and add `polarity`.');
  });
});

describe('a supply of which something is wrong', () => {
  const whole = `name: Quay, price: 5, regulated: true, banks: [${bank}]`;
  const reads = (fields: string, keys: readonly string[]) => {
    expectRefused({ catalogue: catalogueWithSupplies(`{${fields}}`) }, ...keys.map((key) => `supplies[0].${key}`));
    const after = catalogueWithSupplies(`{${whole.replace('Quay', 'Dory')}}`, `{${fields}}`);
    expectRefused({ catalogue: after }, ...keys.map((key) => `supplies[1].${key}`));
  };

  it.each([
    ['its name', 'name', whole.replace('name: Quay', 'id: quay')],
    ['its id', 'id', whole.replace('name: Quay', 'name: Quay, id: two words')],
    ['an id that its name does not make', 'name', whole.replace('Quay', '"!?"')],
    ['its price', 'price', whole.replace('price: 5, ', '')],
    ['its mains', 'mains', `mains: none, ${whole}`],
    ['an order in its mains', 'mains', `mains: {from: 240, to: 100}, ${whole}`],
    ['its total', 'total', `total: 1800, ${whole}`],
    ['one unit of its total', 'total', `total: {watts: 1, milliamps: 1}, ${whole}`],
    ['whether it is regulated', 'regulated', whole.replace('regulated: true, ', '')],
    ['a clear word whether it is regulated', 'regulated', whole.replace('true, banks', 'perhaps, banks')],
    ['its banks', 'banks', 'name: Quay, price: 5, regulated: true'],
    ['a list of banks', 'banks', 'name: Quay, price: 5, regulated: true, banks: six'],
    ['any bank', 'banks', 'name: Quay, price: 5, regulated: true, banks: []'],
    ['a bank that is one', 'banks[0]', 'name: Quay, price: 5, regulated: true, banks: [six]'],
    [
      'its plug on one of two banks',
      'banks[1].plug',
      whole.replace(bank, `${bank}, ${bank.replace('plug: barrel-2.1, ', '')}`),
    ],
    [
      'its plug on the first of two banks',
      'banks[0].plug',
      whole.replace(bank, `${bank.replace('plug: barrel-2.1, ', '')}, ${bank}`),
    ],
  ])('lacks %s: the catalogue is not read', (_what, key, fields) => {
    reads(fields, [key]);
  });

  it('of alternating current lacks a clear word whether it is regulated: the catalogue is not read', () => {
    const alternating = '{outputs: 1, isolated: true, power: AC, plug: x, settings: [{volts: 9, milliamps: 100}]}';
    reads(`name: Quay, price: 5, regulated: perhaps, banks: [${alternating}]`, ['regulated']);
  });

  it('lacks it in the gear: the board is not read', () => {
    const gear = (fields: string) => boardText({ gear: `gear: {supplies: [{${fields}}]}` });
    expectRefused({ board: gear(`id: old, banks: [${bank}], regulated: true`) }, 'gear.supplies[0].name');
    expectRefused({ board: gear(`name: Old, banks: [${bank}]`) }, 'gear.supplies[0].regulated');
    expectRefused({ board: gear(`${whole}, total: {}`) }, 'gear.supplies[0].total');
  });

  it('has no id: it is not taken for another one without an id', () => {
    const [first, second] = ['a b', 'c d'].map((id) => `{id: ${id}, ${whole}}`);
    const catalogue = catalogueWithSupplies(first ?? '', second ?? '');
    expectRefused({ catalogue }, 'supplies[0].id', 'supplies[1].id');
  });

  it('is still known by its id', () => {
    const board = boardText({ owned: 'owned: {supplies: [quay]}' });
    for (const fields of [`${whole}, total: {}`, `id: quay, price: 5, regulated: true, banks: [${bank}]`]) {
      const faults = faultsOf(board, catalogueWithSupplies(`{${fields}}`));
      expect(faults.map(({ file }) => file)).toEqual(['shop.yaml']);
    }
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
