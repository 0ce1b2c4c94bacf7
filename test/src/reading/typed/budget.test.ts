import { expect, test } from 'vitest';

import { typedBudget } from '../../../../src/reading/typed/budget.js';

test.each<[string, string, number | null]>([
  ['120', 'EUR', 120],
  ['120.50', 'EUR', 120.5],
  ['120,50 €', 'EUR', 120.5],
  ['£80', 'GBP', 80],
  ['120 usd', 'USD', 120],
  ['JPY 9000', 'JPY', 9000],
  ['0', 'EUR', 0],
  ['usd', 'USD', null],
  ['', 'EUR', null],
])('%j', (text, currency, budget) => {
  expect(typedBudget(text, 'EUR')).toEqual({ kind: 'said', value: { currency, budget } });
});

test.each<[string, RegExp]>([
  ['$120', /such as 120 USD/],
  ['120 euro', /Did you mean EUR\?/],
  ['1,800', /nothing between thousands/],
  ['1.80 JPY', /in JPY/],
  ['-5', /such as 120 USD/],
  ['plenty of it', /such as 120 USD/],
])('%s is not clear', (text, remedy) => {
  const typed = typedBudget(text, 'EUR');
  expect(typed.kind === 'unclear' ? typed.remedy : 'it is clear').toMatch(remedy);
});
