import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

import { stringify } from 'yaml';

import type { WiredFeed } from '../../src/domain/board.js';
import { numberOfThousandths } from '../../src/domain/quantities.js';
import type { Case } from '../support/arbitraries.js';
import { boardFileOf, catalogueFileOf } from '../support/as-files.js';
import { boardTable, catalogueTable, type TableStyle } from '../support/as-table.js';
import { filled, type Data } from './data.js';

/** The files of a case in its folder. Tables say all but the wiring. */
export const caseFiles = {
  board: 'board.yaml',
  catalogue: 'catalogue.yaml',
  boardTable: 'board.csv',
  catalogueTable: 'catalogue.csv',
} as const;

const style: TableStyle = {
  separator: ';',
  decimalSign: ',',
  quoteAll: false,
  lineEnd: '\n',
  byteOrderMark: false,
  header: (key) => key,
  order: (keys) => keys,
};

/** Writes a case into a folder of its own, as YAML and as tables. */
export async function writeCase(folder: string, { board, catalogue }: Case): Promise<void> {
  const [said, shop] = [boardFileOf(board), catalogueFileOf(catalogue)];
  const wiring = board.wiring.map(feedData);
  await mkdir(folder, { recursive: true });
  const write = (name: string, text: string) => writeFile(join(folder, name), text);
  await write(caseFiles.board, stringify(filled({ ...said, wiring })));
  await write(caseFiles.catalogue, stringify(shop));
  await write(caseFiles.boardTable, boardTable(said, style));
  await write(caseFiles.catalogueTable, catalogueTable(shop, style));
}

const feedData = ({ pedal, supply, unit, outputs, millivolts, join: joined, chain, adapters }: WiredFeed): Data =>
  filled({
    pedal,
    supply,
    unit,
    ...(outputs.length === 1 ? { output: outputs[0] } : { outputs }),
    volts: numberOfThousandths(millivolts),
    join: joined ?? undefined,
    chain: chain ?? undefined,
    parts: adapters,
  });
