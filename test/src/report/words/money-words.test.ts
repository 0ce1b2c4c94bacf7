import { expect, it } from 'vitest';

import { countedText, tierName } from '../../../../src/report/words/money-words.js';
import { boardOf, euros, policyOf } from '../../../support/builders.js';

const counting = (noisePrice: number, supplyPrice: number) =>
  boardOf([], { policy: policyOf({ noisePrice: euros(noisePrice), supplyPrice: euros(supplyPrice) }) });

it.each([
  ['money', 20, 8, 'cost', ''],
  ['cost', 20, 0, 'cost, noise included', ', with 20.00 EUR counted for each exposed pedal'],
  ['newCost', 20, 0, 'cost, new noise included', ', with 20.00 EUR counted for each newly exposed pedal'],
  ['cost', 0, 0, 'cost, noise included', ''],
  [
    'cost',
    20,
    8,
    'cost, noise and supplies in use included',
    ', with 20.00 EUR counted for each exposed pedal and 8.00 EUR for each supply in use',
  ],
  ['cost', 0, 8, 'cost, noise and supplies in use included', ', with 8.00 EUR counted for each supply in use'],
  ['outlay', 20, 8, 'cost, supplies in use included', ', with 8.00 EUR counted for each supply in use'],
] as const)('%s, with %d for noise and %d for a supply in use', (tier, noise, supply, name, counted) => {
  const board = counting(noise, supply);
  expect([tierName(tier, board.policy), countedText(tier, board)]).toEqual([name, counted]);
});

it('names what is counted one by one', () => {
  expect(tierName('exposed', policyOf())).toBe('exposed pedals');
  expect(tierName('bricks', policyOf())).toBe('supplies in use');
});
