import { countedBeside, isMoney, type Criterion, type MoneyTier } from '../../domain/aim.js';
import type { Board } from '../../domain/board.js';
import { tierWords } from './tier-words.js';
import { listText, priceText } from './words.js';

type Prices = Pick<Board, 'currency' | 'policy'>;

/** "exposed pedals", "cost, noise and supplies in use included": in front of a figure. */
export function tierName(tier: Criterion, { supplyPrice }: Board['policy']): string {
  const { counted } = tierWords[tier];
  if (counted !== null || !isMoney(tier)) return counted?.name ?? tier;
  const { noise, supplies } = countedBeside[tier];
  const included = [
    ...(noise === null ? [] : [noise === 'exposed' ? 'noise' : 'new noise']),
    ...(supplies && supplyPrice > 0 ? ['supplies in use'] : []),
  ];
  return included.length === 0 ? 'cost' : `cost, ${listText(included)} included`;
}

/**
 * ", with 20.00 EUR counted for each exposed pedal and 8.00 EUR for each supply in use": what is money in this tier beside
 * what is bought. Nothing where nothing else is.
 */
export function countedText(tier: MoneyTier, board: Prices): string {
  const { noise, supplies } = countedBeside[tier];
  const { noisePrice, supplyPrice } = board.policy;
  const counted = [
    ...(noise === null || noisePrice === 0
      ? []
      : [{ price: noisePrice, each: noise === 'exposed' ? 'exposed pedal' : 'newly exposed pedal' }]),
    ...(supplies && supplyPrice > 0 ? [{ price: supplyPrice, each: 'supply in use' }] : []),
  ].map(({ price, each }, at) => `${priceText(price, board)} ${at === 0 ? 'counted ' : ''}for each ${each}`);
  return counted.length === 0 ? '' : `, with ${listText(counted)}`;
}
