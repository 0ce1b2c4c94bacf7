import { minorUnits } from '../../domain/quantities.js';
import type { TierDifference } from '../../planning/explain/difference.js';
import type { FactsContext } from './explain-facts.js';
import { tierWords } from './tier-words.js';
import { countText, listText, priceText } from './words.js';

/** "20.00 EUR more, 1 supply less": what a plan comes to beside the best one. */
export const differencesText = (told: FactsContext, differences: readonly TierDifference[]): string =>
  listText(differences.map((each) => differenceText(told, each)));

function differenceText(
  { board }: FactsContext,
  { tier, from, to, exposed = 0, supplies = 0 }: TierDifference,
): string {
  const by = Math.abs(to - from);
  const { counted } = tierWords[tier];
  if (counted !== null) return counted.apart(by, to > from ? 'more' : 'fewer');
  const way = to > from ? 'more' : 'less';
  return `${priceText(minorUnits(by), board)} ${way}${countingText(exposed, supplies)}`;
}

/** What else than what is bought makes the amount. */
function countingText(exposed: number, supplies: number): string {
  const more = (amount: number): string => (amount > 0 ? 'more' : 'fewer');
  const counted = [
    ...(exposed === 0 ? [] : [`${countText(Math.abs(exposed), 'pedal')} ${more(exposed)} exposed to digital noise`]),
    ...(supplies === 0 ? [] : [`${countText(Math.abs(supplies), 'supply', 'supplies')} ${more(supplies)} in use`]),
  ];
  return counted.length === 0 ? '' : `, counting ${listText(counted)}`;
}
