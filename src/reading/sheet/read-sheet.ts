import type { LineCounter } from 'yaml';

import type { Sheet } from '../resolve/entry.js';
import type { Finding, Path, InputKind, Words } from '../../domain/finding.js';
import { boardSchema } from '../schema/schema-board.js';
import { catalogueSchema } from '../schema/schema-catalogue.js';
import { isCsvName, readCsv, sourceOf, type CsvTree, type TableOptions } from '../csv/read-csv.js';
import type { TablePlaces } from '../csv/table-places.js';
import type { NamedFile } from '../text/file-text.js';
import type { LocatedNode } from '../text/located-tree.js';
import { checkAgainstSchema } from '../faults/schema-findings.js';
import { treeOfYaml } from '../text/tree-of-text.js';

/** A position in a text, both numbers from 1. */
export type Position = { readonly line: number; readonly column: number };

/** A fault whose position is known already. */
type PlacedFault = Position & {
  /** In UTF-16 units from the start of the text; null where there is no tree. */
  readonly offset: number | null;
  readonly path: Path;
  readonly words: Words;
};

/** What was made of one file. */
export type ReadSheet = {
  readonly file: string;
  /** Without a byte order mark; empty when it could not be had. */
  readonly text: string;
  readonly source: InputKind;
  /** Null when the text was not understood, or was meant for the other file. */
  readonly sheet: Sheet | null;
  /** Of a table, whose faults are told in its own words; null of any other file. */
  readonly table: TablePlaces | null;
  readonly findings: readonly Finding[];
  readonly placed: readonly PlacedFault[];
  /** To place findings with; null when there is no tree. */
  readonly tree: { readonly root: LocatedNode; readonly lines: LineCounter } | null;
};

/** Turns the text of a file into data that its schema was applied to. Files whose names say so are tables. */
export const readSheet = (source: InputKind, named: NamedFile, options: TableOptions = {}): ReadSheet =>
  isCsvName(named.file) ? readTable(source, named, options) : sheetOf(source, named, null);

/** The same for a table, whatever its name. */
export const readTable = (source: InputKind, named: NamedFile, options: TableOptions): ReadSheet =>
  sheetOf(source, named, (body) => readCsv(named.file, body, options));

function sheetOf(
  source: InputKind,
  { file, text }: NamedFile,
  readAsTable: ((body: string) => CsvTree) | null,
): ReadSheet {
  // A byte order mark is no part of the text, and would shift the columns of the first line.
  const body = text.kind === 'text' ? text.text.replace(/^\uFEFF/, '') : '';
  const refuse = (position: Position, words: Words): ReadSheet => ({
    file,
    text: body,
    source,
    sheet: null,
    table: null,
    findings: [],
    placed: [{ ...position, offset: null, path: [], words }],
    tree: null,
  });
  if (text.kind === 'unreadable') return refuse(text, text.words);
  const zero = body.indexOf('\0');
  if (zero >= 0) return refuse(positionIn(body, zero), binary);
  const csv = readAsTable === null ? null : readAsTable(body);
  const tree = csv ?? treeOfYaml(body);
  const { lines } = tree;
  if (tree.kind === 'refused') return refuse(positionAt(lines, tree.offset), tree.words);
  const { root, faults, lost } = tree;
  if (root.kind === 'scalar' && root.value === null) return refuse({ line: 1, column: 1 }, empty(source));
  const isOther = csv === null ? isOtherFile(source, root) : sourceOf(csv.tableKind) !== source;
  if (isOther) return refuse(positionAt(lines, root.offset), otherFile(source));
  const schema = source === 'board' ? boardSchema : catalogueSchema;
  const lineOf = (offset: number) => positionAt(lines, offset).line;
  return {
    file,
    text: body,
    source,
    table: csv?.places ?? null,
    ...checkAgainstSchema(source, schema, root, lost),
    placed: faults.map((fault) => ({
      ...positionAt(lines, fault.offset),
      offset: fault.offset,
      path: fault.path,
      words: fault.words(lineOf),
    })),
    tree: { root, lines },
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
function isOtherFile(source: InputKind, root: LocatedNode): boolean {
  if (root.kind !== 'map') return false;
  const has = (key: string) => root.entries.has(key);
  if (source === 'board') return has('catalogue') && !has('board') && !has('pedals');
  return has('board') && !has('catalogue') && !has('supplies');
}

const otherFile = (source: InputKind): Words => ({
  message: source === 'board' ? 'this is a catalogue, not a board.' : 'this is a board, not a catalogue.',
  remedy: 'Name the board first and the catalogue second.',
});

const empty = (source: InputKind): Words => ({
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
