import type { Finding, LineOf, Path, Words } from '../../domain/finding.js';
import { escapedText } from '../../domain/shown-text.js';
import { tableWords } from '../csv/table-words.js';
import { keyText, type InputFault } from '../faults/input-fault.js';
import { offsetAt } from '../text/located-tree.js';
import { positionAt, type Position, type ReadSheet } from './read-sheet.js';

/** The most faults that are told at once; the rest is counted. */
const mostShown = 20;

/** The faults of both files by file and position, or null when there are none. */
export function collectedFaults(
  board: ReadSheet,
  catalogue: ReadSheet | null,
  resolved: readonly Finding[],
): { readonly faults: readonly InputFault[]; readonly more: number } | null {
  const sheets = catalogue === null ? [board] : [board, catalogue];
  const all = sheets.flatMap((sheet) => sortedFaults(sheet, sheets, resolved));
  if (all.length === 0) return null;
  return { faults: all.slice(0, mostShown).map(told), more: Math.max(0, all.length - mostShown) };
}

/** A fault whose words are made when it is told. */
type Pending = Position & {
  readonly file: string;
  readonly path: Path;
  readonly words: () => { readonly message: string; readonly remedy: string };
};

function sortedFaults(
  sheet: ReadSheet,
  sheets: readonly ReadSheet[],
  resolved: readonly Finding[],
): readonly Pending[] {
  const { file, tree } = sheet;
  const placed: Pending[] = sheet.placed.map((fault) => ({ ...fault, file, words: () => fault.words }));
  const findings = [...sheet.findings, ...resolved.filter((finding) => finding.source === sheet.source)];
  const found = findings.map((finding): Pending => {
    const position = tree === null ? { line: 1, column: 1 } : positionOf(finding, tree);
    return {
      ...position,
      file,
      path: finding.path,
      words: () => inWordsOf(sheet, finding.path, finding.words(lineOfIn(sheet, sheets))),
    };
  });
  const sorted = [...placed, ...found].sort(
    (first, second) => first.line - second.line || first.column - second.column,
  );
  return withoutRepeats(sorted);
}

const inWordsOf = ({ isTable }: ReadSheet, path: Path, words: Words): Words =>
  isTable ? tableWords(path, words) : words;

const positionOf = ({ path, point }: Pick<Finding, 'path' | 'point'>, tree: NonNullable<ReadSheet['tree']>): Position =>
  positionAt(tree.lines, offsetAt(tree.root, path, point));

/** What is wrong behind an anchor is found once for every alias, at the same place: it is told once. */
function withoutRepeats(sorted: readonly Pending[]): readonly Pending[] {
  const seen = new Set<string>();
  return sorted.filter(({ line, column, path }) => {
    const place = `${line}:${column}:${String(path.at(-1))}`;
    const isNew = !seen.has(place);
    seen.add(place);
    return isNew;
  });
}

function lineOfIn(here: ReadSheet, sheets: readonly ReadSheet[]): LineOf {
  return (spot) => {
    const sheet = sheets.find(({ source }) => source === spot.source) ?? here;
    const line = sheet.tree === null ? 1 : positionOf({ ...spot, point: 'value' }, sheet.tree).line;
    return sheet === here ? `line ${line}` : `line ${line} of ${escapedText(sheet.file)}`;
  };
}

function told({ file, line, column, path, words }: Pending): InputFault {
  return { file, line, column, key: keyText(path), ...words() };
}
