import type { LocatedEntry, LocatedNode } from '../text/located-tree.js';

/** The same values at other places. */
export function shifted(node: LocatedNode, place: (offset: number) => number): LocatedNode {
  const offset = place(node.offset);
  switch (node.kind) {
    case 'scalar':
      return { ...node, offset };
    case 'list':
      return { ...node, offset, items: node.items.map((item) => shifted(item, place)) };
    case 'map': {
      const entries = [...node.entries].map(
        ([key, { keyOffset, value }]) => [key, { keyOffset: place(keyOffset), value: shifted(value, place) }] as const,
      );
      return { ...node, offset, entries: new Map<string, LocatedEntry>(entries) };
    }
  }
}
