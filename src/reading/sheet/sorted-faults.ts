import type { Finding, LineOf, Path, Words } from '../../domain/finding.js';
import { escapedText } from '../../domain/shown-text.js';
import type { TableThing } from '../csv/table-places.js';
import { tableWords } from '../csv/table-words.js';
import { offsetAt } from '../text/located-tree.js';
import { positionAt, type Position, type ReadSheet } from './read-sheet.js';

/** A fault whose words are made when it is told. */
export type Pending = Position & {
  readonly sheet: ReadSheet;
  readonly path: Path;
  /** What the row of a table is about in which it stands; null outside of rows. */
  readonly thing: TableThing | null;
  readonly words: () => Words;
};

/** The faults of one file by position. `sheets` are all files that its words may speak of. */
export function sortedFaults(
  sheet: ReadSheet,
  sheets: readonly ReadSheet[],
  resolved: readonly Finding[],
): readonly Pending[] {
  const { tree, table } = sheet;
  const placed: Pending[] = sheet.placed.map((fault) => ({
    ...fault,
    sheet,
    thing: fault.offset === null ? null : (table?.thingAt(fault.offset) ?? null),
    words: () => fault.words,
  }));
  const findings = [...sheet.findings, ...resolved.filter((finding) => finding.source === sheet.source)];
  const found = findings.map((finding): Pending => {
    const { path, point, words } = finding;
    const offset = tree === null ? 0 : offsetAt(tree.root, path, point);
    return {
      ...(tree === null ? { line: 1, column: 1 } : positionAt(tree.lines, offset)),
      sheet,
      path,
      // What concerns the file as a whole, such as a currency told by the first price, is no fault of that row.
      thing: typeof path[1] === 'number' ? (table?.thingAt(offset) ?? null) : null,
      words: () => inWordsOf(sheet, path, words(lineOfIn(sheet, sheets))),
    };
  });
  const sorted = [...placed, ...found].sort(
    (first, second) => first.line - second.line || first.column - second.column,
  );
  return withoutRepeats(sorted);
}

const inWordsOf = ({ table }: ReadSheet, path: Path, words: Words): Words =>
  table === null ? words : tableWords(table, path, words);

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
  return ({ source, path }) => {
    const sheet = sheets.find((one) => one.source === source) ?? here;
    const { tree } = sheet;
    const line = tree === null ? 1 : positionAt(tree.lines, offsetAt(tree.root, path, 'value')).line;
    return sheet === here ? `line ${line}` : `line ${line} of ${escapedText(sheet.file)}`;
  };
}
