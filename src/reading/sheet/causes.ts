import { groupBy } from '../../domain/group-by.js';
import type { Words } from '../../domain/finding.js';
import type { Pending } from './sorted-faults.js';

/** One cause of faults: the first of them, in its words, and the others. */
export type Cause = { readonly first: Pending; readonly words: Words; readonly alike: readonly Pending[] };

/** Words are made for so many faults at the most; what comes after them is counted only. */
const mostLookedAt = 2_000;

/**
 * Faults by their causes, in the order of the first of each: those of one file that are about the same key of different
 * things, say the same but for what they quote, and are mended in the same way.
 */
export function causesOf(faults: readonly Pending[]): readonly Cause[] {
  const told = faults.slice(0, mostLookedAt).map((fault) => ({ fault, words: fault.words() }));
  return groupBy(told, ({ fault, words }) => causeOf(fault, words)).map(([{ fault, words }, ...alike]) => ({
    first: fault,
    words,
    alike: alike.map((other) => other.fault),
  }));
}

function causeOf({ sheet, path }: Pending, { message, remedy }: Words): string {
  const about = path.map((step) => (typeof step === 'number' ? '#' : step));
  const says = message.replace(/"[^"]*"/g, '""').replace(/\bline \d+/g, 'line');
  return JSON.stringify([sheet.source, about, says, remedy]);
}
