import type { ProofNode } from '../domain/proof.js';
import type { StepClaim } from './claim.js';
import { conditionsOf, type Condition } from './conditions.js';
import { Flaw } from './flaw.js';
import { nodeBound } from './node-bound.js';
import { capped, capsAtFirst, capsBehind, type UnitCaps } from './unit-caps.js';

/** A case that is still to be looked at. */
type Open = {
  readonly node: ProofNode;
  /** What holds in it, from the root on. */
  readonly path: readonly Condition[];
  readonly caps: UnitCaps;
  /** Which way it is reached from the root. */
  readonly way: readonly string[];
};

/** A search that splits cases this often in a row is none that anybody makes; each case holds all that led to it. */
const deepest = 2000;

/** Told before each case is looked at. */
export type OnCase = () => void;

/** How many cases a tree has; some need not be looked at. */
export function casesIn(tree: ProofNode): number {
  const open = [tree];
  let cases = 0;
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    cases += 1;
    if (next.branch !== undefined) open.push(next.branch.fewer, next.branch.more);
  }
  return cases;
}

/** Every case is closed by its tags or split in two that hold. Returns how many were looked at. @throws Flaw otherwise. */
export function checkTree(tree: ProofNode, claim: StepClaim, onCase: OnCase): number {
  const open: Open[] = [{ node: tree, path: [], caps: capsAtFirst(claim), way: [] }];
  let cases = 0;
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    cases += 1;
    onCase();
    if (next.way.length > deepest) throw new Flaw(`it splits a case more than ${deepest} times in a row`);
    open.push(...remainder(next, claim));
  }
  return cases;
}

/** The cases that remain to be shown when this one has been looked at. */
function remainder({ node, path, caps, way }: Open, claim: StepClaim): readonly Open[] {
  const { tags, branch } = node;
  try {
    const shown = tags === undefined ? undefined : nodeBound(tags, path, caps.quick, claim);
    if (shown === null) return [];
    if (branch === undefined) {
      const bound = shown?.bound(caps.exact) ?? null;
      if (bound !== null && bound > claim.scale * claim.below) return [];
      throw new Flaw(leftOpen(bound, claim));
    }
    const { fewer, more } = conditionsOf(branch, path, claim);
    const left = shown === undefined ? caps : capsBehind(caps, shown);
    return [
      { node: branch.more, path: [...path, more], caps: left, way: [...way, 'more'] },
      { node: branch.fewer, path: [...path, fewer], caps: capped(left, fewer), way: [...way, 'fewer'] },
    ];
  } catch (error) {
    if (error instanceof Flaw && way.length > 0) throw new Flaw(`in the case ${way.join(' > ')}, ${error.message}`);
    throw error;
  }
}

function leftOpen(bound: bigint | null, { scale, below }: StepClaim): string {
  if (bound === null) return 'a case is left open: it has neither tags nor a branch';
  return `a case is left open: its tags show no more than ${bound} of more than ${scale * below}`;
}
