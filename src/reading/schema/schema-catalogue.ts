import type * as z from 'zod';

import { currencyCode, listOf, map, mostParts, mostSupplies, name } from './schema-fields.js';
import { batterySchema } from './schema-battery.js';
import { partSchema } from './schema-part.js';
import { supplyAssumptionsSchema, supplySchema } from './schema-supply.js';

/** A catalogue file: what can be bought. */
export const catalogueSchema = map('What can be bought.', 'a map with catalogue, currency, supplies …', {
  catalogue: name('What the catalogue is called.'),
  currency: currencyCode,
  assume: supplyAssumptionsSchema.optional(),
  supplies: listOf(
    supplySchema,
    mostSupplies,
    'The supplies for sale; an empty list where only leads are sold.',
    `a list of up to ${mostSupplies} supplies`,
  ),
  parts: listOf(
    partSchema,
    mostParts,
    'The leads and adapters for sale.',
    `a list of up to ${mostParts} parts`,
  ).optional(),
  batteries: listOf(
    batterySchema,
    mostParts,
    'The batteries for sale.',
    `a list of up to ${mostParts} batteries`,
  ).optional(),
});

export type RawCatalogue = z.output<typeof catalogueSchema>;
