import type { LineWords } from './line-help.js';

/** What can stand on the line to type a pedal on, each with what it says; the examples can be typed as they are. */
export const lineWords: LineWords = [
  { examples: ['9v', '9/18'], says: 'the volts that it wants, or takes either of' },
  { examples: ['9-12v prefers 12'], says: 'which of its volts it would rather have' },
  { examples: ['300 mA', '0.3 A', '2.7 W'], says: 'what it draws; behind its volts, 300 alone is milliamps' },
  { examples: ['90 mA guess', 'about 90 mA'], says: 'a draw that nobody has read: it is planned with more' },
  { examples: ['startup 410', '410 mA at switch-on'], says: 'what it takes when it starts, where that is more' },
  { examples: ['neg', 'pos', 'AC'], says: 'minus or plus on the pin, or alternating current' },
  { examples: ['digital', 'high gain'], says: 'whom one hears whine, and who hears it' },
  {
    examples: ['own adapter', 'own adapter 100-240v'],
    says: 'that it keeps the adapter it came with, and for which mains',
  },
  { examples: ['9v block', '6xAA'], says: 'the batteries that it can run on' },
  { examples: ['positive ground', 'alone'], says: 'that it wants an output of its own' },
];
