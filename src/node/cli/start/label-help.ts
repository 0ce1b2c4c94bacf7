import type { Polarity } from '../../../domain/pedal.js';
import { polaritySignText } from '../../../report/signs/polarity-sign.js';
import type { Choice } from './asker.js';

/** The signs on labels, with and without characters beyond ASCII. */
export type Signs = {
  readonly direct: string;
  readonly alternating: string;
  readonly negative: string;
  readonly positive: string;
};

export const signsFor = (unicode: boolean): Signs => ({
  ...(unicode ? { direct: '⎓', alternating: '∿' } : { direct: '=== (a line over dashes)', alternating: '~' }),
  negative: polaritySignText('centre-negative', unicode),
  positive: polaritySignText('centre-positive', unicode),
});

/** How to get on in a conversation. */
const waysOn = 'Esc goes back one question, Ctrl-U empties a line, Ctrl-C stops and keeps what was finished.';

export const pedalHelp = (signs: Signs): string =>
  [
    'Pull every supply from the mains. Then one line a pedal: its name, and what its label says.',
    '  moth delay 9v 300 neg',
    '    9v   the volts; also 9-18v, 9/12v, 9v AC',
    '    300  the current in mA; also 0.3A, 2.7W',
    `    neg  or c-: minus on the pin,  ${signs.negative}`,
    `    pos  or c+: plus on the pin,   ${signs.positive}`,
    'Also: digital, analogue, high gain, positive ground, 3.5 mm jack, alone (an output of its own), own adapter (it keeps the ' +
      'one it came with), 9v block or 6xAA (batteries that it can run on).',
    'Leave out what the label does not say. It is written down as not known, and no pedal is plugged in before that is read.',
    waysOn,
  ].join('\n');

export const supplyHelp = (signs: Signs): string =>
  [
    'Read the label or the data sheet of each supply, never the pedals. Pull it from the mains first, and never open it.',
    '  mains     what it takes: INPUT 100-240 V',
    '  outputs   volts and most current: 9 V 400 mA;',
    '            those that are alike are told once',
    '  polarity  a + and a - joined to a ring with a dot:',
    `            ${signs.negative}; the dot is the pin`,
    '  total     the most of all outputs together',
    'Type ? wherever you do not know. A supply that cannot be used safely without what is missing stays in the file as a ' +
      'comment that says what to look for.',
    waysOn,
  ].join('\n');

export const isolationHelp = [
  'An output is isolated when its ground is its own. How to tell:',
  '- The label or data sheet says "isolated" of the outputs, not only of the supply from the mains. Or',
  '- Measure, with the supply off the mains and nothing plugged in: a meter set to continuity, a probe on the sleeve of each ' +
    'of two outputs. A beep means that they share a ground; none, between any two of them, that each is isolated.',
  '- A single output shares its ground with nobody: answer yes.',
].join('\n');

const notKnown = { value: 'unknown', key: '?', label: 'I do not know' } as const;

export const powerChoices = (signs: Signs): readonly Choice<'DC' | 'AC' | 'unknown'>[] => [
  { value: 'DC', key: 'd', label: `DC   ${signs.direct}` },
  { value: 'AC', key: 'a', label: `AC   ${signs.alternating}` },
  notKnown,
];

const signChoices = (signs: Signs): readonly Choice<Polarity>[] => [
  { value: 'centre-negative', key: 'n', label: `${signs.negative}   the dot leads to −: centre-negative` },
  { value: 'centre-positive', key: 'p', label: `${signs.positive}   the dot leads to +: centre-positive` },
];

const noSign = { value: 'unknown', key: '?', label: 'no such sign, or I do not know' } as const;

/** The signs that stand at an inlet, which has no switch. */
export const inletPolarityChoices = (signs: Signs): readonly Choice<Polarity | 'unknown'>[] => [
  ...signChoices(signs),
  noSign,
];

export const polarityChoices = (signs: Signs): readonly Choice<Polarity | 'either' | 'unknown'>[] => [
  ...signChoices(signs),
  { value: 'either', key: 'e', label: 'each output has a polarity switch' },
  noSign,
];

/** `other` is a connector with a name of its own. */
type ConnectorChoice = 'barrel-2.1' | 'barrel-2.5' | 'jack-3.5' | 'other' | 'unknown';

export const connectorChoices: readonly Choice<ConnectorChoice>[] = [
  { value: 'barrel-2.1', key: '1', label: 'barrel, 5.5 mm wide with a 2.1 mm pin: fits nearly all pedals' },
  { value: 'barrel-2.5', key: '2', label: 'barrel, 5.5 mm wide with a 2.5 mm pin' },
  { value: 'jack-3.5', key: '3', label: 'jack, 3.5 mm' },
  { value: 'other', key: 'o', label: 'another one' },
  notKnown,
];

/** Yes or no where neither is to be taken by Enter alone. */
export const yesOrNo: readonly Choice<'yes' | 'no'>[] = [
  { value: 'yes', key: 'y', label: 'yes' },
  { value: 'no', key: 'n', label: 'no' },
];
