import type { PageDocument } from './page-document.js';

/** The documents that there have been, the latest last, and those that were taken back, the next one first. */
export type History = {
  readonly past: readonly PageDocument[];
  readonly present: PageDocument;
  readonly future: readonly PageDocument[];
};

export const begunWith = (present: PageDocument): History => ({ past: [], present, future: [] });

/** What is no step to take back: what is looked at, what is ticked, and what stands on a line. */
const passing: ReadonlySet<string> = new Set<keyof PageDocument>([
  ...(['line', 'ownedLine'] as const),
  ...(['chosen', 'beside', 'progress'] as const),
]);

/** Keys on a line are no steps to take back one by one: what is typed is one with what it is typed beside. */
export function changedTo({ past, present, future }: History, next: PageDocument): History {
  const isTyping = (Object.keys(next) as (keyof PageDocument)[]).every(
    (key) => passing.has(key) || next[key] === present[key],
  );
  return isTyping ? { past, present: next, future } : { past: [...past, present], present: next, future: [] };
}

/** The document before; the same where there is none. */
export function undone({ past, present, future }: History): History {
  const before = past.at(-1);
  return before === undefined
    ? { past, present, future }
    : { past: past.slice(0, -1), present: before, future: [present, ...future] };
}

/** What was taken back last, back again; the same where there is nothing. */
export function redone({ past, present, future }: History): History {
  const [next, ...later] = future;
  return next === undefined ? { past, present, future } : { past: [...past, present], present: next, future: later };
}
