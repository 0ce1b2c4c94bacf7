import * as z from 'zod';

import { numberOfThousandths } from '../../domain/quantities.js';
import type { Confirm } from '../words/confirm.js';
import { list, made } from './codec.js';

const idOf = (what: string) => z.string().min(1).max(200).describe(`The id of the ${what}.`);

const assumed = (of: 'pedal' | 'supply') =>
  z
    .partialRecord(
      z
        .enum(['power', 'polarity', 'inlet', 'ground', 'volts', 'plug', 'regulated'])
        .describe('A field that was left out.'),
      z.union([z.string(), z.boolean(), z.number()]).describe('What was assumed.'),
    )
    .describe(`The fields of the ${of} that were taken from the file's \`assume\` block.`);

const milliamps = z.number().gt(0).describe('The guessed draw in milliamps.');
const guessed = z
  .object({
    milliamps: z
      .union([
        milliamps,
        z
          .record(z.string().describe('Volts.'), milliamps)
          .describe('The guessed draw in milliamps at each of the volts.'),
      ])
      .describe('The guessed draw in milliamps: one number, or one for each of the volts.'),
  })
  .describe("The pedal's draw, which is a guess.");

const unknown = z
  .array(
    z.enum(['power', 'polarity', 'inlet', 'ground', 'volts', 'milliamps']).describe('A field that nobody has read.'),
  )
  .min(1)
  .describe('What the board file says is unknown.');

const entry = z
  .union([
    z
      .object({
        pedal: idOf('pedal'),
        assumed: assumed('pedal'),
        guessed: guessed.optional(),
        unknown: unknown.optional(),
      })
      .describe('What to read off a pedal.'),
    z.object({ supply: idOf('supply'), assumed: assumed('supply') }).describe('What to read off a supply.'),
  ])
  .describe('What nobody has read from a label yet.');

/** What is to be read off labels, in the words of the files. */
export const confirmed = list(
  'What to read off a label before plugging in.',
  made(entry, (confirm: Confirm) => structuredClone(inFileWords(confirm)) as z.input<typeof entry>),
);

/** Volts as files state them. */
function inFileWords(confirm: Confirm): unknown {
  if ('supply' in confirm || confirm.assumed.volts === undefined) return confirm;
  const { volts, ...assumed } = confirm.assumed;
  return { ...confirm, assumed: { ...assumed, volts: numberOfThousandths(volts) } };
}
