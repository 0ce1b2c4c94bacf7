import type { Report } from '../../domain/finding.js';
import { quoted } from '../../domain/shown-text.js';
import type { RawWiredFeed } from '../schema/schema-board.js';
import type { Entry } from './entry.js';

/** A tail is one of a chain lead that has a number, and feeds one pedal. */
export function reportTails(entries: readonly Entry<RawWiredFeed>[], report: Report): void {
  const seen = new Map<string, Entry<RawWiredFeed>>();
  for (const entry of entries) {
    const { tail, chain, lead } = entry.fields;
    if (tail === undefined) continue;
    if (chain === undefined || lead === undefined) {
      report(entry.spotOf('tail'), () => ({
        message: `found ${quoted(tail)} without ${chain === undefined ? '`chain`' : '`lead`'}; a tail is one of a chain lead with a number.`,
        remedy: 'Remove `tail`, or say which chain lead it is of, and its number.',
      }));
      continue;
    }
    const earlier = seen.get(`${lead}${tail}`);
    seen.set(`${lead}${tail}`, earlier ?? entry);
    if (earlier === undefined) continue;
    report(entry.spotOf('tail'), (lineOf) => ({
      message: `found ${quoted(tail)}, which ${lineOf(earlier.spotOf('tail'))} gives to another pedal on lead ${lead}.`,
      remedy: 'Write the letter that stands on the tail, or remove it: it then gets one that is free.',
    }));
  }
}
