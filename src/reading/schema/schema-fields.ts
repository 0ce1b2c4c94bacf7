import * as z from 'zod/mini';

import { knownConnectors } from '../../domain/connectors.js';
import { scaledDecimal } from '../../domain/quantities.js';
import { described } from './described.js';

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

/** The schema itself, which is new, with what a JSON Schema says of it, how a message says what it may hold, and the unit of its number. */
export function worded<Schema extends z.ZodMiniType>(
  schema: Schema,
  description: string,
  allowed: string,
  unit: NumberUnit | null = null,
): Schema {
  wordings.add(schema, { allowed, unit });
  return described(schema, description);
}

/** A map of these keys and no others. */
export const map = <Fields extends z.core.$ZodShape>(description: string, allowed: string, fields: Fields) =>
  worded(z.strictObject(fields), description, allowed);

/** One of a few words. */
export const words = <const Words extends readonly string[]>(words: Words, description: string, allowed: string) =>
  worded(z.enum(words), description, allowed);

/** A list of up to so many. */
export const listOf = <Item extends z.ZodMiniType>(item: Item, most: number, description: string, allowed: string) =>
  worded(z.array(item).check(z.maxLength(most)), description, allowed);

const threeDecimals = (value: number): boolean => scaledDecimal(value, 3) !== null;
const decimalsCheck = { params: { check: 'decimals' } };

function positive(noun: string, largest: number, unit: NumberUnit, description: string) {
  return worded(
    z.number().check(z.gt(0), z.maximum(largest), z.refine(threeDecimals, decimalsCheck)),
    description,
    `a number of ${noun} above 0 and up to ${largest}, with at most three decimals`,
    unit,
  );
}

/** Volts above 0, with at most three decimals. */
export const volts = (description: string) => positive('volts', largestVolts, 'V', description);
/** Milliamps above 0, with at most three decimals. */
export const milliamps = (description: string) => positive('milliamps', largestMilliamps, 'mA', description);
/** Hours above 0, with at most three decimals. */
export const hours = (description: string) => positive('hours', largestHours, 'h', description);
/** Watts above 0, with at most three decimals. */
export const watts = (description: string) => positive('watts', largestWatts, 'W', description);
/** Milliamp-hours above 0, with at most three decimals. */
export const milliampHours = (description: string) => positive('milliamp-hours', largestMilliamps, 'mAh', description);
/** Watt-hours above 0, with at most three decimals. */
export const wattHours = (description: string) => positive('watt-hours', largestWatts, 'Wh', description);

/** A factor of at least 1, with at most three decimals. */
export const factor = (description: string) =>
  worded(
    z.number().check(z.minimum(1), z.maximum(largestFactor), z.refine(threeDecimals, decimalsCheck)),
    description,
    `a factor from 1 to ${largestFactor}, with at most three decimals`,
    'factor',
  );

/** An amount of at least 0; how many decimals it may have depends on the currency and is checked apart. */
export const money = (description: string) =>
  worded(z.number().check(z.minimum(0)), description, "an amount of at least 0 in the file's currency", 'money');

/** A whole number between two bounds, both included. */
export const count = (lowest: number, highest: number, description: string) =>
  worded(
    z.int().check(z.minimum(lowest), z.maximum(highest)),
    description,
    `a whole number from ${lowest} to ${highest}`,
    'count',
  );

const text = () => z.string().check(z.minLength(1), z.maxLength(longestText));

/** A name that is shown as it is; any characters. */
export const name = (description: string) => worded(text(), description, `text of 1 to ${longestText} characters`);

/** Letters and digits of any script, dots, hyphens and underscores. */
export const idPattern = /^[\p{L}\p{M}\p{N}._-]+$/u;

export const id = (description: string) =>
  worded(text().check(z.regex(idPattern)), description, 'letters, digits, ".", "_" and "-", without spaces');

/** What stands for a thing elsewhere: its id, or its name where no other has it. `what` begins a sentence. */
export const reference = (what: string) =>
  worded(
    text(),
    `${what}, by id, or by name where only one thing has that name.`,
    'an id, or a name that only one thing has',
  );

/** A connector's name: free text that only needs to match. */
export const connector = (description: string) =>
  text()
    .register(z.globalRegistry, { description, examples: [...knownConnectors] })
    .register(wordings, { allowed: 'the name of a connector, such as barrel-2.1', unit: null });

/** The type of a battery: free text that only needs to match. */
export const batteryType = (description: string) =>
  text()
    .register(z.globalRegistry, { description, examples: ['9V-block', 'AA', 'AAA'] })
    .register(wordings, { allowed: 'a type of battery, such as 9V-block or AA', unit: null });

export const flag = (description: string) => worded(z.boolean(), description, 'true or false');

/** Two volts that bound a range, both included. */
export const voltsRange = (description: string) =>
  map(description, 'a map {from: …, to: …} of volts', {
    from: volts('The lowest volts, included.'),
    to: volts('The highest volts, included.'),
  });

/** The mains volts that a supply accepts. */
export const mains = () =>
  worded(
    z.union([volts('The only mains volts it accepts.'), voltsRange('The mains volts it accepts, both ends included.')]),
    'The mains volts it accepts: one number or a range.',
    'a number of volts, or a range {from: 100, to: 240}',
    'V',
  );

export const power = words(['DC', 'AC'], 'Direct or alternating current.', 'DC or AC');

export const polarity = words(
  ['centre-negative', 'centre-positive'],
  'What stands at the centre of a barrel plug or the tip of a jack plug. Only for DC: AC has no polarity.',
  'centre-negative or centre-positive',
);

export const outputPolarity = words(
  ['centre-negative', 'centre-positive', 'either'],
  'What stands at the centre of the plug; `either` for outputs with a polarity switch. Only for DC.',
  'centre-negative, centre-positive or either',
);

export const ground = words(
  ['negative', 'positive'],
  "The polarity of the pedal's chassis and audio ground; not the same thing as the plug's polarity.",
  'negative or positive',
);

/** The ISO 4217 code; whether it exists is checked apart. */
export const currencyCode = z
  .string()
  .register(z.globalRegistry, {
    description: 'The ISO 4217 code of the currency of all money in the file, such as EUR.',
    // For the JSON Schema alone; here the codes are looked up, so that near ones can be suggested.
    pattern: '^[A-Z]{3}$',
    examples: ['EUR', 'USD', 'GBP'],
  })
  .register(wordings, { allowed: 'an ISO 4217 code in capitals, such as EUR', unit: null });
