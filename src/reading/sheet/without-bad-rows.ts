import type { InputKind } from '../../domain/finding.js';
import { quoted } from '../../domain/shown-text.js';
import type { Meanings } from '../csv/headings.js';
import { batteryTypeNamed } from '../csv/batteries.js';
import { isUseful, type TablePlaces, type TableThing } from '../csv/table-places.js';
import { idFromName } from '../resolve/resolve-id.js';
import { findingsAlone } from './faults-alone.js';
import type { ReadResult } from '../faults/input-fault.js';
import type { NamedFile } from '../text/file-text.js';
import { readSheet, type ReadSheet } from './read-sheet.js';
import { sortedFaults, type Pending } from './sorted-faults.js';

/** A sheet, and a sentence for each thing that was left aside to have it. */
export type Usable = { readonly sheet: ReadSheet; readonly notes: readonly string[] };

/** Reads a table, or it without the rows at these offsets. */
type ReadWithout = (rows: ReadonlySet<number>) => ReadSheet;

/** How files are read. */
export type ReadingOptions = {
  /** Whether rows of tables that nobody could use are left out, which is then told in a note; else they are faults. */
  readonly skipBadRows?: boolean;
  /** What headings of a shop's table mean that are not understood. */
  readonly meanings?: Meanings;
};

/** Reads a file to be used, as `readSheet` does. */
export const readUsable = (source: InputKind, named: NamedFile, options: ReadingOptions): Usable =>
  usable(
    (without) => readSheet(source, named, { without, meanings: source === 'board' ? undefined : options.meanings }),
    options,
  );

/** A value with the notes there are. */
export const readWith = <Value>(value: Value, notes: readonly string[]): ReadResult<Value> =>
  notes.length === 0 ? { kind: 'read', value } : { kind: 'read', value, notes };

/** Columns and remarks that are not used and batteries are told, and with `skipBadRows` each row that nobody could use. */
export function usable(read: ReadWithout, { skipBadRows = false }: ReadingOptions): Usable {
  const whole = read(new Set());
  const { sheet, notes } = skipBadRows ? withoutBadRows(whole, read) : { sheet: whole, notes: [] };
  return { sheet, notes: whole.table === null ? [] : [...notes, ...asideIn(whole.file, whole.table)] };
}

/** Of a supply with several rows, one that is wrong takes the others with it: its limits may stand there. */
function withoutBadRows(whole: ReadSheet, read: ReadWithout): Usable {
  const without = new Set<number>();
  const notes: string[] = [];
  let sheet = whole;
  for (let round = 1; ; round += 1) {
    const bad = badThings(sheet);
    if (bad.length === 0) break;
    for (const { thing, fault } of round < mostRounds ? firstOfEachName(bad) : bad) {
      for (const row of thing.rows) without.add(row);
      notes.push(leftOut(fault, thing));
    }
    sheet = read(without);
  }
  // With nothing left there is nothing to plan with: what is wrong with the rows is what matters then.
  return sheet.table?.things.some(isUseful) !== true ? { sheet: whole, notes: [] } : { sheet, notes };
}

/** A table is read as often at most for the sake of names that are there again and again. */
const mostRounds = 20;

type BadThing = { readonly thing: TableThing; readonly fault: Pending };

/** What is called as something before it may be right by itself, once that is gone. */
function firstOfEachName(bad: readonly BadThing[]): readonly BadThing[] {
  const named = new Set<string>();
  return bad.filter(({ thing: { name } }) => {
    const id = name === null ? null : (idFromName(name) ?? name);
    const isFirst = id === null || !named.has(id);
    if (id !== null) named.add(id);
    return isFirst;
  });
}

/** What rows are about that are wrong, each with its first fault. */
function badThings(sheet: ReadSheet): readonly BadThing[] {
  const found = new Map<TableThing, Pending>();
  for (const fault of sortedFaults(sheet, [sheet], findingsAlone(sheet)))
    if (fault.thing !== null && !found.has(fault.thing)) found.set(fault.thing, fault);
  return [...found].map(([thing, fault]) => ({ thing, fault }));
}

function leftOut({ sheet, line, path, words }: Pending, { name }: TableThing): string {
  const heading = sheet.table?.headingOf(path) ?? null;
  const what = name === null ? `line ${line}` : `${quoted(name)} (line ${line})`;
  return `${sheet.file}: left out ${what}: ${heading === null ? '' : `${heading}: `}${words().message}`;
}

/** The most texts that a note lists. */
const mostListed = 12;

function asideIn(file: string, { ignored, unread, things }: TablePlaces): readonly string[] {
  const batteries = things
    .filter(({ kind, name }) => kind === 'battery' && batteryTypeNamed(name ?? '') === null)
    .map(({ name }) => name ?? 'a battery');
  return [
    ...(batteries.length === 0
      ? []
      : [
          `${file}: left out ${quotedList(batteries)}: of which type a battery is, a table tells by its name alone, such as AA battery or 9 V block, and one by one, not in packs.`,
        ]),
    ...(ignored.length === 0
      ? []
      : [`${file}: not used: the column${ignored.length > 1 ? 's' : ''} ${quotedList(ignored)}.`]),
    ...(unread.length === 0
      ? []
      : [`${file}: not used: the remark${unread.length > 1 ? 's' : ''} ${quotedList(unread)}.`]),
  ];
}

function quotedList(texts: readonly string[]): string {
  const distinct = [...new Set(texts)];
  const shown = distinct.slice(0, mostListed).map(quoted).join(', ');
  return distinct.length > mostListed ? `${shown} and ${distinct.length - mostListed} more` : shown;
}
