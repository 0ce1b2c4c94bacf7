import * as z from 'zod';

import { knownConnectors } from '../../domain/connectors.js';
import { scaledDecimal } from '../../domain/quantities.js';

/** What a plain number stands for. Money is in the file's currency, in major units. */
export type NumberUnit = 'V' | 'mA' | 'W' | 'Wh' | 'mAh' | 'h' | 'factor' | 'money' | 'count';

/** How a message describes what a field may hold; `unit` is that of the plain number it accepts, if it accepts one. */
export type Wording = { readonly allowed: string; readonly unit: NumberUnit | null };

/** Kept beside the schemas, not in them, so that a JSON Schema made from them holds nothing but descriptions. */
export const wordings = z.registry<Wording>();

export const largestVolts = 1_000;
const largestMilliamps = 100_000;
const largestWatts = 100_000;
const largestFactor = 100;
export const largestHours = 1_000;
export const largestCount = 10_000;
export const mostOutputsOfBank = 100;
export const mostPedals = 2_000;
export const mostSupplies = 5_000;
export const mostParts = 5_000;
/** Of volts, settings, banks and adapters in one list. */
export const mostInShortList = 100;
/** Of a name, an id or a connector, in UTF-16 units. */
export const longestText = 200;

const threeDecimals = (value: number): boolean => scaledDecimal(value, 3) !== null;
const decimalsCheck = { params: { check: 'decimals' } };

function positive(noun: string, largest: number, unit: NumberUnit, description: string) {
  return z
    .number()
    .gt(0)
    .max(largest)
    .refine(threeDecimals, decimalsCheck)
    .describe(description)
    .register(wordings, {
      allowed: `a number of ${noun} above 0 and up to ${largest}, with at most three decimals`,
      unit,
    });
}

/** Volts above 0, with at most three decimals. */
export const volts = (description: string) => positive('volts', largestVolts, 'V', description);
/** Milliamps above 0, with at most three decimals. */
export const milliamps = (description: string) => positive('milliamps', largestMilliamps, 'mA', description);
/** Watts above 0, with at most three decimals. */
export const watts = (description: string) => positive('watts', largestWatts, 'W', description);

/** A factor of at least 1, with at most three decimals. */
export const factor = (description: string) =>
  z
    .number()
    .min(1)
    .max(largestFactor)
    .refine(threeDecimals, decimalsCheck)
    .describe(description)
    .register(wordings, {
      allowed: `a factor from 1 to ${largestFactor}, with at most three decimals`,
      unit: 'factor',
    });

/** An amount of at least 0; how many decimals it may have depends on the currency and is checked apart. */
export const money = (description: string) =>
  z
    .number()
    .min(0)
    .describe(description)
    .register(wordings, { allowed: "an amount of at least 0 in the file's currency", unit: 'money' });

/** A whole number between two bounds, both included. */
export const count = (lowest: number, highest: number, description: string) =>
  z
    .int()
    .min(lowest)
    .max(highest)
    .describe(description)
    .register(wordings, { allowed: `a whole number from ${lowest} to ${highest}`, unit: 'count' });

/** A name that is shown as it is; any characters. */
export const name = (description: string) =>
  z
    .string()
    .min(1)
    .max(longestText)
    .describe(description)
    .register(wordings, { allowed: `text of 1 to ${longestText} characters`, unit: null });

/** Letters and digits of any script, dots, hyphens and underscores. */
export const idPattern = /^[\p{L}\p{M}\p{N}._-]+$/u;

export const id = (description: string) =>
  z
    .string()
    .min(1)
    .max(longestText)
    .regex(idPattern)
    .describe(description)
    .register(wordings, { allowed: 'letters, digits, ".", "_" and "-", without spaces', unit: null });

/** What stands for a thing elsewhere: its id, or its name where no other has it. `what` begins a sentence. */
export const reference = (what: string) =>
  z
    .string()
    .min(1)
    .max(longestText)
    .describe(`${what}, by id, or by name where only one thing has that name.`)
    .register(wordings, { allowed: 'an id, or a name that only one thing has', unit: null });

/** A connector's name: free text that only needs to match. */
export const connector = (description: string) =>
  z
    .string()
    .min(1)
    .max(longestText)
    .meta({ description, examples: [...knownConnectors] })
    .register(wordings, { allowed: 'the name of a connector, such as barrel-2.1', unit: null });

/** The type of a battery: free text that only needs to match. */
export const batteryType = (description: string) =>
  z
    .string()
    .min(1)
    .max(longestText)
    .meta({ description, examples: ['9V-block', 'AA', 'AAA'] })
    .register(wordings, { allowed: 'a type of battery, such as 9V-block or AA', unit: null });

/** Milliamp-hours above 0, with at most three decimals. */
export const milliampHours = (description: string) => positive('milliamp-hours', largestMilliamps, 'mAh', description);

export const flag = (description: string) =>
  z.boolean().describe(description).register(wordings, { allowed: 'true or false', unit: null });

/** Two volts that bound a range, both included. */
export const voltsRange = (description: string) =>
  z
    .strictObject({ from: volts('The lowest volts, included.'), to: volts('The highest volts, included.') })
    .describe(description)
    .register(wordings, { allowed: 'a map {from: …, to: …} of volts', unit: null });

/** Hours above 0, with at most three decimals. */
export const hours = (description: string) =>
  z
    .number()
    .gt(0)
    .max(largestHours)
    .refine(threeDecimals, decimalsCheck)
    .describe(description)
    .register(wordings, {
      allowed: `a number of hours above 0 and up to ${largestHours}, with at most three decimals`,
      unit: 'h',
    });

/** Watt-hours above 0, with at most three decimals. */
export const wattHours = (description: string) => positive('watt-hours', largestWatts, 'Wh', description);

/** The mains volts that a supply accepts. */
export const mains = () =>
  z
    .union([volts('The only mains volts it accepts.'), voltsRange('The mains volts it accepts, both ends included.')])
    .describe('The mains volts it accepts: one number or a range.')
    .register(wordings, { allowed: 'a number of volts, or a range {from: 100, to: 240}', unit: 'V' });

export const power = z
  .enum(['DC', 'AC'])
  .describe('Direct or alternating current.')
  .register(wordings, { allowed: 'DC or AC', unit: null });

export const polarity = z
  .enum(['centre-negative', 'centre-positive'])
  .describe('What stands at the centre of a barrel plug or the tip of a jack plug. Only for DC: AC has no polarity.')
  .register(wordings, { allowed: 'centre-negative or centre-positive', unit: null });

export const outputPolarity = z
  .enum(['centre-negative', 'centre-positive', 'either'])
  .describe('What stands at the centre of the plug; `either` for outputs with a polarity switch. Only for DC.')
  .register(wordings, { allowed: 'centre-negative, centre-positive or either', unit: null });

export const ground = z
  .enum(['negative', 'positive'])
  .describe("The polarity of the pedal's chassis and audio ground; not the same thing as the plug's polarity.")
  .register(wordings, { allowed: 'negative or positive', unit: null });

/** The ISO 4217 code; whether it exists is checked apart. */
export const currencyCode = z
  .string()
  .meta({
    description: 'The ISO 4217 code of the currency of all money in the file, such as EUR.',
    // For the JSON Schema alone; here the codes are looked up, so that near ones can be suggested.
    pattern: '^[A-Z]{3}$',
    examples: ['EUR', 'USD', 'GBP'],
  })
  .register(wordings, { allowed: 'an ISO 4217 code in capitals, such as EUR', unit: null });
