import * as z from 'zod';

import { rules } from '../../domain/rules.js';
import { amount, planId } from './plan-schema.js';

const pedal = planId('The id of a pedal.');
const pedals = (description: string) => z.array(pedal).describe(description);
const volts = (description: string) => z.number().gt(0).describe(`${description} In volts.`);
const polarity = z.enum(['centre-negative', 'centre-positive']);

const unit = {
  supply: planId('The id of the supply.'),
  unit: z.int().min(1).describe('Which unit of this supply, from 1.'),
};
const place = {
  ...unit,
  outputs: z.array(z.int().min(1).describe('The number of an output.')).describe('Its outputs.'),
};
const stand = (description: string) =>
  z.object({ ...place, volts: volts('What the pedal gets.') }).describe(description);
const units = z.array(z.object(unit).describe('One unit of a supply.')).describe('The units of supplies.');

const reason = z
  .union([
    z
      .object({
        kind: z.literal('rule').describe('Put back where it is today, the pedal makes the plan break a rule.'),
        rule: z.enum(rules).describe('The hard rule that would be broken.'),
        pedals: pedals('Those that it concerns.'),
        message: z.string().describe('A sentence with the numbers.'),
      })
      .describe('A hard rule.'),
    z
      .object({ kind: z.literal('taken').describe('Other pedals take its place.'), by: pedals('These pedals.') })
      .describe('Its place is taken.'),
    z
      .object({
        kind: z.literal('saves').describe('Put back, it asks for more money or exposes more pedals.'),
        money: amount('What the move saves.'),
        exposed: pedals('Those that the move keeps digital noise off.'),
      })
      .describe('It is better off elsewhere.'),
    z
      .object({ kind: z.literal('none').describe('No reason was found before the search stopped.') })
      .describe('None is known.'),
  ])
  .describe('Why the pedal moves.');

const move = z
  .object({ pedal, from: stand('Where it is today.'), to: stand('Where it goes.'), reason })
  .describe('A pedal that is plugged in today and moves.');

const step = z
  .union([
    z
      .object({ step: z.enum(['mains off', 'mains on']).describe('Pull from the mains, or plug into them.'), units })
      .describe('Units of supplies go off or on the mains.'),
    z
      .object({ step: z.literal('pull').describe('Pull the plug and take off its leads.'), pedal, ...place })
      .describe('A plug is pulled from where it is today.'),
    z
      .object({
        step: z.literal('set volts').describe('Turn the switch of these outputs.'),
        ...place,
        volts: volts('What it is set to.'),
        was: volts('How it stands today.').nullable().describe('How it stands today, in volts; null if not known.'),
      })
      .describe('A switch of volts is turned.'),
    z
      .object({
        step: z.literal('set polarity').describe('Turn the polarity switch of these outputs.'),
        ...place,
        polarity: polarity.describe('How it must stand.'),
      })
      .describe('A polarity switch is turned.'),
    z
      .object({
        step: z.literal('lay').describe('Lay leads, their plugs off the pedals.'),
        ...place,
        join: z
          .object({
            mode: z.enum(['series', 'parallel']).describe('How the outputs are joined.'),
            part: planId('The id of the join lead.'),
          })
          .nullable()
          .describe('The join lead; null for a single output.'),
        chain: planId('The id of the chain lead.').nullable().describe('The chain lead; null for a pedal alone.'),
        chained: z.boolean().describe('True when the chain lead is there already.'),
        tails: z
          .array(
            z
              .object({ pedal, parts: z.array(planId('The id of an adapter.')).describe('Its adapters, in order.') })
              .describe('One plug that is laid.'),
          )
          .describe('The plugs that are laid.'),
      })
      .describe('The leads of one output are laid.'),
    z
      .object({
        step: z.literal('measure').describe('Hold a meter to the free plug.'),
        pedal,
        volts: volts('What it must show with nothing on it.'),
        polarity: polarity.nullable().describe('What must be at the centre of the plug; null for AC.'),
      })
      .describe('A plug is measured before its pedal goes on.'),
    z
      .object({ step: z.literal('plug').describe('Put the plug into its pedal.'), pedal })
      .describe('A pedal is plugged.'),
  ])
  .describe('One thing to do.');

/** What a plan for re-plugging prints beside what every plan does. */
export const printedChanges = {
  stays: pedals('Of `rewire`: the ids of the pedals that keep unit, outputs and volts.').optional(),
  moves: z.array(move).describe('Of `rewire`: the pedals that move.').optional(),
  steps: z.array(step).describe('Of `rewire`: what to do, in this order.').optional(),
};
