import * as z from 'zod';

import { circuitKinds } from '../../domain/circuit-kinds.js';
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
const unknown = z.literal('unknown').describe('Nobody has read it yet.');

/** A field of few values that may be unknown, too. */
const orUnknown = <const Value extends string>(field: z.ZodEnum<Readonly<Record<Value, Value>>>, allowed: string) =>
  words([...field.options, 'unknown'], `${field.description ?? ''} \`unknown\` where nobody has read it yet.`, allowed);

/** A key of a per-voltage map: plain volts such as 9 or 9.5. */
const voltsKeyPattern = /^(?:0|[1-9]\d{0,3})(?:\.\d{1,3})?$/;

const accepts = worded(
  z.union([
    volts('The only volts it accepts.'),
    z.array(volts('Volts that it accepts.')).min(1).max(mostInShortList).describe('All the volts it accepts.'),
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
    z
      .record(
        worded(
          z
            .string()
            .regex(voltsKeyPattern)
            .refine((key) => Number(key) > 0 && Number(key) <= largestVolts),
          'Volts that it accepts.',
          'plain volts above 0 and up to 1000, with at most three decimals',
          'V',
        ),
        milliamps('The milliamps it draws at these volts.'),
      )
      .describe('The milliamps it draws for each of the volts; no other volts are then accepted.'),
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
  { mains: mains().optional() },
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
  id: id('How other parts of the file and the results call it; made from the name when absent.').optional(),
  name: name('What it is called.'),
  power: orUnknown(power, 'DC, AC or unknown').optional(),
  polarity: orUnknown(polarity, 'centre-negative, centre-positive or unknown').optional(),
  inlet: connector('The connector of its power inlet, or unknown.').optional(),
  ground: orUnknown(ground, 'negative, positive or unknown').optional(),
  volts: accepts.optional(),
  prefers: volts('The volts its player would rather have; one of those it accepts.').optional(),
  maxVolts: volts(
    'The most volts it survives, where its maker states it; matters for unregulated outputs only.',
  ).optional(),
  milliamps: draw.optional(),
  circuit: worded(
    z.enum(circuitKinds.map(({ key }) => key)),
    'What kind of circuit it is; needed where its draw is unknown, to plan with what such circuits usually draw.',
    circuitKinds.map(({ key }) => key).join(', '),
  ).optional(),
  startup: milliamps('The milliamps it draws at the moment of switching on, taken as stated.').optional(),
  figure: words(
    ['label', 'manual', 'measured', 'guess'],
    'Where its draw was read; `label` when absent. A guess is multiplied by `policy.guess`.',
    'label, manual, measured or guess',
  ).optional(),
  digital: flag('It holds a digital circuit, which may disturb high-gain pedals; false when absent.').optional(),
  highGain: flag('It amplifies a lot, and noise with it; false when absent.').optional(),
  alone: flag('Its maker asks for an output of its own; false when absent.').optional(),
  later: flag('It is bought later: a place is kept for it; false when absent.').optional(),
  adapter: adapter.optional(),
  battery: battery.optional(),
});

export type RawPedal = z.output<typeof pedalSchema>;

/** What every pedal of a board has that does not say otherwise. */
export const pedalAssumptionsSchema = map(
  'What is taken for pedals that leave it out; every use is listed for confirmation.',
  'a map with any of power, polarity, inlet, ground, volts',
  {
    power: power.optional(),
    polarity: polarity.optional(),
    inlet: connector('The connector of the power inlet.').optional(),
    ground: ground.optional(),
    volts: volts('The volts to plan with where a label has not been read; for nothing else.').optional(),
  },
);

export type RawPedalAssumptions = z.output<typeof pedalAssumptionsSchema>;
