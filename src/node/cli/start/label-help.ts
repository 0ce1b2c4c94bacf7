import type { Choice } from './asker.js';

/** The signs on labels, with and without characters beyond ASCII. */
export type Signs = {
  readonly direct: string;
  readonly alternating: string;
  readonly negative: string;
  readonly positive: string;
};

/** As the international signs for a plug's polarity have it: the ring is the sleeve, the dot in it the pin. */
export const signsFor = (unicode: boolean): Signs =>
  unicode
    ? { direct: '⎓', alternating: '∿', negative: '(+)──C•──(−)', positive: '(−)──C•──(+)' }
    : { direct: '=== (a line over dashes)', alternating: '~', negative: '(+)--C.--(-)', positive: '(-)--C.--(+)' };

export const pedalHelp = (signs: Signs): string =>
  [
    'Pull every supply from the mains first. All figures stand beside the power inlet, on the base plate or in the manual:',
    `  volts     9 V, 9V ${signs.direct}, 9-18 V: on the pedal, not on the adapter`,
    `  DC or AC  DC or ${signs.direct} is direct current, AC or ${signs.alternating} alternating`,
    '  polarity  a + and a - joined to a ring with a dot, such as',
    `            ${signs.negative}; the dot is the pin of the plug`,
    '  current   300 mA or 0.3 A; some labels give watts, 2.7 W',
    'Type ? wherever you do not know. Nothing is made up: a draw becomes a guess and is marked as one; a pedal without ' +
      'its volts or polarity stays in the file as a comment that says what to look for, and is left out of plans.',
  ].join('\n');

export const supplyHelp = (signs: Signs): string =>
  [
    'Read the label or the data sheet of each supply, never the pedals. Pull it from the mains first, and never open it.',
    '  mains     what it takes: INPUT 100-240 V',
    '  outputs   the volts and the most current of each kind: 9 V 400 mA;',
    '            outputs that are alike are told once',
    '  polarity  a + and a - joined to a ring with a dot, such as',
    `            ${signs.negative}; the dot is the pin of the plug`,
    '  total     the most of all outputs together, where it is stated',
    'Type ? wherever you do not know. A supply that cannot be used safely without what is missing stays in the file as a ' +
      'comment that says what to look for.',
  ].join('\n');

export const isolationHelp = [
  'An output is isolated when its ground is its own. How to tell:',
  '- The label or data sheet says "isolated" of the outputs, not only of the supply from the mains. Or',
  '- Measure, with the supply off the mains and nothing plugged in: a meter set to continuity, a probe on the sleeve of each ' +
    'of two outputs. A beep means that they share a ground; none, between any two of them, that each is isolated.',
  '- A single output shares its ground with nobody: answer yes.',
].join('\n');

export const powerChoices = (signs: Signs): readonly Choice<'DC' | 'AC' | 'unknown'>[] => [
  { value: 'DC', label: `DC   ${signs.direct}`, hint: 'nearly all pedals' },
  { value: 'AC', label: `AC   ${signs.alternating}` },
  { value: 'unknown', label: 'I do not know' },
];

export const polarityChoices = (signs: Signs): readonly Choice<'centre-negative' | 'centre-positive' | 'unknown'>[] => [
  { value: 'centre-negative', label: `${signs.negative}   the dot leads to −: centre-negative` },
  { value: 'centre-positive', label: `${signs.positive}   the dot leads to +: centre-positive` },
  { value: 'unknown', label: 'no such sign, or I do not know' },
];

/** `other` is a connector with a name of its own. */
export type ConnectorChoice = 'barrel-2.1' | 'barrel-2.5' | 'jack-3.5' | 'other' | 'unknown';

export const connectorChoices: readonly Choice<ConnectorChoice>[] = [
  { value: 'barrel-2.1', label: 'barrel, 5.5 mm wide with a 2.1 mm pin', hint: 'nearly all pedals' },
  { value: 'barrel-2.5', label: 'barrel, 5.5 mm wide with a 2.5 mm pin' },
  { value: 'jack-3.5', label: 'jack, 3.5 mm' },
  { value: 'other', label: 'another one' },
  { value: 'unknown', label: 'I do not know' },
];
