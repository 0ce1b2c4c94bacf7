import type { LineCounter } from 'yaml';

import type { Path, Words } from '../../domain/finding.js';
import { buildTree, type TreeFault } from './build-tree.js';
import type { LocatedNode } from './located-tree.js';
import { parseYaml } from './yaml-document.js';

/** The values of a text and where they stand, or what makes it impossible to tell. */
export type TreeOfText =
  | {
      readonly kind: 'tree';
      readonly root: LocatedNode;
      /** What is wrong beside what a schema will find. */
      readonly faults: readonly TreeFault[];
      /** The paths of values that could not be had and were reported. */
      readonly lost: readonly Path[];
      readonly lines: LineCounter;
    }
  | { readonly kind: 'refused'; readonly offset: number; readonly words: Words; readonly lines: LineCounter };

/** The tree of a text in YAML or JSON; of an empty one it is a single null. */
export function treeOfYaml(text: string): TreeOfText {
  const parsed = parseYaml(text);
  const { lines } = parsed;
  if (parsed.kind === 'not yaml') return { kind: 'refused', offset: parsed.offset, words: parsed.words, lines };
  const { contents } = parsed.document;
  if (contents === null) return { kind: 'tree', root: nothing, faults: [], lost: [], lines };
  return { kind: 'tree', ...buildTree(contents), lines };
}

const nothing: LocatedNode = { kind: 'scalar', offset: 0, value: null, written: '' };
