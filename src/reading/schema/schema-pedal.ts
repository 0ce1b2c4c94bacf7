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
  milliamps,
  mostInShortList,
  name,
  polarity,
  power,
  volts,
  voltsRange,
  wordings,
} from './schema-fields.js';

/** What stands for a figure that nobody has read yet. */
const unknown = z.literal('unknown').describe('Nobody has read it yet.');

/** A field of few values that may be unknown, too. */
const orUnknown = <const Value extends string>(field: z.ZodEnum<Readonly<Record<Value, Value>>>, allowed: string) =>
  z
    .enum([...field.options, 'unknown'])
    .describe(`${field.description ?? ''} \`unknown\` where nobody has read it yet.`)
    .register(wordings, { allowed, unit: null });

/** A key of a per-voltage map: plain volts such as 9 or 9.5. */
const voltsKeyPattern = /^(?:0|[1-9]\d{0,3})(?:\.\d{1,3})?$/;

const accepts = z
  .union([
    volts('The only volts it accepts.'),
    z.array(volts('Volts that it accepts.')).min(1).max(mostInShortList).describe('All the volts it accepts.'),
    voltsRange('It accepts anything between these volts, both included.'),
    unknown,
  ])
  .describe('The volts it accepts: one number, a list, a range, or unknown.')
  .register(wordings, {
    allowed: 'a number of volts, a list such as [9, 12], a range {from: 9, to: 18} or unknown',
    unit: 'V',
  });

const draw = z
  .union([
    milliamps('The milliamps it draws at all volts that it accepts.'),
    z
      .record(
        z
          .string()
          .regex(voltsKeyPattern)
          .refine((key) => Number(key) > 0 && Number(key) <= largestVolts)
          .describe('Volts that it accepts.')
          .register(wordings, {
            allowed: 'plain volts above 0 and up to 1000, with at most three decimals',
            unit: 'V',
          }),
        milliamps('The milliamps it draws at these volts.'),
      )
      .describe('The milliamps it draws for each of the volts; no other volts are then accepted.'),
    unknown,
  ])
  .describe(
    'The milliamps it draws: one number, one for each of the volts it accepts, as in {9: 300, 12: 230}, or unknown.',
  )
  .register(wordings, {
    allowed: 'a number of milliamps, one for each voltage as in {9: 300, 12: 230}, or unknown',
    unit: 'mA',
  });

/** What of a pedal must be stated where it came with no adapter of its own. */
export const figuresOfPedal = { volts: accepts, milliamps: draw } as const;

const adapter = z
  .strictObject({ mains: mains().optional() })
  .describe(
    'It keeps the adapter it came with, which is right for it whatever else is stated; volts and milliamps may be left out then.',
  )
  .register(wordings, { allowed: 'a map {mains: {from: 220, to: 240}}', unit: null });

const battery = z
  .strictObject({
    type: batteryType('What goes in: a battery of the same type.'),
    count: count(1, 100, 'How many make a set.'),
  })
  .describe('The batteries that it can run on; used where `policy.batteries` is stated.')
  .register(wordings, { allowed: 'a map {type: 9V-block, count: 1}', unit: null });

/** A pedal as a board file writes it. */
export const pedalSchema = z
  .strictObject({
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
    circuit: z
      .enum(circuitKinds.map(({ key }) => key))
      .describe(
        'What kind of circuit it is; needed where its draw is unknown, to plan with what such circuits usually draw.',
      )
      .register(wordings, { allowed: circuitKinds.map(({ key }) => key).join(', '), unit: null })
      .optional(),
    startup: milliamps('The milliamps it draws at the moment of switching on, taken as stated.').optional(),
    figure: z
      .enum(['label', 'manual', 'measured', 'guess'])
      .describe('Where its draw was read; `label` when absent. A guess is multiplied by `policy.guess`.')
      .register(wordings, { allowed: 'label, manual, measured or guess', unit: null })
      .optional(),
    digital: flag('It holds a digital circuit, which may disturb high-gain pedals; false when absent.').optional(),
    highGain: flag('It amplifies a lot, and noise with it; false when absent.').optional(),
    alone: flag('Its maker asks for an output of its own; false when absent.').optional(),
    later: flag('It is bought later: a place is kept for it; false when absent.').optional(),
    adapter: adapter.optional(),
    battery: battery.optional(),
  })
  .describe('A pedal and what it needs.')
  .register(wordings, { allowed: 'a map with name, volts, milliamps …', unit: null });

export type RawPedal = z.output<typeof pedalSchema>;

/** What every pedal of a board has that does not say otherwise. */
export const pedalAssumptionsSchema = z
  .strictObject({
    power: power.optional(),
    polarity: polarity.optional(),
    inlet: connector('The connector of the power inlet.').optional(),
    ground: ground.optional(),
    volts: volts('The volts to plan with where a label has not been read; for nothing else.').optional(),
  })
  .describe('What is taken for pedals that leave it out; every use is listed for confirmation.')
  .register(wordings, { allowed: 'a map with any of power, polarity, inlet, ground, volts', unit: null });

export type RawPedalAssumptions = z.output<typeof pedalAssumptionsSchema>;
