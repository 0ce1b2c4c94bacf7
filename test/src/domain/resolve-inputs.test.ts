import { describe, expect, it } from 'vitest';

import { boardText, catalogueText, expectFault, faultsOf, readOf } from '../files/texts.js';

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
    expectFault({ board: boardText({ currency: 'currency: ‸euros' }) }, 'currency', ['"euros"'], '');
    expectFault({ board: boardText({ currency: 'currency: ‸978' }) }, 'currency', ['found 978'], 'quotes');
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
