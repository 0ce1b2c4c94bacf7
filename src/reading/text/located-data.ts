import type { LocatedEntry, LocatedNode } from './located-tree.js';

/** Data that stands in no file, as if it all stood at its beginning. */
function locatedData(data: unknown): LocatedNode {
  if (Array.isArray(data)) return { kind: 'list', offset: 0, items: data.map(locatedData) };
  if (typeof data === 'object' && data !== null) return { kind: 'map', offset: 0, entries: locatedEntries(data) };
  const isKnown = typeof data === 'string' || typeof data === 'number' || typeof data === 'boolean';
  return { kind: 'scalar', offset: 0, value: isKnown ? data : null, written: isKnown ? String(data) : '' };
}

export const locatedEntries = (data: object): ReadonlyMap<string, LocatedEntry> =>
  new Map(Object.entries(data).map(([key, value]) => [key, { keyOffset: 0, value: locatedData(value) }] as const));
