import type { AlikePedals } from './pedal-class.js';

/** Pedals with the same needs that are worth the same. */
export type CaseItem = {
  /** Their class. */
  readonly pedal: number;
  readonly count: number;
  /** What one of them is worth. */
  readonly tag: number;
};

/** The pedals as items; `tags` are in the order of the board. Equal tags give equal items in the same order. */
export function itemsOf(classes: readonly AlikePedals[], tags: readonly number[]): readonly CaseItem[] {
  return classes.flatMap(({ members }, pedal) => {
    const counts = new Map<number, number>();
    for (const member of members) {
      const tag = tags[member] ?? 0;
      counts.set(tag, (counts.get(tag) ?? 0) + 1);
    }
    return [...counts].map(([tag, count]) => ({ pedal, count, tag }));
  });
}

/** The same for items that differ in their tags alone. */
export const partitionKey = (items: readonly CaseItem[]): string =>
  items.map(({ pedal, count }) => `${pedal}×${count}`).join();
