import { polarities, type Polarity } from '../domain/pedal.js';
import type { Feed } from '../domain/plan.js';
import type { PartId } from '../domain/quantities.js';
import type { Line } from './line.js';

/** A line as it is plugged once the pedal's label has been read; null where there is nothing to read. */
export type ReadLine = { readonly line: Line; readonly reading: Polarity | null };

/** A line whose pedal may have either polarity has to be right both ways, each through its own leads. */
export function asRead(line: Line): readonly ReadLine[] {
  if (line.pedal.polarity !== 'unknown') return [{ line, reading: null }];
  return polarities.map((reading) => {
    const adapters = line.feed.readings?.[reading] ?? line.feed.adapters;
    const pedal = { ...line.pedal, polarity: reading };
    return { line: { ...line, pedal, feed: { ...line.feed, polarity: reading, adapters } }, reading };
  });
}

/** "should its label say centre-positive: …". */
export const ifRead = (reading: Polarity | null, message: string): string =>
  reading === null ? message : `should the label say ${reading}: ${message}`;

/** Why what a feed says of the ways to read a label cannot be; null when it is well formed. */
export function misread(feed: Feed, mayBeEither: boolean): string | null {
  const { readings } = feed;
  if (!mayBeEither)
    return readings === undefined ? null : 'it names leads for either polarity of a pedal whose polarity is known';
  if (readings === undefined) return 'its polarity is not known, and it names no leads for either';
  const needed = new Map<PartId, number>();
  for (const reading of polarities)
    for (const [part, count] of countsOf(readings[reading])) needed.set(part, Math.max(count, needed.get(part) ?? 0));
  const listed = countsOf(feed.adapters);
  const agree = listed.size === needed.size && [...needed].every(([part, count]) => listed.get(part) === count);
  return agree ? null : 'its leads are not those that its two readings need';
}

function countsOf(parts: readonly PartId[]): ReadonlyMap<PartId, number> {
  const counts = new Map<PartId, number>();
  for (const part of parts) counts.set(part, (counts.get(part) ?? 0) + 1);
  return counts;
}
