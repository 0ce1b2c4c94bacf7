import type { Condition } from './program.js';
import type { Tags } from './tags.js';

/** A node of the search as a proof needs it: tags that prove a bound, and the conditions that split what is left. */
export type ProofNode = {
  tags: Tags | null;
  /** What the tags prove, in subunits. */
  bound: number;
  branch: readonly { readonly condition: Condition; readonly node: ProofNode }[] | null;
};

/** The tree without what hangs below nodes whose own tags prove enough. */
export function finishedTree(node: ProofNode, enough: number): ProofNode {
  if (node.bound > enough || node.branch === null) return { ...node, branch: null };
  return { ...node, branch: node.branch.map((child) => ({ ...child, node: finishedTree(child.node, enough) })) };
}

/** How many cases a proof tells apart: the leaves of its tree. */
export const casesOf = ({ branch }: ProofNode): number =>
  branch === null ? 1 : branch.reduce((sum, { node }) => sum + casesOf(node), 0);
