import * as z from 'zod';

import { aims, tiers } from '../domain/aim.js';
import { proofFormat, type Proof, type ProofBranch, type ProofNode, type ProofStep } from '../domain/proof.js';
import { minorUnits, partId, pedalId, supplyId } from '../domain/quantities.js';

const id = z.string().min(1).max(200);
const partIdField = id.transform(partId);
const positive = z.int().min(1);
const nonnegative = z.int().min(0);
const nonpositive = z.int().max(0);

const tagsSchema = z.strictObject({
  pedals: z.record(id, z.int()),
  leads: z.array(z.strictObject({ parts: z.array(partIdField).min(1), tag: nonnegative })).optional(),
  inlets: z
    .array(z.strictObject({ supplies: z.array(id.transform(supplyId)).min(1), fed: nonnegative, paid: nonnegative }))
    .optional(),
  bricks: nonpositive.optional(),
  sockets: nonpositive.optional(),
  budget: nonpositive.optional(),
  earlier: z.array(nonpositive).optional(),
  conditions: z.array(z.int()).optional(),
});

const branchSchema = z.strictObject({
  count: z.enum(['units', 'pedals', 'inlets', 'leads']),
  supply: id.transform(supplyId).nullable(),
  among: z.array(id.transform(supplyId)).min(1).optional(),
  source: z.enum(['owned', 'bought']).nullable(),
  unit: positive.optional(),
  slot: positive.optional(),
  of: z.array(partIdField).optional(),
  most: nonnegative,
  likewise: z.array(positive).min(1).optional(),
  // Nodes are read one by one, so that a deep tree takes no deep recursion.
  fewer: z.unknown(),
  more: z.unknown(),
});

const nodeSchema = z.strictObject({ tags: tagsSchema.optional(), branch: branchSchema.optional() });

const apartSchema = z.strictObject({
  supply: id.transform(supplyId),
  source: z.enum(['owned', 'bought']),
  units: positive,
});

const stepSchema = z.strictObject({
  tiers: z.array(z.strictObject({ tier: z.enum(tiers), unit: positive, weight: positive })).min(1),
  value: nonnegative,
  scale: positive,
  apart: z.array(apartSchema).optional(),
  tree: z.unknown(),
});

const wishesSchema = z.strictObject({
  keep: z.array(id.transform(pedalId)).optional(),
  buy: z.literal('never').optional(),
  budget: nonnegative.transform(minorUnits).optional(),
});

const proofSchema = z.strictObject({
  format: z.literal(proofFormat),
  board: z.string(),
  aim: z.enum(aims),
  partial: z.boolean(),
  impossible: z.boolean().optional(),
  wishes: wishesSchema.optional(),
  steps: z.array(stepSchema).min(1),
});

/** Something in a proof that is not as the format has it. */
export type ProofFault = {
  readonly path: readonly (string | number)[];
  readonly message: string;
  readonly remedy: string;
};

export type ParsedProof =
  | { readonly kind: 'proof'; readonly proof: Proof }
  | { readonly kind: 'faulty'; /** At least one. */ readonly faults: readonly ProofFault[] };

/** A proof as it was written when the limits on supplies in use and on mains sockets still shared a tag. */
const earlierFormat = z.looseObject({ format: z.literal('boardfeed/proof/1') });
const outdated: ProofFault = {
  path: ['format'],
  message: `the proof has the format boardfeed/proof/1 of an earlier version; this one checks ${proofFormat}.`,
  remedy: 'Write the proof again with this version: boardfeed choose … --proof FILE.',
};

/** Turns what a proof file holds into a proof, or says what about it is wrong; of a tree, the first node that is. */
export function parseProof(data: unknown): ParsedProof {
  if (earlierFormat.safeParse(data).success) return { kind: 'faulty', faults: [outdated] };
  const parsed = proofSchema.safeParse(data);
  if (!parsed.success) return { kind: 'faulty', faults: parsed.error.issues.map((issue) => faultOf(issue, [])) };
  const steps: ProofStep[] = [];
  for (const [index, { tree, apart, ...step }] of parsed.data.steps.entries()) {
    const read = readTree(tree, ['steps', index, 'tree']);
    if (read.kind === 'faulty') return read;
    steps.push({ ...step, ...(apart === undefined ? {} : { apart }), tree: read.node });
  }
  // The schema has read the ids; that they name something is a matter of the check.
  return { kind: 'proof', proof: { ...parsed.data, steps } as Proof };
}

type Path = ProofFault['path'];
type MutableNode = { tags?: ProofNode['tags']; branch?: ProofBranch };
/** Where a node is, from there to the root: deep trees have many nodes that wait, and long paths to them. */
type Way = { readonly half: 'fewer' | 'more'; readonly before: Way | null };
type Waiting = { readonly data: unknown; readonly way: Way | null; readonly put: (node: ProofNode) => void };

function pathOf(way: Way | null, root: Path): Path {
  const steps: string[] = [];
  for (let at = way; at !== null; at = at.before) steps.push(at.half, 'branch');
  return [...root, ...steps.reverse()];
}

function readTree(
  data: unknown,
  path: Path,
): { readonly kind: 'node'; readonly node: ProofNode } | Extract<ParsedProof, { kind: 'faulty' }> {
  let root: ProofNode = {};
  const waiting: Waiting[] = [{ data, way: null, put: (node) => (root = node) }];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const { way } = next;
    const parsed = nodeSchema.safeParse(next.data);
    if (!parsed.success)
      return { kind: 'faulty', faults: parsed.error.issues.map((issue) => faultOf(issue, pathOf(way, path))) };
    const { tags, branch } = parsed.data;
    const node = (tags === undefined ? {} : { tags }) as MutableNode;
    next.put(node as ProofNode);
    if (branch === undefined) continue;
    const split = { ...branch, fewer: {}, more: {} } as { -readonly [Key in keyof ProofBranch]: ProofBranch[Key] };
    node.branch = split;
    waiting.push(
      { data: branch.more, way: { half: 'more', before: way }, put: (child) => (split.more = child) },
      { data: branch.fewer, way: { half: 'fewer', before: way }, put: (child) => (split.fewer = child) },
    );
  }
  return { kind: 'node', node: root };
}

const faultOf = (issue: z.core.$ZodIssue, before: Path): ProofFault => ({
  path: [...before, ...issue.path.map((step) => (typeof step === 'symbol' ? String(step) : step))],
  message: `${issue.message}.`,
  remedy: 'Give the file as boardfeed wrote it.',
});
