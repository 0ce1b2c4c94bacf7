import * as z from 'zod';

import { choosingAims } from '../../domain/aim.js';
import { rules } from '../../domain/rules.js';
import { amount, planCount, planId, planSchema } from './plan-schema.js';
import { printedChanges } from './printed-changes-schema.js';

const rule = z.enum(rules).describe('The hard rule that stands in the way.');
const message = z.string().describe('A sentence with the numbers.');
const pedals = (description: string) => z.array(planId('The id of a pedal.')).describe(description);
const amountOrCount = (description: string) =>
  z
    .union([amount(`${description} For money.`), planCount(`${description} For what is counted.`)])
    .describe(`${description} Money as text, a count as a number.`);

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

const assumed = (of: 'pedal' | 'supply') =>
  z
    .partialRecord(
      z.enum(['power', 'polarity', 'inlet', 'ground', 'plug', 'regulated']).describe('A field that was left out.'),
      z.union([z.string(), z.boolean()]).describe('What was assumed.'),
    )
    .describe(`The fields of the ${of} that were taken from the file's \`assume\` block.`);

const confirm = z
  .union([
    z
      .object({ pedal: planId('The id of the pedal.'), assumed: assumed('pedal'), guessed: guessed.optional() })
      .describe('What to read off a pedal.'),
    z
      .object({ supply: planId('The id of the supply.'), assumed: assumed('supply') })
      .describe('What to read off a supply.'),
  ])
  .describe('What nobody has read from a label yet.');

const refusal = z
  .object({
    rule,
    at: z
      .object({
        supply: planId('The id of the supply.'),
        outputs: z
          .array(z.int().min(1).describe('The number of an output.'))
          .describe('Outputs that are alike in this.'),
      })
      .nullable()
      .describe('Where the nearest miss stands; null when there is no supply at all.'),
    message,
  })
  .describe('Why one kind of output cannot feed the pedal.');

const reason = z
  .union([
    z
      .object({
        rule: rule.optional(),
        kind: z.literal('pedal').describe('One pedal that no output can feed.'),
        pedals: pedals('The id of that pedal.'),
        message,
        refusals: z.array(refusal).describe('The nearest misses, nearest first.'),
      })
      .describe('A pedal that cannot be fed at all.'),
    z
      .object({
        kind: z.literal('together').describe('Pedals that cannot be fed all at once.'),
        pedals: pedals('The ids of those pedals.'),
        message,
        smallest: z.boolean().describe('True when it is shown that no set of fewer pedals fails.'),
      })
      .describe('Pedals of which all but any one can be fed.'),
    z
      .object({
        rule,
        kind: z.literal('limit').describe('A limit of the policy that is too tight.'),
        pedals: pedals('Always empty.'),
        message,
        limit: z.enum(['budget', 'bricks', 'sockets']).describe('The limit.'),
        allowed: amountOrCount('What the policy allows.'),
        needed: amountOrCount('The least that a plan needs without this limit.'),
      })
      .describe('A limit of the policy that no plan keeps.'),
    z
      .object({
        kind: z.literal('request').describe('Of `rewire`: something that was asked for stands in the way.'),
        pedals: pedals('The ids of those that are to stay.'),
        message,
        requests: z
          .array(z.enum(['keep', 'buy never', 'budget']).describe('What was asked for.'))
          .describe('What a plan has to do without.'),
        needed: amount('The least that a plan then takes.')
          .nullable()
          .describe('The least money that a plan then takes; null when that was not asked.'),
      })
      .describe('A request without which there is a plan.'),
  ])
  .describe('Why no plan exists, or why pedals are left out.');

const gap = z
  .object({
    tier: z
      .enum(['unpowered', 'cost', 'money', 'exposed', 'bricks', 'parts', 'offPreferred', 'newCost', 'moved'])
      .describe(
        'The first measure of the aim that is still open; `cost` is money with the noise price, `newCost` with that of ' +
          'newly exposed pedals only.',
      ),
    value: amountOrCount('What the plan reaches.'),
    bound: amountOrCount('No plan does better than this.')
      .nullable()
      .describe('No plan does better than this; null when nothing is known.'),
  })
  .nullable()
  .describe('How far the plan may be from the best; null when nothing is left to prove.');

/** All that `boardfeed choose --json` and `rewire --json` print. Its JSON Schema is published: keys are added here, never changed. */
export const printedPlanSchema = planSchema
  .extend({
    aim: z.enum([...choosingAims, 'moves']).describe('What was taken to be best; `moves` is that of `rewire`.'),
    score: planSchema.shape.score
      .extend({ newlyExposed: planCount('Of `rewire`: exposed pedals that are not exposed today.').optional() })
      .describe('What the plan comes to, by each measure.'),
    moved: pedals('The ids of the pedals whose unit, output or setting differs from the present wiring.'),
    confirm: z.array(confirm).describe('What to read off a label before plugging in.'),
    cautions: z.array(z.string().describe('A sentence.')).describe('What in this very plan asks for care.'),
    reasons: z.array(reason).describe('Why no plan exists, or why pedals are left out; empty for a whole plan.'),
    gap,
    ...printedChanges,
  })
  .describe('A result of boardfeed: what to buy, and how each pedal is fed.');
