import type { Catalogue } from '../domain/board.js';
import { kitOf, type Kit } from '../domain/kit.js';
import { collectedFaults } from './sheet/collect-faults.js';
import type { ReadResult } from './faults/input-fault.js';
import type { NamedFile } from './text/file-text.js';
import { readUsable, readWith, type ReadingOptions, type Usable } from './sheet/without-bad-rows.js';
import { resolveInputs } from './resolve/resolve-inputs.js';

/** A board and the catalogue it is used with. */
export type Inputs = Kit & { readonly catalogue: Catalogue };
/** A board that describes all its gear itself. */
export type BoardAlone = Kit & { readonly catalogue: null };

type NamedText = { readonly file: string; readonly text: string };

/**
 * Reads a board and a catalogue. Everything that is wrong with either is found at once; a fault that follows from another
 * one is not told. The file names are only used to say where a fault is, and that `.csv` and `.tsv` are tables.
 */
export function inputsFromText(board: NamedText, catalogue: NamedText, options?: ReadingOptions): ReadResult<Inputs>;
export function inputsFromText(board: NamedText, catalogue: null, options?: ReadingOptions): ReadResult<BoardAlone>;
export function inputsFromText(
  board: NamedText,
  catalogue: NamedText | null,
  options?: ReadingOptions,
): ReadResult<Inputs | BoardAlone>;
export function inputsFromText(
  board: NamedText,
  catalogue: NamedText | null,
  options?: ReadingOptions,
): ReadResult<Inputs | BoardAlone> {
  return inputsFromFiles(asFile(board), catalogue === null ? null : asFile(catalogue), options);
}

/** Reads boards one after the other with the same catalogue, whose text is parsed but once. */
export function inputsBeside(
  catalogue: NamedText,
  options: ReadingOptions = {},
): (board: NamedText) => ReadResult<Inputs> {
  const shelf = readUsable('catalogue', asFile(catalogue), options);
  return (board) => {
    const read = inputsFromSheets(readUsable('board', asFile(board), options), shelf);
    if (read.kind === 'faulty') return read;
    const { catalogue: shop } = read.value;
    if (shop === null) throw new Error('a catalogue was refused without a fault');
    return { ...read, value: { ...read.value, catalogue: shop } };
  };
}

const asFile = ({ file, text }: NamedText): NamedFile => ({ file, text: { kind: 'text', text } });

/** The board and the catalogue of files whose text is at hand, or cannot be had. */
export const inputsFromFiles = (
  board: NamedFile,
  catalogue: NamedFile | null,
  options: ReadingOptions = {},
): ReadResult<Inputs | BoardAlone> =>
  inputsFromSheets(
    readUsable('board', board, options),
    catalogue === null ? null : readUsable('catalogue', catalogue, options),
  );

function inputsFromSheets(board: Usable, shelf: Usable | null): ReadResult<Inputs | BoardAlone> {
  const resolved = resolveInputs({
    board: board.sheet.sheet,
    catalogue: shelf === null ? 'not given' : shelf.sheet.sheet,
  });
  const faults = collectedFaults(board.sheet, shelf?.sheet ?? null, resolved.findings);
  if (faults !== null) return { kind: 'faulty', ...faults };
  const { catalogue } = resolved;
  if (resolved.board === null || (shelf !== null && catalogue === null))
    throw new Error('an input was refused without a fault');
  return readWith({ ...kitOf(resolved.board, catalogue), catalogue }, [...board.notes, ...(shelf?.notes ?? [])]);
}
