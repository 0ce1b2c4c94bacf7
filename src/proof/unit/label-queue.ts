/** What waits with a number each, the greatest taken first. */
type LabelQueue<Label> = {
  readonly put: (label: Label, number: number) => void;
  /** Null when nothing waits. */ readonly take: () => Label | null;
};

/** A binary heap: whatever stands at a place has no smaller a number than what stands at twice that place and one after it. */
export function labelQueue<Label>(): LabelQueue<Label> {
  type Entry = { readonly label: Label; readonly number: number };
  const heap: Entry[] = [];
  const numberAt = (place: number): number => heap[place]?.number ?? -Infinity;
  const rise = (entry: Entry, from: number): void => {
    let at = from;
    for (let above = (at - 1) >> 1; at > 0; above = (at - 1) >> 1) {
      const parent = heap[above];
      if (parent === undefined || parent.number >= entry.number) break;
      heap[at] = parent;
      at = above;
    }
    heap[at] = entry;
  };
  const sink = (entry: Entry): void => {
    let at = 0;
    for (;;) {
      const left = 2 * at + 1;
      const below = numberAt(left + 1) > numberAt(left) ? left + 1 : left;
      const child = heap[below];
      if (child === undefined || child.number <= entry.number) break;
      heap[at] = child;
      at = below;
    }
    heap[at] = entry;
  };
  return {
    put: (label, number) => {
      rise({ label, number }, heap.length);
    },
    take: () => {
      const first = heap[0];
      const last = heap.pop();
      if (first === undefined || last === undefined) return null;
      if (heap.length > 0) sink(last);
      return first.label;
    },
  };
}
