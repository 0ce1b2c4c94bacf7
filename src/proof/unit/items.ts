import type { AlikePedals } from './pedal-class.js';

/** Pedals with the same needs that are worth the same. */
export type CaseItem = {
  /** Their class. */
  readonly pedal: number;
  readonly count: number;
  /** What one of them is worth. */
  readonly tag: number;
};

/**
 * The pedals as items; `tags` are in the order of the board. Of a class of which a unit holds no more than so many (`most`,
 * by class; all when left out) those are left that are worth the most. Equal tags give equal items in the same order.
 */
export function itemsOf(
  classes: readonly AlikePedals[],
  tags: readonly number[],
  most: readonly number[] = [],
): readonly CaseItem[] {
  return classes.flatMap(({ members }, pedal) => {
    const all = members.map((member) => tags[member] ?? 0);
    const limit = most[pedal] ?? all.length;
    const held = limit < all.length ? all.sort((one, two) => two - one).slice(0, limit) : all;
    const counts = new Map<number, number>();
    for (const tag of held) counts.set(tag, (counts.get(tag) ?? 0) + 1);
    return [...counts].map(([tag, count]) => ({ pedal, count, tag }));
  });
}

/** The same for items that differ in their tags alone. */
export const partitionKey = (items: readonly CaseItem[]): string =>
  items.map(({ pedal, count }) => `${pedal}×${count}`).join();
