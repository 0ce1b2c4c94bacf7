import * as z from 'zod/mini';

import { currencyCode, listOf, map, mostParts, mostSupplies, name } from './schema-fields.js';
import { batterySchema } from './schema-battery.js';
import { partSchema } from './schema-part.js';
import { supplyAssumptionsSchema, supplySchema } from './schema-supply.js';

/** A catalogue file: what can be bought. */
export const catalogueSchema = map('What can be bought.', 'a map with catalogue, currency, supplies …', {
  catalogue: name('What the catalogue is called.'),
  currency: currencyCode,
  assume: z.optional(supplyAssumptionsSchema),
  supplies: listOf(
    supplySchema,
    mostSupplies,
    'The supplies for sale; an empty list where only leads are sold.',
    `a list of up to ${mostSupplies} supplies`,
  ),
  parts: z.optional(
    listOf(partSchema, mostParts, 'The leads and adapters for sale.', `a list of up to ${mostParts} parts`),
  ),
  batteries: z.optional(
    listOf(batterySchema, mostParts, 'The batteries for sale.', `a list of up to ${mostParts} batteries`),
  ),
});

export type RawCatalogue = z.output<typeof catalogueSchema>;
