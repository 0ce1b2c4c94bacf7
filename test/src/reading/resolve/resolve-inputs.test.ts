import { describe, expect, it } from 'vitest';

import {
  boardText,
  boardWithPedals,
  catalogueText,
  expectFault,
  expectRefused,
  expectToldOnce,
  faultsOf,
  readOf,
  resolvedOf,
} from '../texts.js';

describe('currencies', () => {
  it('must be the same in both files', () => {
    expectFault(
      { catalogue: catalogueText({ currency: 'currency: ‸USD' }) },
      'currency',
      ['found USD', "board's currency is EUR", 'line 2 of board.yaml'],
      'in EUR',
    );
  });

  it('must exist', () => {
    expectFault(
      { board: boardText({ currency: 'currency: ‸eur' }) },
      'currency',
      ['"eur"', 'ISO 4217'],
      'Did you mean EUR?',
    );
    expectFault({ board: boardText({ currency: 'currency: ‸euros' }) }, 'currency', '"euros"', '');
    expectFault({ board: boardText({ currency: 'currency: ‸978' }) }, 'currency', 'found 978', 'quotes');
  });

  it('are three capital letters where no name is near', () => {
    const remedy = 'Write the three capital letters of the currency.';
    expectFault({ board: boardText({ currency: 'currency: ‸doubloons' }) }, 'currency', '"doubloons"', remedy);
    expectFault({ catalogue: catalogueText({ currency: 'currency: ‸doubloons' }) }, 'currency', 'ISO 4217', remedy);
  });

  it('are known and stated in each file', () => {
    expectRefused({ board: boardText({ currency: '' }), catalogue: catalogueText() }, 'currency');
    expectRefused({ catalogue: catalogueText({ currency: '' }) }, 'currency');
    expectRefused({ board: boardText({ currency: 'currency: EUX' }) }, 'currency');
    expectRefused(
      { catalogue: catalogueText({ currency: 'currency: EUX', supplies: 'supplies: []', parts: '' }) },
      'currency',
    );
  });

  it('an unknown one yields no second fault about money or the other file', () => {
    const board = boardText({
      currency: 'currency: EUX',
      policy: 'policy: {headroom: {alone: 1, chained: 1, supply: 1}, chains: allow, budget: 1.23456}',
    });
    expect(faultsOf(board, catalogueText()).map(({ key }) => key)).toEqual(['currency']);
  });
});

describe('money', () => {
  const withBudget = (currency: string, budget: string) =>
    boardText({
      currency: `currency: ${currency}`,
      policy: `policy: {headroom: {alone: 1, chained: 1, supply: 1}, chains: allow, budget: ${budget}}`,
    });

  it('has no more decimals than its currency', () => {
    expectFault({ board: withBudget('EUR', '‸1.005') }, 'policy.budget', ['1.005', 'EUR has at most 2'], 'to 1.01.');
    expectFault({ board: withBudget('JPY', '‸100.5') }, 'policy.budget', ['100.5', 'JPY has no decimals'], 'Round');
    expect(readOf(withBudget('JPY', '100')).board.policy.budget).toBe(100);
    expect(readOf(withBudget('KWD', '1.005')).board.policy.budget).toBe(1005);
    expect(readOf(withBudget('EUR', '1.10')).board.policy.budget).toBe(110);
    expect(readOf(withBudget('EUR', '0')).board.policy.budget).toBe(0);
  });

  it('is at least 0 and at most a million million minor units', () => {
    expectFault({ board: withBudget('EUR', '‸-1') }, 'policy.budget', ['found -1', 'at least 0'], 'Write an amount');
    expect(readOf(withBudget('EUR', '10000000000')).board.policy.budget).toBe(1e12);
    expectFault(
      { board: withBudget('EUR', '‸10000000000.01') },
      'policy.budget',
      ['10000000000.01', 'the most is 10000000000.00 EUR'],
      'decimal point',
    );
  });
});

describe('a file of which something is wrong', () => {
  const pedals = (...lines: readonly string[]) => boardWithPedals(...lines);
  const echo = '{name: Echo, volts: 9, milliamps: 100}';

  it.each([
    ['a board without a name', boardText({ board: '' }), 'board'],
    ['a board without a policy', boardText({ policy: '' }), 'policy'],
    ['a board with one wrong pedal of two', pedals(echo, '{name: Fuzz, volts: 9}'), 'pedals[1].milliamps'],
    ['a board with one wrong pedal before another', pedals('{name: Fuzz, volts: 9}', echo), 'pedals[0].milliamps'],
    [
      'gear with a wrong supply',
      boardText({ gear: 'gear: {supplies: [{name: Old, regulated: true}]}' }),
      'gear.supplies[0].banks',
    ],
    ['gear with a wrong part', boardText({ gear: 'gear: {parts: [{name: Old, fits: a}]}' }), 'gear.parts[0].gives'],
    [
      'owned supplies that nothing describes',
      boardText({ owned: 'owned: {supplies: [harbour]}' }),
      'owned.supplies[0]',
    ],
    ['owned parts that nothing describes', boardText({ owned: 'owned: {parts: {stack: 1}}' }), 'owned.parts.stack'],
    ['owned supplies that are no list', boardText({ owned: 'owned: {supplies: quay}' }), 'owned.supplies'],
    ['owned parts that are no map', boardText({ owned: 'owned: {parts: [flip]}' }), 'owned.parts'],
    ['a wiring with a wrong entry', boardText({ wiring: 'wiring: [none]' }), 'wiring[0]'],
  ])('%s: there is no board, and the catalogue stands', (_what, board, key) => {
    expectRefused({ board, catalogue: catalogueText() }, key);
    expectRefused({ board }, key);
  });

  it.each([
    ['a catalogue without a name', catalogueText({ catalogue: '' }), 'catalogue'],
    ['a catalogue with a wrong part', catalogueText().replace('gives: barrel-2.1', 'gives: 5'), 'parts[0].gives'],
    [
      'a catalogue with a wrong supply',
      catalogueText().replace('outputs: 2', 'outputs: two'),
      'supplies[0].banks[0].outputs',
    ],
  ])('%s: there is no catalogue, and the board stands', (_what, catalogue, key) => {
    expectRefused({ catalogue }, key);
  });

  it('may lack its lists, which is told once', () => {
    for (const pedals of ['', 'pedals: Echo', 'pedals: []']) expectToldOnce({ board: boardText({ pedals }) }, 'pedals');
    for (const supplies of ['', 'supplies: Quay'])
      expectToldOnce({ catalogue: catalogueText({ supplies }) }, 'supplies');
    expectToldOnce({ catalogue: catalogueText({ parts: 'parts: Flip' }) }, 'parts');
  });

  it('is found whole, with the other file', () => {
    const board = boardText({ board: '', policy: '' });
    expectRefused({ board, catalogue: catalogueText({ catalogue: '' }) }, 'board', 'policy', 'catalogue');
  });

  it('of which nothing can be read leaves the other file to be looked at', () => {
    const faults = faultsOf('board: [', catalogueText({ currency: 'currency: EUX' }));
    expect(faults.map(({ file }) => file)).toEqual(['board.yaml', 'shop.yaml']);
    expect(resolvedOf('board: [', catalogueText()).board).toBeNull();
    expect(resolvedOf('board: [', catalogueText()).catalogue?.name).toBe('Small shop');
    expect(resolvedOf(boardText(), 'catalogue: [').board?.name).toBe('Small board');
    expect(resolvedOf(boardText(), 'catalogue: [').catalogue).toBeNull();
  });
});

describe('an id that is not known', () => {
  const owned = (what: string) => boardText({ owned: `owned: {${what}}` });
  const keys = (board: string, catalogue: string) => faultsOf(board, catalogue).map(({ key }) => key);

  it('is told beside what is wrong with another thing, whose id is known', () => {
    const catalogue = catalogueText().replace('outputs: 2', 'outputs: two');
    expect(keys(owned('supplies: [quay, harbour]'), catalogue)).toEqual([
      'owned.supplies[1]',
      'supplies[0].banks[0].outputs',
    ]);
    const noGives = catalogueText().replace('gives: barrel-2.1', 'gives: 5');
    expect(keys(owned('parts: {flip: 1, stack: 1}'), noGives)).toEqual(['owned.parts.stack', 'parts[0].gives']);
  });

  it.each([
    ['the supplies of the catalogue are no list', catalogueText({ supplies: 'supplies: none' }), 'supplies'],
    ['the parts of the catalogue are no list', catalogueText({ parts: 'parts: none' }), 'parts'],
    ['a supply has no id yet', catalogueText().replace('id: quay', 'id: two words'), 'supplies[0].id'],
    ['a part has no id yet', catalogueText().replace('id: flip', 'id: two words'), 'parts[0].id'],
  ])('is not told while %s', (_what, catalogue, key) => {
    const what = key.startsWith('supplies') ? 'supplies: [harbour]' : 'parts: {stack: 1}';
    expect(keys(owned(what), catalogue)).toEqual([key]);
    expect(resolvedOf(owned(what), catalogue).board).toBeNull();
  });

  it('is not told while the catalogue cannot be read', () => {
    for (const what of ['supplies: [harbour]', 'parts: {stack: 1}']) {
      expect(faultsOf(owned(what), 'catalogue: [').map(({ file }) => file)).toEqual(['shop.yaml']);
      expect(resolvedOf(owned(what), 'catalogue: [').board).toBeNull();
    }
  });

  it('of a pedal is told beside a pedal that is wrong, but not while the pedals are no list', () => {
    const wiring = 'wiring: [{pedal: ecko, supply: quay, unit: 1, output: 1, volts: 9}]';
    const board = (pedals: string) => boardText({ pedals, owned: 'owned: {supplies: [quay]}', wiring });
    const wrong = board('pedals: [{name: Echo, volts: 9}]');
    expect(keys(wrong, catalogueText())).toEqual(['pedals[0].milliamps', 'wiring[0].pedal']);
    expect(keys(board('pedals: Echo'), catalogueText())).toEqual(['pedals']);
    expect(keys(board('pedals: [{name: Echo, id: e c, volts: 9, milliamps: 1}]'), catalogueText())).toEqual([
      'pedals[0].id',
    ]);
  });
});
