import type { UnitRef } from '../../domain/inlet.js';
import { feedMillivolts, type Feed } from '../../domain/plan.js';
import { decimalOfThousandths, type PartId } from '../../domain/quantities.js';
import { safeJson } from './safe-text.js';

/** A feed as an entry of a board file's `wiring`, in YAML on one line; with the number of its lead and the letter of its tail where there are some; or by its own adapter. */
export function wiringEntry(
  feed: Feed,
  { lead, tail }: { readonly lead?: number | undefined; readonly tail?: string | undefined } = {},
  isOwn = false,
  battery: PartId | null = null,
): string {
  const fields = [
    ...(feed.inletOf === undefined ? [`pedal: ${word(feed.pedal)}`] : inletFields(feed.inletOf)),
    ...(battery === null ? [`supply: ${word(feed.supply)}`] : [`battery: ${word(battery)}`]),
    ...(isOwn ? [] : placeFields(feed)),
    ...(feed.join === null ? [] : [`join: {mode: ${feed.join.mode}, part: ${word(feed.join.part)}}`]),
    ...(feed.chain === null ? [] : [`chain: ${word(feed.chain)}`]),
    ...(feed.adapters.length === 0 ? [] : [`parts: [${feed.adapters.map(word).join(', ')}]`]),
    ...(lead === undefined ? [] : [`lead: ${lead}`]),
    ...(tail === undefined ? [] : [`tail: ${word(tail)}`]),
  ];
  return `- {${fields.join(', ')}}`;
}

const inletFields = ({ supply, unit }: UnitRef): readonly string[] => [`inlet: ${word(supply)}`, `inletUnit: ${unit}`];

/** Which outputs, and what they give; of the adapter that a pedal came with nobody says. */
const placeFields = (feed: Feed): readonly string[] => [
  `unit: ${feed.unit}`,
  feed.outputs.length === 1 ? `output: ${feed.outputs.join()}` : `outputs: [${feed.outputs.join(', ')}]`,
  `volts: ${decimalOfThousandths(feedMillivolts(feed))}`,
];

/** Words that YAML may take for something else. */
const reserved = /^(true|false|null|yes|no|on|off|y|n)$/;

/** An id as it is where it can be nothing but text, else in quotes. */
const word = (id: string): string =>
  /^[a-z][a-z0-9-]*$/.test(id) && !reserved.test(id) ? id : safeJson(JSON.stringify(id));
