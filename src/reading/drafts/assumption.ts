import type { Ground, Polarity, Power } from '../../domain/pedal.js';

/** What the owner of a board lets plans take for pedals whose labels do not say: a key that is not there, nothing. */
export type Assumption = {
  readonly power?: Power;
  readonly polarity?: Polarity;
  readonly inlet?: string;
  readonly ground?: Ground;
  readonly volts?: number;
};

/** As most pedals are. The volts are for the places of pedals whose own are not known, and for nothing else. */
export const usualAssumption = { power: 'DC', inlet: 'barrel-2.1', ground: 'negative', volts: 9 } satisfies Assumption;

/** The same with the polarity that most have. */
export const usualWithPolarity = {
  power: 'DC',
  polarity: 'centre-negative',
  inlet: 'barrel-2.1',
  ground: 'negative',
  volts: 9,
} satisfies Assumption;
