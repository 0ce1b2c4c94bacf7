import { z } from 'zod';

import { choosingAims } from '../domain/aim.js';

const id = z.string().min(1).max(200);
const count = z.int().min(0);
const amount = z.string().regex(/^\d{1,15}(?:\.\d{1,4})?$/);
const volts = z.number().gt(0);
const purchase = z.object({ id, units: z.int().min(1), price: amount });

const feed = z.object({
  pedal: id,
  supply: id,
  unit: z.int().min(1),
  outputs: z.array(z.int().min(1)).min(1).max(2),
  volts,
  polarity: z.enum(['centre-negative', 'centre-positive']).nullable(),
  join: z.object({ mode: z.enum(['series', 'parallel']), part: id }).nullable(),
  chain: id.nullable(),
  parts: z.array(id),
  settings: z.array(volts).min(1).max(2),
});

/** A result as `boardfeed choose --json` prints it, as far as it is read back. Later versions may add keys. */
export const planSchema = z.object({
  format: z.literal('boardfeed/plan/1'),
  board: z.string(),
  aim: z.enum(choosingAims),
  status: z.enum(['proven', 'best found', 'impossible']),
  currency: z.string(),
  score: z.object({
    unpowered: count,
    money: amount,
    exposed: count,
    bricks: count,
    parts: count,
    offPreferred: count,
    moved: count.nullable(),
  }),
  buy: z.object({ supplies: z.array(purchase), parts: z.array(purchase) }),
  feeds: z.array(feed),
  unpowered: z.array(id),
  exposed: z.array(id),
});

export type RawPlan = z.output<typeof planSchema>;
