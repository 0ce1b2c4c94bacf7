import * as z from 'zod/mini';

import { circuitKinds } from '../../domain/circuit-kinds.js';
import { described, descriptionOf } from './described.js';
import {
  batteryType,
  connector,
  count,
  flag,
  ground,
  id,
  largestVolts,
  mains,
  map,
  milliamps,
  mostInShortList,
  name,
  polarity,
  power,
  volts,
  voltsRange,
  worded,
  words,
} from './schema-fields.js';

/** What stands for a figure that nobody has read yet. */
const unknown = described(z.literal('unknown'), 'Nobody has read it yet.');

/** A field of few values that may be unknown, too. */
const orUnknown = <Value extends string>(field: z.ZodMiniEnum<{ [Word in Value]: Word }>, allowed: string) =>
  words([...field.options, 'unknown'], `${descriptionOf(field)} \`unknown\` where nobody has read it yet.`, allowed);

/** A key of a per-voltage map: plain volts such as 9 or 9.5. */
const voltsKeyPattern = /^(?:0|[1-9]\d{0,3})(?:\.\d{1,3})?$/;

const accepts = worded(
  z.union([
    volts('The only volts it accepts.'),
    described(
      z.array(volts('Volts that it accepts.')).check(z.minLength(1), z.maxLength(mostInShortList)),
      'All the volts it accepts.',
    ),
    voltsRange('It accepts anything between these volts, both included.'),
    unknown,
  ]),
  'The volts it accepts: one number, a list, a range, or unknown.',
  'a number of volts, a list such as [9, 12], a range {from: 9, to: 18} or unknown',
  'V',
);

const draw = worded(
  z.union([
    milliamps('The milliamps it draws at all volts that it accepts.'),
    described(
      z.record(
        worded(
          z.string().check(
            z.regex(voltsKeyPattern),
            z.refine((key) => Number(key) > 0 && Number(key) <= largestVolts),
          ),
          'Volts that it accepts.',
          'plain volts above 0 and up to 1000, with at most three decimals',
          'V',
        ),
        milliamps('The milliamps it draws at these volts.'),
      ),
      'The milliamps it draws for each of the volts; no other volts are then accepted.',
    ),
    unknown,
  ]),
  'The milliamps it draws: one number, one for each of the volts it accepts, as in {9: 300, 12: 230}, or unknown.',
  'a number of milliamps, one for each voltage as in {9: 300, 12: 230}, or unknown',
  'mA',
);

/** What of a pedal must be stated where it came with no adapter of its own. */
export const figuresOfPedal = { volts: accepts, milliamps: draw } as const;

const adapter = map(
  'It keeps the adapter it came with, which is right for it whatever else is stated; volts and milliamps may be left out then.',
  'a map {mains: {from: 220, to: 240}}',
  { mains: z.optional(mains()) },
);

const battery = map(
  'The batteries that it can run on; used where `policy.batteries` is stated.',
  'a map {type: 9V-block, count: 1}',
  {
    type: batteryType('What goes in: a battery of the same type.'),
    count: count(1, 100, 'How many make a set.'),
  },
);

/** A pedal as a board file writes it. */
export const pedalSchema = map('A pedal and what it needs.', 'a map with name, volts, milliamps …', {
  id: z.optional(id('How other parts of the file and the results call it; made from the name when absent.')),
  name: name('What it is called.'),
  power: z.optional(orUnknown(power, 'DC, AC or unknown')),
  polarity: z.optional(orUnknown(polarity, 'centre-negative, centre-positive or unknown')),
  inlet: z.optional(connector('The connector of its power inlet, or unknown.')),
  ground: z.optional(orUnknown(ground, 'negative, positive or unknown')),
  volts: z.optional(accepts),
  prefers: z.optional(volts('The volts its player would rather have; one of those it accepts.')),
  maxVolts: z.optional(
    volts('The most volts it survives, where its maker states it; matters for unregulated outputs only.'),
  ),
  milliamps: z.optional(draw),
  circuit: z.optional(
    worded(
      z.enum(circuitKinds.map(({ key }) => key)),
      'What kind of circuit it is; needed where its draw is unknown, to plan with what such circuits usually draw.',
      circuitKinds.map(({ key }) => key).join(', '),
    ),
  ),
  startup: z.optional(milliamps('The milliamps it draws at the moment of switching on, taken as stated.')),
  figure: z.optional(
    words(
      ['label', 'manual', 'measured', 'guess'],
      'Where its draw was read; `label` when absent. A guess is multiplied by `policy.guess`.',
      'label, manual, measured or guess',
    ),
  ),
  digital: z.optional(flag('It holds a digital circuit, which may disturb high-gain pedals; false when absent.')),
  highGain: z.optional(flag('It amplifies a lot, and noise with it; false when absent.')),
  alone: z.optional(flag('Its maker asks for an output of its own; false when absent.')),
  later: z.optional(flag('It is bought later: a place is kept for it; false when absent.')),
  adapter: z.optional(adapter),
  battery: z.optional(battery),
});

export type RawPedal = z.output<typeof pedalSchema>;

/** What every pedal of a board has that does not say otherwise. */
export const pedalAssumptionsSchema = map(
  'What is taken for pedals that leave it out; every use is listed for confirmation.',
  'a map with any of power, polarity, inlet, ground, volts',
  {
    power: z.optional(power),
    polarity: z.optional(polarity),
    inlet: z.optional(connector('The connector of the power inlet.')),
    ground: z.optional(ground),
    volts: z.optional(volts('The volts to plan with where a label has not been read; for nothing else.')),
  },
);

export type RawPedalAssumptions = z.output<typeof pedalAssumptionsSchema>;
