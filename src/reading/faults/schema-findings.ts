import type * as z from 'zod/mini';

import { pathKey, type Sheet } from '../resolve/entry.js';
import { findingAt, type Finding, type Path, type InputKind, type Words } from '../../domain/finding.js';
import { nearSpelling } from '../../domain/near-spelling.js';
import type { Wording } from '../schema/schema-fields.js';
import { quoted } from '../../domain/shown-text.js';
import { nodeAt, plainData, type LocatedNode } from '../text/located-tree.js';
import { plainNumber } from '../typed/plain-number.js';
import { isRequiredAt, keysAt, keyWordingAt, schemaAt, wordingOf } from './schema-walk.js';
import { wordsOfRefused } from './value-words.js';

/** The data of a file, and everything that breaks its schema. */
export type Checked = { readonly sheet: Sheet; readonly findings: readonly Finding[] };

/** Applies a file's schema. `lost` are the paths of values that were reported already. */
export function checkAgainstSchema(
  source: InputKind,
  schema: z.ZodMiniType,
  root: LocatedNode,
  lost: readonly Path[],
): Checked {
  const data = plainData(root);
  const result = schema.safeParse(data);
  const issues = result.success ? [] : result.error.issues.flatMap((issue) => flattened(issue, []));
  const checking: Checking = { source, schema, root };
  const unknownKeys = issues.flatMap((issue) => unknownKeysOf(issue, checking));
  // A misspelled key was meant to be there: it is not missing as well.
  const brokenPaths: Path[] = [...lost, ...unknownKeys.flatMap(({ meant }) => (meant === null ? [] : [meant]))];
  const broken = new Set(brokenPaths.map(pathKey));
  const findings = unknownKeys.map((unknown) => findingOfUnknownKey(unknown, checking));
  for (const issue of issues) {
    const key = pathKey(issue.path);
    if (issue.issue.code === 'unrecognized_keys' || broken.has(key)) continue;
    broken.add(key);
    brokenPaths.push(issue.path);
    findings.push(findingOfIssue(issue, checking));
  }
  return { sheet: { source, data, broken, brokenWithin: prefixes(brokenPaths) }, findings };
}

type Checking = { readonly source: InputKind; readonly schema: z.core.$ZodType; readonly root: LocatedNode };

/** An issue of no union, at its path from the root. */
type FlatIssue = { readonly path: Path; readonly issue: z.core.$ZodIssue };

/** Of a union's issues those of the one option that the value was meant for, by its kind; none fits: the union's own. */
function flattened(issue: z.core.$ZodIssue, prefix: Path): readonly FlatIssue[] {
  const path: Path = [...prefix, ...issue.path.map((step) => (typeof step === 'symbol' ? String(step) : step))];
  if (issue.code !== 'invalid_union') return [{ path, issue }];
  const refusesWhole = (option: readonly z.core.$ZodIssue[], ...codes: readonly string[]) =>
    option.some((inner) => inner.path.length === 0 && codes.includes(inner.code));
  const meant =
    issue.errors.find((option) => !refusesWhole(option, 'invalid_type', 'invalid_value')) ??
    issue.errors.find((option) => !refusesWhole(option, 'invalid_type'));
  return meant === undefined ? [{ path, issue }] : meant.flatMap((inner) => flattened(inner, path));
}

function prefixes(paths: readonly Path[]): ReadonlySet<string> {
  const keys = new Set<string>();
  for (const path of paths)
    for (let length = 0; length <= path.length; length += 1) keys.add(pathKey(path.slice(0, length)));
  return keys;
}

type UnknownKey = {
  readonly path: Path;
  readonly key: string;
  readonly allowed: readonly string[];
  /** The path of the key it was meant to be, when it is near one that is not there; else null. */
  readonly meant: Path | null;
};

function unknownKeysOf({ path, issue }: FlatIssue, { schema, root }: Checking): readonly UnknownKey[] {
  if (issue.code !== 'unrecognized_keys') return [];
  const allowed = keysAt(schema, path);
  const missing = allowed.filter((key) => nodeAt(root, [...path, key]) === null);
  return issue.keys.map((key) => {
    const meant = meantKey(key, missing);
    return { path: [...path, key], key, allowed, meant: meant === null ? null : [...path, meant] };
  });
}

/** Words that people write for a key, in lower case. */
const synonyms: ReadonlyMap<string, readonly string[]> = new Map([
  ['v', ['volts']],
  ['voltage', ['volts']],
  ['ma', ['milliamps']],
  ['current', ['milliamps']],
  ['draw', ['milliamps']],
  ['amps', ['milliamps']],
  ['w', ['watts']],
  ['plug', ['inlet']],
  ['connector', ['inlet', 'plug']],
  ['center', ['polarity']],
  ['centre', ['polarity']],
  ['title', ['name', 'board', 'catalogue']],
  ['catalog', ['catalogue']],
]);

/** The missing key that an unknown one most likely stands for; null when none is near. */
export function meantKey(key: string, missing: readonly string[]): string | null {
  const synonym = synonyms.get(key.toLowerCase())?.find((word) => missing.includes(word));
  return synonym ?? nearSpelling(key, missing);
}

function findingOfUnknownKey({ path, key, allowed, meant }: UnknownKey, { source, root }: Checking): Finding {
  const words = (): Words => ({
    message: meant === null ? `unknown key. Allowed here: ${allowed.join(', ')}.` : 'unknown key.',
    remedy: unknownKeyRemedy(key, meant, nodeAt(root, path)),
  });
  return { source, path, point: 'key', words };
}

function unknownKeyRemedy(key: string, meant: Path | null, value: LocatedNode | null): string {
  if (meant !== null) return `Did you mean ${String(meant.at(-1))}?`;
  if (key === '<<') return 'Write the fields out: maps are not merged.';
  // To take it out might take out a limit.
  return isGlued(key, value)
    ? spaceAfterColon(key)
    : 'Write what it says under one of these, or as a remark behind a #.';
}

function findingOfIssue({ path, issue }: FlatIssue, { source, schema, root }: Checking): Finding {
  if (issue.code === 'invalid_key') {
    const wording = keyWordingAt(schema, path.slice(0, -1));
    return { source, path, point: 'key', words: () => wordsOfBadKey(String(path.at(-1)), nodeAt(root, path), wording) };
  }
  return findingAt({ source, path }, () => {
    const found = schemaAt(schema, path) ?? schema;
    const node = nodeAt(root, path);
    const isNumber = node?.kind === 'scalar' && typeof node.value === 'number';
    const field = path.findLast((step) => typeof step === 'string') ?? 'it';
    const required = isRequiredAt(schema, path);
    return wordsOfRefused({ node, field, required, schema: found, wording: wordingOf(found, isNumber), issue });
  });
}

function wordsOfBadKey(key: string, value: LocatedNode | null, { allowed, unit }: Wording): Words {
  const number = unit === null ? null : plainNumber(key, unit);
  const fallback = number === null || number === key ? `Write ${allowed}.` : `Write ${number}.`;
  return {
    message: `found the key ${quoted(key)}. Allowed: ${allowed}.`,
    remedy: isGlued(key, value) ? spaceAfterColon(key) : fallback,
  };
}

/** Whether a key has swallowed its value for want of a space: `{9:300}` is the key "9:300" without a value. */
const isGlued = (key: string, value: LocatedNode | null): boolean =>
  key.includes(':') && value?.kind === 'scalar' && value.value === null;

const spaceAfterColon = (key: string): string => `Put a space after the colon: ${quoted(key.replace(/:\s*/, ': '))}.`;
