import type { Catalogue } from '../domain/board.js';
import { kitOf, type Kit } from '../domain/kit.js';
import { collectedFaults } from './sheet/collect-faults.js';
import type { ReadResult } from './faults/input-fault.js';
import type { NamedFile } from './text/file-text.js';
import { readSheet, type ReadSheet } from './sheet/read-sheet.js';
import { resolveInputs } from './resolve/resolve-inputs.js';

/** A board and the catalogue it is used with. */
export type Inputs = Kit & { readonly catalogue: Catalogue };
/** A board that describes all its gear itself. */
export type BoardAlone = Kit & { readonly catalogue: null };

type NamedText = { readonly file: string; readonly text: string };

/**
 * Reads a board and a catalogue. Everything that is wrong with either is found at once; a fault that follows from another
 * one is not told. The file names are only used to say where a fault is.
 */
export function inputsFromText(board: NamedText, catalogue: NamedText): ReadResult<Inputs>;
export function inputsFromText(board: NamedText, catalogue: null): ReadResult<BoardAlone>;
export function inputsFromText(board: NamedText, catalogue: NamedText | null): ReadResult<Inputs | BoardAlone>;
export function inputsFromText(board: NamedText, catalogue: NamedText | null): ReadResult<Inputs | BoardAlone> {
  return inputsFromFiles(asFile(board), catalogue === null ? null : asFile(catalogue));
}

/** Reads boards one after the other with the same catalogue, whose text is parsed but once. */
export function inputsBeside(catalogue: NamedText): (board: NamedText) => ReadResult<Inputs> {
  const sheet = readSheet('catalogue', asFile(catalogue));
  return (board) => {
    const read = inputsFromSheets(readSheet('board', asFile(board)), sheet);
    if (read.kind === 'faulty') return read;
    const { catalogue: shop } = read.value;
    if (shop === null) throw new Error('a catalogue was refused without a fault');
    return { kind: 'read', value: { ...read.value, catalogue: shop } };
  };
}

const asFile = ({ file, text }: NamedText): NamedFile => ({ file, text: { kind: 'text', text } });

/** The board and the catalogue of files whose text is at hand, or cannot be had. */
export const inputsFromFiles = (board: NamedFile, catalogue: NamedFile | null): ReadResult<Inputs | BoardAlone> =>
  inputsFromSheets(readSheet('board', board), catalogue === null ? null : readSheet('catalogue', catalogue));

function inputsFromSheets(boardSheet: ReadSheet, catalogueSheet: ReadSheet | null): ReadResult<Inputs | BoardAlone> {
  const resolved = resolveInputs({
    board: boardSheet.sheet,
    catalogue: catalogueSheet === null ? 'not given' : catalogueSheet.sheet,
  });
  const faults = collectedFaults(boardSheet, catalogueSheet, resolved.findings);
  if (faults !== null) return { kind: 'faulty', ...faults };
  if (resolved.board === null || (catalogueSheet !== null && resolved.catalogue === null))
    throw new Error('an input was refused without a fault');
  const { board, catalogue } = resolved;
  return { kind: 'read', value: { ...kitOf(board, catalogue), catalogue } };
}
