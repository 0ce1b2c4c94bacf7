import type { UnknownField } from '../../domain/pedal.js';

/** A figure of a pedal by its name in the trade. */
export const fieldWords: Readonly<Record<UnknownField, string>> = {
  power: 'whether AC or DC',
  polarity: 'the polarity',
  inlet: 'the plug',
  ground: 'the ground',
  volts: 'the volts',
  milliamps: 'the draw',
};

/** What to look for on the pedal, and where. */
export const whereToLook: Readonly<Record<UnknownField, string>> = {
  power: '“AC” or “DC”, a wave or a straight line beside the inlet',
  polarity: 'the sign of pin and sleeve beside the inlet',
  inlet: 'the size and shape of the plug that fits its inlet',
  ground: 'a word on positive ground in its manual or from its maker',
  volts: '“V” on the label or in the manual',
  milliamps: '“mA” on the label or in the manual',
};
