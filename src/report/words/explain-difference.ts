import { isMoney } from '../../domain/aim.js';
import { minorUnits } from '../../domain/quantities.js';
import type { TierDifference } from '../../planning/explain/difference.js';
import type { Told } from './explain-facts.js';
import { countText, listText, priceText } from './words.js';

/** "20.00 EUR more, 1 supply less": what a plan comes to beside the best one. */
export const differencesText = (told: Told, differences: readonly TierDifference[]): string =>
  listText(differences.map((each) => differenceText(told, each)));

function differenceText({ board }: Told, { tier, from, to, exposed = 0 }: TierDifference): string {
  const by = Math.abs(to - from);
  const way = to > from ? 'more' : 'less';
  if (isMoney(tier)) return `${priceText(minorUnits(by), board)} ${way}${exposed === 0 ? '' : noiseNote(exposed)}`;
  const fewer = to > from ? 'more' : 'fewer';
  switch (tier) {
    case 'bricks':
      return `${countText(by, 'supply', 'supplies')} ${fewer}`;
    case 'parts':
      return `${countText(by, 'lead')} ${fewer}`;
    case 'exposed':
      return `${countText(by, 'pedal')} ${fewer} exposed to digital noise`;
    case 'offPreferred':
      return `${countText(by, 'pedal')} ${fewer} off the preferred volts`;
    case 'unpowered':
      return `${countText(by, 'pedal')} ${fewer} without power`;
    case 'moved':
      return `${countText(by, 'pedal')} ${fewer} moved`;
    case 'cost':
    case 'money':
    case 'newCost':
      return '';
  }
}

const noiseNote = (exposed: number): string =>
  `, counting ${countText(Math.abs(exposed), 'pedal')} ${exposed > 0 ? 'more' : 'fewer'} exposed to digital noise`;
