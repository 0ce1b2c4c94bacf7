import { isMoney } from '../domain/aim.js';
import { minorUnits } from '../domain/quantities.js';
import type { TierDifference } from '../planning/explain/difference.js';
import type { Told } from './explain-facts.js';
import { countText, listText, priceText } from './words.js';

/** "20.00 EUR more, 1 supply less": what a plan comes to beside the best one. */
export const differencesText = (told: Told, differences: readonly TierDifference[]): string =>
  listText(differences.map((each) => differenceText(told, each)));

function differenceText({ board }: Told, { tier, from, to }: TierDifference): string {
  const by = Math.abs(to - from);
  const way = to > from ? 'more' : 'less';
  if (isMoney(tier)) return `${priceText(minorUnits(by), board)} ${way}${tier === 'cost' ? costNote(board) : ''}`;
  switch (tier) {
    case 'bricks':
      return `${countText(by, 'supply', 'supplies')} ${way}`;
    case 'parts':
      return `${countText(by, 'extra lead')} ${way}`;
    case 'exposed':
      return `${countText(by, 'pedal')} ${way} exposed to digital noise`;
    case 'offPreferred':
      return `${countText(by, 'pedal')} ${way} off the preferred volts`;
    case 'unpowered':
      return `${countText(by, 'pedal')} ${way} without power`;
    case 'moved':
      return `${countText(by, 'pedal')} ${way} moved`;
    case 'cost':
    case 'money':
    case 'newCost':
      return '';
  }
}

const costNote = ({ policy }: Told['board']): string => (policy.noisePrice === 0 ? '' : ', noise counted in');
