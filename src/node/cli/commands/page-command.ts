import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { basename, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

import { convertTable } from '../../../reading/csv/convert-table.js';
import type { ReadResult } from '../../../reading/faults/input-fault.js';
import { inputsFromFiles } from '../../../reading/inputs-from-text.js';
import type { NamedFile } from '../../../reading/text/file-text.js';
import { isCsvName } from '../../../reading/csv/read-csv.js';
import { filledPage } from '../../../web/file/page-file.js';
import type { Given } from '../../../web/file/given-files.js';
import { namedFile } from '../../disk/file-text.js';
import { isSameFile } from '../../disk/same-file.js';
import { exitCodes, type ExitCode } from '../exit-codes.js';
import { nothingAsked, open, readOne, type Read } from '../pipeline.js';
import { tell } from '../printed/tell.js';
import { writeAloud } from '../written/aloud.js';

export type PageFlags = {
  /** The file to write. */
  readonly out: string;
  /** Whether it may be replaced. */
  readonly force?: boolean;
};

const example = (path: string): string => fileURLToPath(import.meta.resolve(`#fixtures/${path}`));

/** Writes the page with the files inside, says where it lies, and returns the exit code. */
export async function runPage(
  boardPath: string | null,
  cataloguePath: string | null,
  { out, force = false }: PageFlags,
): Promise<ExitCode> {
  const [board, shop] =
    boardPath === null
      ? [example('boards/gig-board.yaml'), example('shops/marram-street.yaml')]
      : [boardPath, cataloguePath];
  const opened = await open({ read: async () => readFiles(board, shop), ask: nothingAsked });
  if (opened === null || !(await isFree(out, [board, shop]))) return exitCodes.input;
  const page = await readFile(fileURLToPath(import.meta.resolve('#page')), 'utf8');
  const text = filledPage(page, givenOf(opened.input));
  const said = {
    done: `Page written to ${out}. Open it in a browser: ${pathToFileURL(resolve(out)).href}`,
    lost: 'The page was not written.',
  };
  return (await writeAloud(out, text, force, said)) ? exitCodes.plan : exitCodes.input;
}

/** No page replaces a file that it is made from. */
async function isFree(out: string, inputs: readonly (string | null)[]): Promise<boolean> {
  for (const input of inputs)
    if (input !== null && (await isSameFile(out, input))) {
      tell(`${out}: this is a file that the page is made from. Give another name.`);
      return false;
    }
  return true;
}

type Files = NonNullable<Given['files']>;

/** The files as the page takes them, once they are found to be right. */
async function readFiles(boardPath: string, shopPath: string | null): Promise<Read<Files>> {
  const board = asBoard(await namedFile(boardPath));
  if (board.kind === 'faulty') return readOne(board);
  const shop = shopPath === null ? null : await namedFile(shopPath);
  const read = await readOne(inputsFromFiles(board.value, shop, { skipBadRows: true }));
  return read.kind === 'faulty'
    ? read
    : {
        ...read,
        notes: [...(board.notes ?? []), ...(read.notes ?? [])],
        value: { board: heldAs(board.value), shop: shop === null ? null : heldAs(shop) },
      };
}

/** The page changes boards in YAML or JSON only: a table is made one. */
function asBoard(named: NamedFile): ReadResult<NamedFile> {
  if (!isCsvName(named.file)) return { kind: 'read', value: named };
  const read = convertTable(named, () => ({}), { skipBadRows: true });
  if (read.kind === 'faulty') return read;
  const file = named.file.replace(/\.[^.]*$/, '.yaml');
  return { ...read, value: { file, text: { kind: 'text', text: read.value.yaml } } };
}

/** By its name alone: where it lies on this disk is nobody's business. */
function heldAs({ file, text }: NamedFile): Files['board'] {
  if (text.kind === 'unreadable') throw new Error(`${file} was read before`);
  return { file: basename(file), text: text.text };
}

const givenOf = (files: Files): Given => ({
  origin: createHash('sha256').update(JSON.stringify(files)).digest('hex'),
  files,
});
