import { feedMillivolts, type Feed } from '../../domain/plan.js';
import { decimalOfThousandths } from '../../domain/quantities.js';
import { safeJson } from './safe-text.js';

/** A feed as an entry of a board file's `wiring`, in YAML on one line; with the number of its lead where there is one. */
export function wiringEntry(feed: Feed, lead?: number): string {
  const [output = 0, ...others] = feed.outputs;
  const fields = [
    `pedal: ${word(feed.pedal)}`,
    `supply: ${word(feed.supply)}`,
    `unit: ${feed.unit}`,
    others.length === 0 ? `output: ${output}` : `outputs: [${feed.outputs.join(', ')}]`,
    `volts: ${decimalOfThousandths(feedMillivolts(feed))}`,
    ...(feed.join === null ? [] : [`join: {mode: ${feed.join.mode}, part: ${word(feed.join.part)}}`]),
    ...(feed.chain === null ? [] : [`chain: ${word(feed.chain)}`]),
    ...(feed.adapters.length === 0 ? [] : [`parts: [${feed.adapters.map(word).join(', ')}]`]),
    ...(lead === undefined ? [] : [`lead: ${lead}`]),
  ];
  return `- {${fields.join(', ')}}`;
}

/** Words that YAML may take for something else. */
const reserved = /^(true|false|null|yes|no|on|off|y|n)$/;

/** An id as it is where it can be nothing but text, else in quotes. */
const word = (id: string): string =>
  /^[a-z][a-z0-9-]*$/.test(id) && !reserved.test(id) ? id : safeJson(JSON.stringify(id));
