import { FrameRoom, type ContentItem, type FrameJob } from './content.js';

/** Some items that a unit can carry together, and what they are worth. */
export type Draft = { readonly items: readonly ContentItem[]; readonly value: number };

/** Takes items in their order as long as they fit, then the most valuable pedals by themselves. */
export function greedilyFilled(job: FrameJob, items: readonly ContentItem[]): Draft {
  const room = new FrameRoom(job);
  const taken: ContentItem[] = [];
  for (const item of [...items, ...job.solos.toSorted((a, b) => b.value - a.value)]) {
    if (item.value <= 0) continue;
    while (room.fits(item)) {
      room.take(item);
      taken.push(item);
    }
  }
  return { items: taken, value: taken.reduce((sum, { value }) => sum + value, 0) };
}
