import type { Criterion } from '../../domain/aim.js';
import type { PerPedalTier } from '../../domain/pedal-tier.js';
import { countText } from './words.js';

/** How a tier is spoken of, wherever it is. */
export type TierWords = {
  /** "exposed pedals", in front of a figure. */
  readonly name: string;
  /** What a plan does that has nothing of it. */
  readonly none: string;
  /** Null for money, whose figures need a currency. */
  readonly counted: CountWords | null;
};

export type CountWords = {
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
    name: 'pedals left out',
    none: 'leaves no pedal without power',
    counted: {
      so: (many) => `${pedals(many)} without power`,
      lessThan: (many) => `leaves fewer than ${pedals(many)} without power`,
      apart: (many, fewer) => `${pedals(many)} ${fewer} without power`,
    },
  },
  cost: { name: 'cost, noise included', none: 'costs nothing', counted: null },
  newCost: { name: 'cost, new noise included', none: 'costs nothing', counted: null },
  money: { name: 'cost', none: 'costs nothing', counted: null },
  exposed: {
    name: 'exposed pedals',
    none: 'exposes no pedal to digital noise',
    counted: {
      so: (many) => countText(many, 'exposed pedal'),
      lessThan: (many) => `exposes fewer than ${pedals(many)} to digital noise`,
      apart: (many, fewer) => `${pedals(many)} ${fewer} exposed to digital noise`,
    },
  },
  bricks: {
    name: 'supplies in use',
    none: 'uses no supply',
    counted: {
      so: (many) => `${supplies(many)} in use`,
      lessThan: (many) => `uses fewer than ${supplies(many)}`,
      apart: (many, fewer) => `${supplies(many)} ${fewer}`,
    },
  },
  sockets: {
    name: 'mains sockets taken',
    none: 'takes no mains socket',
    counted: {
      so: sockets,
      lessThan: (many) => `takes fewer than ${sockets(many)}`,
      apart: (many, fewer) => `${sockets(many)} ${fewer}`,
    },
  },
  parts: {
    name: 'extra leads',
    none: 'takes no extra leads',
    counted: {
      so: (many) => countText(many, 'lead'),
      lessThan: (many) => `takes fewer than ${countText(many, 'extra lead')}`,
      apart: (many, fewer) => `${countText(many, 'lead')} ${fewer}`,
    },
  },
  offPreferred: {
    name: 'pedals off their preferred volts',
    none: 'has no pedal off the preferred volts',
    counted: {
      so: (many) => countText(many, 'pedal off its preferred volts', 'pedals off their preferred volts'),
      lessThan: (many) => `has fewer than ${pedals(many)} off the preferred volts`,
      apart: (many, fewer) => `${pedals(many)} ${fewer} off the preferred volts`,
    },
  },
  moved: {
    name: 'pedals moved',
    none: 'moves no pedal',
    counted: {
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
