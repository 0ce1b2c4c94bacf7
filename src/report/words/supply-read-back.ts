import type { BankDraft, SupplyDraft } from '../../reading/drafts/supply-draft.js';
import type { TakenAs } from '../../reading/typed/supply-line.js';
import { countText, listText } from './words.js';

/** What a supply was understood as, a line each, and what was taken without being said. */
export function supplyReadBack(
  { name, banks, total, mains, charge, regulated }: SupplyDraft,
  taken: readonly TakenAs[],
): string {
  const together = total === null ? [] : [`${'watts' in total ? `${total.watts} W` : `${total.milliamps} mA`} in all`];
  const takes =
    mains === null ? [] : [`mains of ${typeof mains === 'number' ? mains : `${mains.from} to ${mains.to}`} V`];
  const holds = charge === null ? [] : [`a power bank of ${charge} Wh`];
  const unregulated = regulated === false ? ['not regulated'] : [];
  const read = `${name}: ${[...banks.map(bankText), ...together, ...takes, ...holds, ...unregulated].join(', ')}.`;
  if (taken.length === 0) return read;
  const each = taken.map((one) => `${takenWords[one].as} (${takenWords[one].otherwise})`);
  return `${read}\nTaken as most have it, until its label says otherwise: ${listText(each)}.`;
}

function bankText({ outputs, isolated, power, settings }: BankDraft): string {
  const gives = settings.map(({ volts, milliamps }) => `${volts} V${power === 'AC' ? ' AC' : ''} ${milliamps} mA`);
  const isApart = outputs > 1 && isolated === true;
  const count = countText(outputs, 'output', isApart ? 'isolated outputs' : 'outputs');
  return `${count}${outputs === 1 || isApart ? '' : ' on one ground'} of ${gives.join(' or ')}`;
}

/** Each with the word that says otherwise. */
const takenWords: Readonly<Record<TakenAs, { readonly as: string; readonly otherwise: string }>> = {
  polarity: { as: 'minus on the pin', otherwise: 'else write pos' },
  plug: { as: 'a barrel plug of 2.1 mm', otherwise: 'else jack-3.5' },
  regulated: { as: 'regulated', otherwise: 'else unregulated and its volts with nothing on it' },
};
