import * as z from 'zod/mini';
import english from 'zod/v4/locales/en.js';

import { aims, tiers } from '../domain/aim.js';
import { proofFormat, type Proof, type ProofBranch, type ProofNode, type ProofStep } from '../domain/proof.js';
import { minorUnits, partId, pedalId, supplyId } from '../domain/quantities.js';

const id = z.string().check(z.minLength(1), z.maxLength(200));
const part = z.pipe(id, z.transform(partId));
const pedal = z.pipe(id, z.transform(pedalId));
const supply = z.pipe(id, z.transform(supplyId));
const positive = z.int().check(z.minimum(1));
const nonnegative = z.int().check(z.minimum(0));
const nonpositive = z.int().check(z.maximum(0));
const someOf = <Item extends z.ZodMiniType>(item: Item) => z.array(item).check(z.minLength(1));

const tagsSchema = z.strictObject({
  pedals: z.record(id, z.int()),
  leads: z.optional(z.array(z.strictObject({ parts: someOf(part), tag: nonnegative }))),
  inlets: z.optional(z.array(z.strictObject({ supplies: someOf(supply), fed: nonnegative, paid: nonnegative }))),
  bricks: z.optional(nonpositive),
  sockets: z.optional(nonpositive),
  budget: z.optional(nonpositive),
  earlier: z.optional(z.array(nonpositive)),
  conditions: z.optional(z.array(z.int())),
});

const branchSchema = z.strictObject({
  count: z.enum(['units', 'pedals', 'inlets', 'leads']),
  supply: z.nullable(supply),
  among: z.optional(someOf(supply)),
  source: z.nullable(z.enum(['owned', 'bought'])),
  unit: z.optional(positive),
  slot: z.optional(positive),
  of: z.optional(z.array(part)),
  most: nonnegative,
  likewise: z.optional(someOf(positive)),
  // Nodes are read one by one, so that a deep tree takes no deep recursion.
  fewer: z.unknown(),
  more: z.unknown(),
});

const nodeSchema = z.strictObject({ tags: z.optional(tagsSchema), branch: z.optional(branchSchema) });

const apartSchema = z.strictObject({
  supply,
  source: z.enum(['owned', 'bought']),
  units: positive,
});

const stepSchema = z.strictObject({
  tiers: someOf(z.strictObject({ tier: z.enum(tiers), unit: positive, weight: positive })),
  value: nonnegative,
  scale: positive,
  apart: z.optional(z.array(apartSchema)),
  tree: z.unknown(),
});

const wishesSchema = z.strictObject({
  keep: z.optional(z.array(pedal)),
  buy: z.optional(z.literal('never')),
  budget: z.optional(z.pipe(nonnegative, z.transform(minorUnits))),
});

const proofSchema = z.strictObject({
  format: z.literal(proofFormat),
  board: z.string(),
  aim: z.enum(aims),
  partial: z.boolean(),
  impossible: z.optional(z.boolean()),
  wishes: z.optional(wishesSchema),
  steps: someOf(stepSchema),
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

/** What is wrong with a value is told in the words of the schema library. */
const inEnglish = { error: english().localeError };

/** Turns what a proof file holds into a proof, or says what about it is wrong; of a tree, the first node that is. */
export function parseProof(data: unknown): ParsedProof {
  if (earlierFormat.safeParse(data).success) return { kind: 'faulty', faults: [outdated] };
  const parsed = proofSchema.safeParse(data, inEnglish);
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
    const parsed = nodeSchema.safeParse(next.data, inEnglish);
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
