import type { BankDraft, InletDraft, SupplyDraft } from '../../reading/drafts/supply-draft.js';
import type { TakenAs } from '../../reading/typed/supply-line.js';
import { connectorText } from './connector-words.js';
import { labelVoltsText } from './read-back.js';
import { countText, listText, polarityText } from './words.js';

/** What a supply was understood as, a line each, and what was taken without being said. */
export function supplyReadBack(
  { name, banks, total, mains, charge, inlet, regulated }: SupplyDraft,
  taken: readonly TakenAs[],
): string {
  const together = total === null ? [] : [`${'watts' in total ? `${total.watts} W` : `${total.milliamps} mA`} in all`];
  const takes =
    mains === null ? [] : [`mains of ${typeof mains === 'number' ? mains : `${mains.from} to ${mains.to}`} V`];
  const holds = charge === null ? [] : [`a power bank of ${charge} Wh`];
  const hangs = inlet === null ? [] : [`fed from ${inletText(inlet)}`];
  const unregulated = regulated === false ? ['not regulated'] : [];
  const read = `${name}: ${[...banks.map(bankText), ...together, ...takes, ...holds, ...unregulated, ...hangs].join(', ')}.`;
  if (taken.length === 0) return read;
  const each = taken.map((one) => `${takenWords[one].as} (${takenWords[one].otherwise})`);
  return `${read}\nTaken as most have it, until its label says otherwise: ${listText(each)}.`;
}

function inletText({ volts, milliamps, startup, power, polarity, plug }: InletDraft): string {
  const start = startup === undefined ? '' : ` (${startup} mA when it starts)`;
  const sign = polarity === null ? '' : `${polarityText(polarity)}, `;
  return `${labelVoltsText(volts)} V ${power ?? ''} ${milliamps} mA${start}, ${sign}${connectorText(plug ?? '')}`;
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
  plug: { as: `a ${connectorText('barrel-2.1')} plug`, otherwise: 'else 3.5 mm jack' },
  regulated: { as: 'regulated', otherwise: 'else unregulated and its volts with nothing on it' },
};
