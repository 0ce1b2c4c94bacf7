import type { ReadResult } from '../../reading/faults/input-fault.js';
import { inputsFromFiles, type BoardAlone, type Inputs } from '../../reading/inputs-from-text.js';
import type { ReadingOptions } from '../../reading/sheet/without-bad-rows.js';
import { namedFile } from './file-text.js';

/** Reads a board file and a catalogue file; a null path is no catalogue. What the file system refuses is a fault, too. */
export async function readInputs(
  boardPath: string,
  cataloguePath: string,
  options?: ReadingOptions,
): Promise<ReadResult<Inputs>>;
export async function readInputs(
  boardPath: string,
  cataloguePath: null,
  options?: ReadingOptions,
): Promise<ReadResult<BoardAlone>>;
export async function readInputs(
  boardPath: string,
  cataloguePath: string | null,
  options?: ReadingOptions,
): Promise<ReadResult<Inputs | BoardAlone>>;
export async function readInputs(
  boardPath: string,
  cataloguePath: string | null,
  options: ReadingOptions = {},
): Promise<ReadResult<Inputs | BoardAlone>> {
  const shop = cataloguePath === null ? null : await namedFile(cataloguePath);
  return inputsFromFiles(await namedFile(boardPath), shop, options);
}
