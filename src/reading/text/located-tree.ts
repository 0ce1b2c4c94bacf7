import type { Finding, Path } from '../../domain/finding.js';

/** A value of a YAML file and where it stands. Offsets are UTF-16 units from the start of the text. */
export type LocatedNode = (LocatedScalar | LocatedList | LocatedMap) & {
  /** True when an alias stands here for a value that is written elsewhere. */
  readonly isAlias?: boolean;
};

export type LocatedScalar = {
  readonly kind: 'scalar';
  readonly offset: number;
  readonly value: string | number | boolean | null;
  /** As it stands in the file, without quotes. */
  readonly written: string;
};

export type LocatedList = { readonly kind: 'list'; readonly offset: number; readonly items: readonly LocatedNode[] };

export type LocatedMap = {
  readonly kind: 'map';
  readonly offset: number;
  readonly entries: ReadonlyMap<string, LocatedEntry>;
  /** Where values would stand that are left out: the empty cells of a table. */
  readonly gaps?: ReadonlyMap<string, number>;
};

export type LocatedEntry = { readonly keyOffset: number; readonly value: LocatedNode };

/**
 * What maps inherit: nothing that a key could be mistaken for, and no number. A schema's check of a length compares whatever
 * stands under a key called `length`, even where the map itself is refused; an object without any conversion would throw.
 */
const bareMap: object = Object.freeze(
  Object.create(null, { [Symbol.toPrimitive]: { value: (): number => NaN } }) as object,
);

/**
 * What schemas are applied to. A number that is not written as a plain decimal becomes NaN, which no schema accepts; keys
 * like `constructor` are ordinary.
 */
export function plainData(node: LocatedNode): unknown {
  switch (node.kind) {
    case 'scalar':
      return typeof node.value === 'number' && !isPlainDecimal(node) ? NaN : node.value;
    case 'list':
      return node.items.map(plainData);
    case 'map': {
      const data = Object.create(bareMap) as Record<string, unknown>;
      for (const [key, { value }] of node.entries) data[key] = plainData(value);
      return data;
    }
  }
}

/** Whether a number is written with digits and a decimal point only, and is exactly what is written. */
export function isPlainDecimal({ value, written }: LocatedScalar): boolean {
  if (!/^-?(?:0|[1-9]\d*)(?:\.\d+)?$/.test(written)) return false;
  const shortest = written.includes('.') ? written.replace(/\.?0+$/, '') : written;
  return String(value) === shortest;
}

/** The node at a path, or null when there is none. */
export function nodeAt(root: LocatedNode, path: Path): LocatedNode | null {
  let node: LocatedNode | undefined = root;
  for (const step of path) node = node === undefined ? undefined : childOf(node, step);
  return node ?? null;
}

/** Where to point for a path; when there is nothing at it, at the innermost thing around it. */
export function offsetAt(root: LocatedNode, path: Path, point: Finding['point']): number {
  let node = root;
  for (const [index, step] of path.entries()) {
    const child = childOf(node, step);
    if (child === undefined) return gapAt(node, step) ?? node.offset;
    if (point === 'alias' && child.isAlias === true) return child.offset;
    if (point === 'key' && index === path.length - 1) return keyOffsetOf(node, step) ?? child.offset;
    node = child;
  }
  return node.offset;
}

function childOf(node: LocatedNode, step: string | number): LocatedNode | undefined {
  if (node.kind === 'list') return typeof step === 'number' ? node.items[step] : undefined;
  return node.kind === 'map' ? node.entries.get(String(step))?.value : undefined;
}

const gapAt = (node: LocatedNode, step: string | number): number | undefined =>
  node.kind === 'map' ? node.gaps?.get(String(step)) : undefined;

const keyOffsetOf = (node: LocatedNode, step: string | number): number | undefined =>
  node.kind === 'map' ? node.entries.get(String(step))?.keyOffset : undefined;

/** Data that stands in no file, as if it all stood at its beginning. */
function locatedData(data: unknown): LocatedNode {
  if (Array.isArray(data)) return { kind: 'list', offset: 0, items: data.map(locatedData) };
  if (typeof data === 'object' && data !== null) return { kind: 'map', offset: 0, entries: locatedEntries(data) };
  const isKnown = typeof data === 'string' || typeof data === 'number' || typeof data === 'boolean';
  return { kind: 'scalar', offset: 0, value: isKnown ? data : null, written: isKnown ? String(data) : '' };
}

export const locatedEntries = (data: object): ReadonlyMap<string, LocatedEntry> =>
  new Map(Object.entries(data).map(([key, value]) => [key, { keyOffset: 0, value: locatedData(value) }] as const));
