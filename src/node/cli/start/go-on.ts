import { dirname, join, parse } from 'node:path';

import { isCsvName } from '../../../reading/csv/read-csv.js';
import { namesIn } from '../../disk/near-file.js';
import { Back, Cancelled, type Asker } from './asker.js';

/**
 * Offers to choose at once from the table in the board's folder, a shop's list as its till exports it, and does so, with the
 * sheet to print beside the board. Nothing is offered where there is no table, or several.
 */
export async function offerToChoose(asker: Asker, board: string): Promise<void> {
  const folder = dirname(board);
  const names = (await namesIn(folder, 'files')) ?? [];
  const [table, other] = names.filter(isCsvName);
  if (table === undefined || other !== undefined) return;
  const sheet = `${parse(board).name}.sheet.html`;
  const before = names.includes(sheet) ? ', in place of the one that is there' : '';
  const question =
    `Choose now what to buy from ${table}, and write the sheet to print, ${sheet}${before}? ` +
    'Rows that nobody could use are left out, and named.';
  if (!(await isWanted(asker, question))) return;
  const { runChoose } = await import('../commands/choose-command.js');
  await runChoose([board, join(folder, table)], {
    ...{ aim: 'cost', partial: false, json: false, record: false, skipBadRows: true },
    ...{ report: [join(folder, sheet)], force: true },
  });
}

/** Whoever breaks off here has had all that was asked written. */
async function isWanted(asker: Asker, question: string): Promise<boolean> {
  try {
    return await asker.confirm(question, true);
  } catch (error) {
    if (error instanceof Cancelled || error instanceof Back) return false;
    throw error;
  }
}
