import * as z from 'zod';

import { currencyCode, mostParts, mostSupplies, name, wordings } from './schema-fields.js';
import { batterySchema } from './schema-battery.js';
import { partSchema } from './schema-part.js';
import { supplyAssumptionsSchema, supplySchema } from './schema-supply.js';

/** A catalogue file: what can be bought. */
export const catalogueSchema = z
  .strictObject({
    catalogue: name('What the catalogue is called.'),
    currency: currencyCode,
    assume: supplyAssumptionsSchema.optional(),
    supplies: z
      .array(supplySchema)
      .max(mostSupplies)
      .describe('The supplies for sale; an empty list where only leads are sold.')
      .register(wordings, { allowed: `a list of up to ${mostSupplies} supplies`, unit: null }),
    parts: z
      .array(partSchema)
      .max(mostParts)
      .describe('The leads and adapters for sale.')
      .register(wordings, { allowed: `a list of up to ${mostParts} parts`, unit: null })
      .optional(),
    batteries: z
      .array(batterySchema)
      .max(mostParts)
      .describe('The batteries for sale.')
      .register(wordings, { allowed: `a list of up to ${mostParts} batteries`, unit: null })
      .optional(),
  })
  .describe('What can be bought.')
  .register(wordings, { allowed: 'a map with catalogue, currency, supplies …', unit: null });

export type RawCatalogue = z.output<typeof catalogueSchema>;
