import {
  isAlias,
  isMap,
  isScalar,
  isSeq,
  type Alias,
  type ParsedNode,
  type Scalar,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml';

import type { Path, Words } from '../../domain/finding.js';
import { quoted } from '../../domain/shown-text.js';
import type { LocatedEntry, LocatedMap, LocatedNode } from './located-tree.js';

/** The most values that aliases may stand for, all together: a few nested aliases can stand for billions. */
const mostAliased = 50_000;

/** Something wrong with the YAML that its parser lets pass. */
export type TreeFault = {
  readonly path: Path;
  readonly offset: number;
  /** `lineOf` gives the line of an offset. */
  readonly words: (lineOf: (offset: number) => number) => Words;
};

type BuiltTree = {
  readonly root: LocatedNode;
  readonly faults: readonly TreeFault[];
  /** The paths of values that could not be had, so that null stands in their place. */
  readonly lost: readonly Path[];
};

/**
 * The values of a document, with aliases replaced by what they stand for. Of a repeated key the first value counts. An
 * alias that cannot be replaced is null, and so is its anchor's recursion.
 */
export function buildTree(contents: ParsedNode): BuiltTree {
  const building: Building = { faults: [], lost: [], anchors: new Map(), open: new Set(), aliased: 0 };
  const { node } = build(contents, [], contents.range[0], building);
  return { root: node, faults: building.faults, lost: building.lost };
}

type Sized = { readonly node: LocatedNode; /** How many values it holds, with itself. */ readonly size: number };

type Building = {
  readonly faults: TreeFault[];
  readonly lost: Path[];
  readonly anchors: Map<string, Sized>;
  /** The anchors of the collections around the node that is being built. */
  readonly open: Set<string>;
  aliased: number;
};

function build(node: ParsedNode | null, path: Path, fallbackOffset: number, building: Building): Sized {
  if (isAlias(node)) return buildAlias(node, path, building);
  const anchor = node?.anchor;
  if (anchor !== undefined) {
    building.anchors.delete(anchor);
    building.open.add(anchor);
  }
  const sized = buildValue(node, path, fallbackOffset, building);
  if (anchor !== undefined) {
    building.open.delete(anchor);
    building.anchors.set(anchor, sized);
  }
  return sized;
}

function buildValue(
  node: Exclude<ParsedNode, Alias.Parsed> | null,
  path: Path,
  fallbackOffset: number,
  building: Building,
): Sized {
  if (isMap(node)) return buildMap(node, path, building);
  if (isSeq(node)) return buildList(node, path, building);
  return { node: scalarOf(node, fallbackOffset), size: 1 };
}

function scalarOf(node: Scalar.Parsed | null, fallbackOffset: number): LocatedNode {
  const value: unknown = node?.value ?? null;
  const written = node?.source ?? '';
  // An empty value stands nowhere: what it belongs to is the better place.
  const offset = node === null || (value === null && written === '') ? fallbackOffset : node.range[0];
  const isKnown = typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean';
  return { kind: 'scalar', offset, value: isKnown ? value : null, written };
}

function buildList(list: YAMLSeq.Parsed, path: Path, building: Building): Sized {
  let size = 1;
  const items = list.items.map((item, index) => {
    const built = build(item, [...path, index], item.range[0], building);
    size += built.size;
    return built.node;
  });
  return { node: { kind: 'list', offset: list.range[0], items }, size };
}

function buildMap(map: YAMLMap.Parsed, path: Path, building: Building): Sized {
  const entries = new Map<string, LocatedEntry>();
  const located: LocatedMap = { kind: 'map', offset: map.range[0], entries };
  let size = 1;
  for (const pair of map.items) {
    const keyOffset = pair.key.range[0];
    const key = keyText(pair.key);
    if (key === null || key === '__proto__') {
      const at = key === null ? path : [...path, key];
      building.faults.push({ path: at, offset: keyOffset, words: () => badKey(key) });
      continue;
    }
    const earlier = entries.get(key);
    if (earlier !== undefined) {
      const words: TreeFault['words'] = (lineOf) => repeatedKey(lineOf(earlier.keyOffset));
      building.faults.push({ path: [...path, key], offset: keyOffset, words });
      continue;
    }
    const built = build(pair.value, [...path, key], keyOffset, building);
    size += built.size;
    entries.set(key, { keyOffset, value: built.node });
  }
  return { node: located, size };
}

function keyText(key: ParsedNode): string | null {
  if (!isScalar(key) || key.value === null) return null;
  return typeof key.value === 'string' ? key.value : key.source;
}

function buildAlias(alias: Alias.Parsed, path: Path, building: Building): Sized {
  const offset = alias.range[0];
  const anchored = building.anchors.get(alias.source);
  const wasWithinLimit = building.aliased <= mostAliased;
  building.aliased += anchored?.size ?? 0;
  const problem = problemOfAlias(alias.source, anchored !== undefined, building);
  // What is wrong inside stands at the anchor; what is wrong with the whole, such as a repeated id, stands at the alias.
  if (anchored !== undefined && problem === null)
    return { node: { ...anchored.node, offset, isAlias: true }, size: anchored.size };
  const message = `found the alias ${quoted(alias.source)}, ${problem ?? ''}.`;
  // Once the limit is passed every further alias is beyond it: that is told once.
  if (wasWithinLimit) {
    building.faults.push({ path, offset, words: () => ({ message, remedy: 'Write the value out.' }) });
  }
  building.lost.push(path);
  return { node: { kind: 'scalar', offset, value: null, written: '' }, size: 1 };
}

function problemOfAlias(name: string, isAnchored: boolean, { open, aliased }: Building): string | null {
  if (open.has(name)) return 'which stands inside what it stands for';
  if (!isAnchored) return 'but no anchor of that name comes before it';
  return aliased > mostAliased ? `with which the aliases stand for more than ${mostAliased} values` : null;
}

function badKey(key: string | null): Words {
  if (key !== null) return { message: 'unknown key.', remedy: 'Remove it.' };
  return { message: 'found a key that is not plain text.', remedy: 'Write each key as a word before its colon.' };
}

const repeatedKey = (line: number): Words => ({
  message: `stands here a second time; line ${line} has the first, and each key may stand once.`,
  remedy: 'Keep the one that is right.',
});
