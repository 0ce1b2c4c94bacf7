import * as z from 'zod/mini';

import type { Words } from '../../domain/finding.js';
import { nearSpelling } from '../../domain/near-spelling.js';
import { roundedTo } from '../resolve/resolve-quantity.js';
import type { Wording } from '../schema/schema-fields.js';
import { listed, quoted } from '../../domain/shown-text.js';
import { isPlainDecimal, type LocatedNode, type LocatedScalar } from '../text/located-tree.js';
import { plainNumber, plainRange } from '../typed/plain-number.js';

/** A value that its schema refuses. */
export type Refused = {
  /** Null when it is missing. */
  readonly node: LocatedNode | null;
  readonly field: string;
  /** Whether the file is wrong without it, whatever else it states. */
  readonly required: boolean;
  readonly schema: z.core.$ZodType;
  readonly wording: Wording;
  readonly issue: z.core.$ZodIssue;
};

/** What was found in place of what is allowed, and how to mend it. */
export function wordsOfRefused(refused: Refused): Words {
  const { node, field, wording } = refused;
  if (node === null) return { message: `missing. Allowed: ${wording.allowed}.`, remedy: `Add \`${field}\`.` };
  return {
    message: `found ${foundText(refused, node)}. Allowed: ${wording.allowed}.`,
    remedy: remedyOf(refused, node),
  };
}

function foundText({ issue, wording }: Refused, node: LocatedNode): string {
  switch (node.kind) {
    case 'list': {
      const entries = node.items.length === 1 ? '1 entry' : `${node.items.length} entries`;
      return node.items.length === 0 ? 'an empty list' : `a list of ${entries}`;
    }
    case 'map':
      return node.entries.size === 0 ? 'an empty map' : 'a map';
    case 'scalar':
      return scalarText(node, issue, wording);
  }
}

function scalarText(node: LocatedScalar, issue: z.core.$ZodIssue, wording: Wording): string {
  if (node.value === null) return 'no value';
  if (typeof node.value === 'number') {
    const written = node.written === '' ? String(node.value) : node.written;
    return quotedUnlessShort(written);
  }
  if (typeof node.value === 'boolean') return String(node.value);
  if (issue.code === 'too_big') return `${quoted(node.value)}, ${node.value.length} characters`;
  return `${quoted(node.value)}${wording.unit === null ? '' : ', which is text'}`;
}

const quotedUnlessShort = (written: string): string => (written.length > 30 ? quoted(written) : written);

function remedyOf(refused: Refused, node: LocatedNode): string {
  const { wording, issue, field } = refused;
  if (node.kind !== 'scalar') return node.kind === 'list' ? listRemedy(refused) : `Write ${wording.allowed}.`;
  const absent = refused.required ? '' : `, or remove \`${field}\` where it may be left out`;
  if (node.value === null) return `Write ${wording.allowed}${absent}.`;
  if (wording.unit !== null) return numberRemedy(refused, node);
  if (refused.schema instanceof z.ZodMiniBoolean) return flagRemedy(node);
  const words = wordsOf(issue);
  if (words.length > 0) return wordRemedy(String(node.value), words);
  if (typeof node.value !== 'string') return `Put it in quotes if it is meant as text: "${node.written}".`;
  if (issue.code === 'too_big') return 'Shorten it.';
  return textRemedy(refused, node.value);
}

function listRemedy({ issue, field, wording }: Refused): string {
  if (issue.code === 'too_big') return 'Remove what is not needed.';
  if (issue.code === 'too_small') return `Add what is missing to \`${field}\`.`;
  if (issue.code === 'invalid_type' && (issue.expected === 'object' || issue.expected === 'record'))
    return `Write ${wording.allowed}.`;
  return 'Write a single value instead of the list.';
}

/** The plain number to write instead, where that can be told and would be right. */
function numberRemedy({ schema, wording, issue }: Refused, node: LocatedScalar): string {
  const fallback = `Write ${wording.allowed}.`;
  if (wording.unit === null) return fallback;
  if (typeof node.value === 'boolean') return fallback;
  const written = typeof node.value === 'string' ? node.value : numberText(node, issue);
  const number = plainNumber(written, wording.unit);
  if (number !== null && z.safeParse(schema, Number(number)).success) return `Write ${number}.`;
  const range = plainRange(written);
  if (range !== null && schema instanceof z.ZodMiniUnion) return `Write ${range}.`;
  if (number === null && written.includes(','))
    return 'Write the digits with a decimal point and nothing between them.';
  return fallback;
}

/** A number as plain digits: what hexadecimal or an exponent means, rounded where it has too many decimals. */
function numberText(node: LocatedScalar, issue: z.core.$ZodIssue): string {
  const value = Number(node.value);
  if (issue.code === 'custom' || !isPlainDecimal(node)) {
    return Number.isFinite(value) && Math.abs(value) < 1e15 ? String(roundedTo(3, value)) : '';
  }
  return String(value);
}

function flagRemedy(node: LocatedScalar): string {
  const word = String(node.value).toLowerCase();
  if (['yes', 'y', 'on', 'true', '1'].includes(word)) return 'Write true.';
  return ['no', 'n', 'off', 'false', '0'].includes(word) ? 'Write false.' : 'Write true or false.';
}

const wordsOf = (issue: z.core.$ZodIssue): readonly string[] =>
  issue.code === 'invalid_value' ? issue.values.map(String) : [];

function wordRemedy(found: string, words: readonly string[]): string {
  const lower = found.toLowerCase().replace(/[\s_-]+/g, '-');
  const isWord = (word: string) => word.toLowerCase() === lower;
  const ending = words.filter((word) => lastWordOf(word).startsWith(lastWordOf(lower)));
  const meant = words.find(isWord) ?? (ending.length === 1 ? ending[0] : nearSpelling(lower, words));
  return meant === undefined || meant === null ? `Write ${listed(words, 'or')}.` : `Did you mean ${meant}?`;
}

const lastWordOf = (words: string): string => words.split('-').at(-1) ?? '';

function textRemedy({ issue, wording }: Refused, found: string): string {
  if (issue.code === 'invalid_format') {
    const mended = found.trim().replace(/[^\p{L}\p{M}\p{N}._-]+/gu, '-');
    return /[\p{L}\p{N}]/u.test(mended)
      ? `Write ${mended.slice(0, 60)}, the same wherever it is named.`
      : `Write ${wording.allowed}.`;
  }
  return `Write ${wording.allowed}.`;
}
