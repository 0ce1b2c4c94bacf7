import type { BranchingConstraint } from './program.js';
import type { DualPrices } from './dual-prices.js';

/**
 * A node of the search as a proof needs it: dual prices that prove a bound, and the branching constraints that split what
 * is left.
 */
export type CoverNode = {
  duals: DualPrices | null;
  /** What the dual prices prove, in subunits. */
  bound: number;
  branch: readonly { readonly condition: BranchingConstraint; readonly node: CoverNode }[] | null;
};

/** The tree without what hangs below nodes whose own dual prices prove enough. */
export function finishedTree(node: CoverNode, enough: number): CoverNode {
  if (node.bound > enough || node.branch === null) return { ...node, branch: null };
  return { ...node, branch: node.branch.map((child) => ({ ...child, node: finishedTree(child.node, enough) })) };
}

/** How many cases a proof tells apart: the leaves of its tree. */
export const casesOf = ({ branch }: CoverNode): number =>
  branch === null ? 1 : branch.reduce((sum, { node }) => sum + casesOf(node), 0);
