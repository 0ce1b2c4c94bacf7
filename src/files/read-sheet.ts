import type { LineCounter } from 'yaml';

import type { Sheet } from '../domain/entry.js';
import type { Finding, Path, Source, Words } from '../domain/finding.js';
import { boardSchema } from '../domain/schema-board.js';
import { catalogueSchema } from '../domain/schema-catalogue.js';
import { buildTree } from './build-tree.js';
import type { FileText } from './file-text.js';
import type { LocatedNode } from './located-tree.js';
import { checkAgainstSchema } from './schema-findings.js';
import { parseYaml } from './yaml-document.js';

export type NamedFile = { readonly file: string; readonly text: FileText };

/** A position in a text, both numbers from 1. */
export type Position = { readonly line: number; readonly column: number };

/** A fault whose position is known already. */
export type PlacedFault = Position & { readonly path: Path; readonly words: Words };

/** What was made of one file. */
export type ReadSheet = {
  readonly file: string;
  readonly source: Source;
  /** Null when the text was not understood, or was meant for the other file. */
  readonly sheet: Sheet | null;
  readonly findings: readonly Finding[];
  readonly placed: readonly PlacedFault[];
  /** To place findings with; null when there is no tree. */
  readonly tree: { readonly root: LocatedNode; readonly lines: LineCounter } | null;
};

/** Turns the text of a file into data that its schema was applied to. */
export function readSheet(source: Source, { file, text }: NamedFile): ReadSheet {
  const refuse = (position: Position, words: Words): ReadSheet => ({
    file,
    source,
    sheet: null,
    findings: [],
    placed: [{ ...position, path: [], words }],
    tree: null,
  });
  if (text.kind === 'unreadable') return refuse(text, text.words);
  // A byte order mark is no part of the text, and would shift the columns of the first line.
  const body = text.text.replace(/^\uFEFF/, '');
  const zero = body.indexOf('\0');
  if (zero >= 0) return refuse(positionIn(body, zero), binary);
  const parsed = parseYaml(body);
  if (parsed.kind === 'not yaml') return refuse(positionAt(parsed.lines, parsed.offset), parsed.words);
  const { contents } = parsed.document;
  if (contents === null) return refuse({ line: 1, column: 1 }, empty(source));
  const { root, faults, lost } = buildTree(contents);
  if (root.kind === 'scalar' && root.value === null) return refuse({ line: 1, column: 1 }, empty(source));
  if (isOtherFile(source, root)) return refuse(positionAt(parsed.lines, root.offset), otherFile(source));
  const schema = source === 'board' ? boardSchema : catalogueSchema;
  const lineOf = (offset: number) => positionAt(parsed.lines, offset).line;
  return {
    file,
    source,
    ...checkAgainstSchema(source, schema, root, lost),
    placed: faults.map((fault) => ({
      ...positionAt(parsed.lines, fault.offset),
      path: fault.path,
      words: fault.words(lineOf),
    })),
    tree: { root, lines: parsed.lines },
  };
}

export function positionAt(lines: LineCounter, offset: number): Position {
  const { line, col } = lines.linePos(offset);
  return { line: Math.max(line, 1), column: Math.max(col, 1) };
}

function positionIn(text: string, offset: number): Position {
  const before = text.slice(0, offset).split('\n');
  return { line: before.length, column: (before.at(-1) ?? '').length + 1 };
}

/** A catalogue given as the board, or a board as the catalogue, would yield a heap of faults with one cause. */
function isOtherFile(source: Source, root: LocatedNode): boolean {
  if (root.kind !== 'map') return false;
  const has = (key: string) => root.entries.has(key);
  if (source === 'board') return has('catalogue') && !has('board') && !has('pedals');
  return has('board') && !has('catalogue') && !has('supplies');
}

const otherFile = (source: Source): Words => ({
  message: source === 'board' ? 'this is a catalogue, not a board.' : 'this is a board, not a catalogue.',
  remedy: 'Name the board first and the catalogue second.',
});

const empty = (source: Source): Words => ({
  message: `the file is empty; it must hold a ${source}.`,
  remedy:
    source === 'board'
      ? 'Write at least board, currency, policy and pedals.'
      : 'Write at least catalogue, currency and supplies.',
});

const binary: Words = {
  message: 'found a NUL byte; it is a binary file, not text.',
  remedy: 'Name a YAML or JSON file in UTF-8.',
};
