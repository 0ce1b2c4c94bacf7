import type { Pedal, Polarity } from './pedal.js';
import type { Supply } from './supply.js';

type Made = Pick<Supply, 'id' | 'name' | 'source'> & {
  readonly setting: Supply['banks'][number]['settings'][number];
  /** What it gives where nobody knows what the pedal takes. */
  readonly otherwise: Polarity | 'either';
};

/** A supply that is made for one pedal: not for sale, with one isolated output of the pedal's own power, plug and polarity. */
export const singleOutputFor = (pedal: Pedal, { setting, otherwise, ...made }: Made): Supply => ({
  ...made,
  price: null,
  stock: 0,
  total: null,
  banks: [
    {
      firstOutput: 1,
      outputs: 1,
      isolated: true,
      power: pedal.power,
      plug: pedal.inlet,
      polarity: pedal.polarity === 'unknown' ? otherwise : pedal.polarity,
      switching: 'each',
      settings: [setting],
      joins: [],
      total: null,
    },
  ],
  assumed: {},
});
