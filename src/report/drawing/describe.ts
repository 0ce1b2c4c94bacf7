import type { FeedRow } from '../words/feed-row.js';
import type { UnitHookup } from '../words/hookup.js';

/** What the drawing of one unit shows, in sentences. */
export function unitDescription({ name, socket, unit }: UnitHookup, rows: readonly FeedRow[]): string {
  const feeds = rows
    .filter(({ feed }) => feed.supply === unit.supply.id && feed.unit === unit.unit)
    .map((row) => {
      const gets = [row.volts, ...(row.polarity === null ? [] : [row.polarity])].join(', ');
      const outputs = row.feed.outputs.length > 1 ? `outputs ${row.outputs}` : `output ${row.outputs}`;
      return `Lead ${row.mark}: ${outputs} (${row.ground}, ${row.load}) by ${row.way} to ${row.pedal}, ${gets}.`;
    });
  return [`Mains socket ${socket} feeds ${name} (${unit.owned ? 'yours' : 'to buy'}).`, ...feeds].join(' ');
}
