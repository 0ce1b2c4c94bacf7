import * as z from 'zod/mini';

import { numberOfThousandths } from '../../domain/quantities.js';
import { described } from '../../reading/schema/described.js';
import type { Confirm } from '../words/confirm.js';
import { list, made } from './codec.js';

const idOf = (what: string) => described(z.string().check(z.minLength(1), z.maxLength(200)), `The id of the ${what}.`);

const assumed = (of: 'pedal' | 'supply' | 'part') =>
  described(
    z.partialRecord(
      described(
        z.enum(['power', 'polarity', 'inlet', 'ground', 'volts', 'plug', 'regulated', 'fits', 'gives']),
        'A field that was left out.',
      ),
      described(z.union([z.string(), z.boolean(), z.number()]), 'What was assumed.'),
    ),
    `The fields of the ${of} that were taken from the file's \`assume\` block.`,
  );

const milliamps = described(z.number().check(z.gt(0)), 'The guessed draw in milliamps.');
const guessed = described(
  z.object({
    milliamps: described(
      z.union([
        milliamps,
        described(
          z.record(described(z.string(), 'Volts.'), milliamps),
          'The guessed draw in milliamps at each of the volts.',
        ),
      ]),
      'The guessed draw in milliamps: one number, or one for each of the volts.',
    ),
  }),
  "The pedal's draw, which is a guess.",
);

const unknown = described(
  z
    .array(
      described(
        z.enum(['power', 'polarity', 'inlet', 'ground', 'volts', 'milliamps']),
        'A field that nobody has read.',
      ),
    )
    .check(z.minLength(1)),
  'What the board file says is unknown.',
);

const entry = described(
  z.union([
    described(
      z.object({
        pedal: idOf('pedal'),
        assumed: assumed('pedal'),
        guessed: z.optional(guessed),
        unknown: z.optional(unknown),
      }),
      'What to read off a pedal.',
    ),
    described(z.object({ supply: idOf('supply'), assumed: assumed('supply') }), 'What to read off a supply.'),
    described(z.object({ part: idOf('part'), assumed: assumed('part') }), 'What to look at on a lead.'),
  ]),
  'What nobody has read from a label yet.',
);

/** What is to be read off labels, in the words of the files. */
export const confirmed = list(
  'What to read off a label before plugging in.',
  made(entry, (confirm: Confirm) => structuredClone(inFileWords(confirm)) as z.input<typeof entry>),
);

/** Volts as files state them. */
function inFileWords(confirm: Confirm): unknown {
  if (!('pedal' in confirm) || confirm.assumed.volts === undefined) return confirm;
  const { volts, ...assumed } = confirm.assumed;
  return { ...confirm, assumed: { ...assumed, volts: numberOfThousandths(volts) } };
}
