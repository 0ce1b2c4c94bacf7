import type { Criterion } from '../../domain/aim.js';
import type { PerPedalTier } from '../../domain/pedal-tier.js';
import { countText } from './words.js';

/** How a tier is spoken of, wherever it is. */
type TierWords = {
  /** What a plan does that has nothing of it. */
  readonly none: string;
  /** Null for money: `money-words.ts`. */
  readonly counted: CountWords | null;
};

type CountWords = {
  /** "exposed pedals", in front of a figure. */
  readonly name: string;
  /** "2 exposed pedals". */
  readonly so: (many: number) => string;
  /** "exposes fewer than 2 pedals to digital noise". */
  readonly lessThan: (many: number) => string;
  /** "2 pedals fewer exposed to digital noise", with "fewer" or "more" handed in. */
  readonly apart: (many: number, fewer: string) => string;
};

const pedals = (many: number): string => countText(many, 'pedal');
const supplies = (many: number): string => countText(many, 'supply', 'supplies');
const sockets = (many: number): string => countText(many, 'mains socket');

export const tierWords: Readonly<Record<Criterion, TierWords>> = {
  unpowered: {
    none: 'leaves no pedal without power',
    counted: {
      name: 'pedals left out',
      so: (many) => `${pedals(many)} without power`,
      lessThan: (many) => `leaves fewer than ${pedals(many)} without power`,
      apart: (many, fewer) => `${pedals(many)} ${fewer} without power`,
    },
  },
  cost: { none: 'costs nothing', counted: null },
  newCost: { none: 'costs nothing', counted: null },
  outlay: { none: 'costs nothing', counted: null },
  money: { none: 'costs nothing', counted: null },
  exposed: {
    none: 'exposes no pedal to digital noise',
    counted: {
      name: 'exposed pedals',
      so: (many) => countText(many, 'exposed pedal'),
      lessThan: (many) => `exposes fewer than ${pedals(many)} to digital noise`,
      apart: (many, fewer) => `${pedals(many)} ${fewer} exposed to digital noise`,
    },
  },
  bricks: {
    none: 'uses no supply',
    counted: {
      name: 'supplies in use',
      so: (many) => `${supplies(many)} in use`,
      lessThan: (many) => `uses fewer than ${supplies(many)}`,
      apart: (many, fewer) => `${supplies(many)} ${fewer}`,
    },
  },
  sockets: {
    none: 'takes no mains socket',
    counted: {
      name: 'mains sockets taken',
      so: sockets,
      lessThan: (many) => `takes fewer than ${sockets(many)}`,
      apart: (many, fewer) => `${sockets(many)} ${fewer}`,
    },
  },
  parts: {
    none: 'takes no extra leads',
    counted: {
      name: 'extra leads',
      so: (many) => countText(many, 'lead'),
      lessThan: (many) => `takes fewer than ${countText(many, 'extra lead')}`,
      apart: (many, fewer) => `${countText(many, 'lead')} ${fewer}`,
    },
  },
  offPreferred: {
    none: 'has no pedal off the preferred volts',
    counted: {
      name: 'pedals off their preferred volts',
      so: (many) => countText(many, 'pedal off its preferred volts', 'pedals off their preferred volts'),
      lessThan: (many) => `has fewer than ${pedals(many)} off the preferred volts`,
      apart: (many, fewer) => `${pedals(many)} ${fewer} off the preferred volts`,
    },
  },
  moved: {
    none: 'moves no pedal',
    counted: {
      name: 'pedals moved',
      so: (many) => countText(many, 'moved pedal'),
      lessThan: (many) => `moves fewer than ${pedals(many)}`,
      apart: (many, fewer) => `${pedals(many)} ${fewer} moved`,
    },
  },
};

/** What a headline says of the pedals that count in a tier, where there are any. */
export const pedalTierNotes: PerPedalTier<(many: number) => string> = {
  offPreferred: (many) => `${many} not at the preferred volts`,
};
