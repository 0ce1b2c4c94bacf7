import type { Source } from '../../domain/source.js';
import type { Feed } from '../../domain/plan.js';
import type { Inventory } from './inventory.js';

/** What supplies stand on, which decides how their power is cut off. */
export type Stands = {
  readonly mains: boolean;
  /** Power banks. */
  readonly banks: boolean;
};

/** Where nobody knows yet what will feed the board. */
export const usualStands: Stands = { mains: true, banks: false };

/** Of what feeds the board; the usual where nothing does yet. */
export function standsOf(inventory: Inventory, feeds: readonly Pick<Feed, 'supply'>[]): Stands {
  if (feeds.length === 0) return usualStands;
  const stood = new Set(feeds.map(({ supply }) => standOf[inventory.supply(supply).source.kind]));
  return { mains: stood.has('mains'), banks: stood.has('banks') };
}

const standOf: Readonly<Record<Source['kind'], keyof Stands | null>> = {
  mains: 'mains',
  adapter: 'mains',
  charge: 'banks',
  battery: null,
  fed: null,
};

/** "Pull every supply from the mains, switch every power bank off". */
export const allOff = ({ mains, banks }: Stands, again = ''): string =>
  mains
    ? `Pull every supply from the mains${again}${banks ? ', switch every power bank off' : ''}`
    : `Switch every power bank off${again}`;

/** The same in the middle of a sentence; of the mains, too, where nobody knows what the board stands on. */
export function offFirst({ mains, banks }: Stands): string {
  const off = 'switch the power banks off';
  if (banks && !mains) return off;
  return `pull the supplies from the mains${banks ? ` and ${off}` : ''}`;
}

/** "Plug the supplies into the mains one at a time, and switch the power banks on". */
export const allOn = ({ mains, banks }: Stands): string =>
  mains
    ? `Plug the supplies into the mains one at a time${banks ? ', and switch the power banks on' : ''}`
    : 'Switch the power banks on, one at a time';

/** What to do with a plug that is not what it must be. */
export const stopText = (stands: Stands): string =>
  `Hold the probes to each plug as said and compare. ${shortStopText(stands)}`;

/** The same where there is little room. */
export const shortStopText = ({ mains }: Stands): string =>
  `If a plug reads wrong, or shows a minus sign, ${mains ? 'pull the supply from the mains' : 'switch the power bank off'} and stop: that plug must not be put in.`;

/** What to look out for when the pedals have power. */
export const watchText = ({ mains }: Stands): string =>
  `If anything stays dark, hums, gets hot or smells, ${mains ? 'pull that supply' : 'switch that power bank off'} at once.`;

/** What holds before any lead is plugged or moved; nothing where only batteries feed the board. */
export const offBefore = (stands: Stands): readonly string[] => [
  ...(stands.mains ? ['Pull every supply from the mains before you plug or move a lead.'] : []),
  ...(stands.banks ? ['Switch every power bank off before you plug or move a lead.'] : []),
];
