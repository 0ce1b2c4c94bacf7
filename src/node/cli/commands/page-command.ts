import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { basename, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

import { convertTable } from '../../../reading/csv/convert-table.js';
import { isCsvName } from '../../../reading/csv/read-csv.js';
import { filledPage } from '../../../web/file/page-file.js';
import type { Given } from '../../../web/file/given-files.js';
import { namedFile } from '../../disk/file-text.js';
import { readInputs } from '../../disk/read-inputs.js';
import { isSameFile } from '../../disk/same-file.js';
import { writeWhole } from '../../disk/write-file.js';
import { exitCodes, type ExitCode } from '../exit-codes.js';
import { nothingAsked, open, readOne } from '../pipeline.js';
import { tell } from '../printed/tell.js';

export type PageFlags = {
  /** The file to write. */
  readonly out: string;
  /** Whether it may be replaced. */
  readonly force?: boolean;
};

const example = (path: string): string => fileURLToPath(new URL(`../../../../../fixtures/${path}`, import.meta.url));

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
  const opened = await open({
    read: async () => readOne(readInputs(board, shop, { skipBadRows: true })),
    ask: nothingAsked,
  });
  if (opened === null || !(await isFree(out, [board, shop]))) return exitCodes.input;
  const page = await readFile(fileURLToPath(import.meta.resolve('#page')), 'utf8');
  const text = filledPage(page, await givenOf(board, shop));
  const obstacle = await writeWhole(out, text, { overwrite: force });
  tell(
    obstacle === null
      ? `Page written to ${out}. Open it in a browser: ${pathToFileURL(resolve(out)).href}`
      : `${out}: ${obstacle.message} ${obstacle.remedy} The page was not written.`,
  );
  return obstacle === null ? exitCodes.plan : exitCodes.input;
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

/** The files by their names alone: where they lie on this disk is nobody's business. */
async function givenOf(boardPath: string, shopPath: string | null): Promise<Given> {
  const board = await textOf(boardPath);
  const files = {
    board: isCsvName(boardPath) ? asYaml(basename(boardPath), board) : { file: basename(boardPath), text: board },
    shop: shopPath === null ? null : { file: basename(shopPath), text: await textOf(shopPath) },
  };
  return { origin: createHash('sha256').update(JSON.stringify(files)).digest('hex'), files };
}

async function textOf(path: string): Promise<string> {
  const { text } = await namedFile(path);
  if (text.kind === 'unreadable') throw new Error(`${path} was read before`);
  return text.text;
}

/** The page changes boards in YAML only. */
function asYaml(file: string, text: string) {
  const read = convertTable({ file, text: { kind: 'text', text } }, () => ({}), { skipBadRows: true });
  if (read.kind === 'faulty') throw new Error(`${file} was read before`);
  return { file: file.replace(/\.[^.]*$/, '.yaml'), text: read.value.yaml };
}
