import * as z from 'zod';

import { choosingAims } from '../../domain/aim.js';

export const planId = (description: string) => z.string().min(1).max(200).describe(description);
export const planCount = (description: string) => z.int().min(0).describe(description);
export const amount = (description: string) =>
  z
    .string()
    .regex(/^\d{1,15}(?:\.\d{1,4})?$/)
    .describe(`${description} Money with the currency's own number of decimals.`);

const numbered = (description: string) => z.int().min(1).describe(description);
const volts = (description: string) => z.number().gt(0).describe(`${description} In volts.`);

const purchases = (what: string) =>
  z
    .array(
      z
        .object({
          id: planId(`The id of the ${what}.`),
          units: numbered('How many are bought.'),
          price: amount('The price of one.'),
        })
        .describe(`One kind of ${what} that is bought.`),
    )
    .describe(`What is bought of each kind of ${what}, beyond what is owned.`);

const join = z
  .object({
    mode: z.enum(['series', 'parallel']).describe('In series the volts add, in parallel the milliamps.'),
    part: planId('The id of the join lead.'),
  })
  .nullable()
  .describe('How two outputs are joined; null for a single one.');

const feed = z
  .object({
    pedal: planId('The id of the pedal.'),
    supply: planId('The id of the supply.'),
    unit: numbered('Which unit of this supply, from 1; the owned ones come first.'),
    outputs: z
      .array(numbered('The number of an output of the supply, from 1.'))
      .min(1)
      .max(2)
      .describe('The output, or the two that are joined.'),
    volts: volts('What the pedal gets: the sum of both outputs for a series join.'),
    polarity: z
      .enum(['centre-negative', 'centre-positive'])
      .nullable()
      .describe("What the pedal's inlet gets at the centre of its plug; null for AC, which has no polarity."),
    join,
    chain: planId('The id of the chain lead that all pedals on this output share.')
      .nullable()
      .describe('The id of the chain lead that all pedals on this output share; null for a pedal alone.'),
    parts: z
      .array(planId('The id of an adapter.'))
      .describe("The adapters of this pedal's own tail, from the supply's side to the pedal's."),
    settings: z
      .array(volts('What an output is set to.'))
      .min(1)
      .max(2)
      .describe('What each of the outputs is set to, in volts.'),
  })
  .describe('How one pedal is fed.');

const score = z
  .object({
    unpowered: planCount('Pedals without power.'),
    money: amount('What is to be bought costs this.'),
    exposed: planCount('High-gain pedals that share a ground with a digital one.'),
    bricks: planCount('Supply units in use, owned or bought.'),
    parts: planCount('Chain leads, join leads and adapters in use, owned or bought.'),
    offPreferred: planCount('Powered pedals that get other volts than they prefer.'),
    moved: planCount('Pedals whose unit, output or setting differs from the present wiring.')
      .nullable()
      .describe(
        'Pedals whose unit, output or setting differs from the present wiring; null where that does not count.',
      ),
  })
  .describe('What the plan comes to, by each measure.');

/** A result as `boardfeed choose --json` prints it, as far as it is read back. Later versions may add keys. */
export const planSchema = z.object({
  format: z.literal('boardfeed/plan/1').describe('The format of the file. Keys may be added to it, never changed.'),
  board: z.string().describe("The board's name."),
  aim: z.enum(choosingAims).describe('What was taken to be best.'),
  status: z
    .enum(['proven', 'best found', 'impossible'])
    .describe('`proven`: no plan is better. `best found`: the search stopped first. `impossible`: no plan exists.'),
  currency: z.string().describe('The ISO 4217 code of the currency of all money in the file, such as EUR.'),
  score,
  buy: z.object({ supplies: purchases('supply'), parts: purchases('part') }).describe('What is to be bought.'),
  feeds: z.array(feed).describe('How each powered pedal is fed.'),
  unpowered: z.array(planId('The id of a pedal.')).describe('The ids of the pedals without power.'),
  exposed: z
    .array(planId('The id of a pedal.'))
    .describe('The ids of the high-gain pedals that share a ground with a digital one.'),
});

export type RawPlan = z.output<typeof planSchema>;
