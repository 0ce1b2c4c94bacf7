import type { Finding, Path } from '../../domain/finding.js';
import { escapedText } from '../../domain/shown-text.js';
import { endsInYaml, excerptAt } from '../faults/excerpt.js';
import { keyText, type InputFault, type ReadResult } from '../faults/input-fault.js';
import { isUseful } from '../csv/table-places.js';
import { causesOf, type Cause } from './causes.js';
import type { ReadSheet } from './read-sheet.js';
import { sortedFaults, type Pending } from './sorted-faults.js';

/** The most faults that are told at once; the rest is counted. */
const mostShown = 20;

/** The faults of both files by file and position, those of one cause together; null when there are none. */
export function collectedFaults(
  board: ReadSheet,
  catalogue: ReadSheet | null,
  resolved: readonly Finding[],
): Omit<Extract<ReadResult<never>, { kind: 'faulty' }>, 'kind'> | null {
  const sheets = catalogue === null ? [board] : [board, catalogue];
  const all = sheets.flatMap((sheet) => sortedFaults(sheet, sheets, resolved));
  if (all.length === 0) return null;
  const shown = causesOf(all).slice(0, mostShown);
  const told = shown.reduce((sum, { alike }) => sum + 1 + alike.length, 0);
  return {
    faults: shown.map(inputFaultOf),
    more: all.length - told,
    ...(sheets.some((sheet) => canSkipRows(sheet, all)) && { canSkipRows: true }),
  };
}

/** Whether some things of a table have faults, and others have none. */
function canSkipRows({ table }: ReadSheet, faults: readonly Pending[]): boolean {
  const faulty = new Set(faults.map(({ thing }) => thing));
  const useful = (table?.things ?? []).filter(isUseful);
  return table?.things.some((thing) => faulty.has(thing)) === true && useful.some((thing) => !faulty.has(thing));
}

function inputFaultOf({ first, words, alike }: Cause): InputFault {
  const { sheet, line, column } = first;
  // What stands above a table is YAML.
  const isCell = first.thing !== null || first.path.length === 1;
  const ends = (isCell ? sheet.table?.separator : undefined) ?? endsInYaml;
  const excerpt = excerptAt(sheet.text, line, column, ends);
  return {
    file: sheet.file,
    line,
    column,
    key: subjectOf(first, alike.length > 0),
    ...words,
    ...(alike.length > 0 && {
      alike: alike.map((one) => ({ line: one.line, key: subjectOf(one, false), name: nameOf(one) })),
    }),
    ...(excerpt !== undefined && { excerpt }),
  };
}

/** What a fault is about: the key in a file, or the row of a table and its heading; without the row where it is many. */
function subjectOf(pending: Pending, isOfMany: boolean): string {
  const { sheet, path } = pending;
  const { table } = sheet;
  const name = isOfMany ? null : nameOf(pending);
  if (table === null || pending.thing === null)
    return path.length === 1 && table !== null ? headingText(path) : keyText(path);
  return [name, table.headingOf(path)].filter((piece) => piece !== null).join(', ');
}

/** The heading of a column that is not understood, as it stands there. */
const headingText = ([key]: Path): string => escapedText(String(key).slice(0, 60));

const nameOf = ({ thing }: Pending): string | null =>
  thing?.name === undefined || thing.name === null ? null : escapedText(thing.name.slice(0, 60));
