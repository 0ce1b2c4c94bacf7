import { parse } from 'yaml';

import { convertTable } from '../../reading/csv/convert-table.js';
import { headingOf } from '../../reading/csv/headings.js';
import { unsaidOf } from '../../reading/csv/unsaid.js';
import { withEntries } from '../../reading/drafts/add-to-list.js';
import { usualWithPolarity, type Assumption } from '../../reading/drafts/assumption.js';
import { idFromName } from '../../reading/resolve/resolve-id.js';
import { assumptionOf, boardData, statedPedals } from './board-data.js';
import type { PageDocument } from './page-document.js';
import { withTermsNeeded } from './terms-needed.js';
import { readLine, withLineEntered } from './type-pedal.js';
import type { Data } from '../../reading/text/data.js';

/** What became of pasted rows, with a sentence for each that became no pedal. */
type Pasted = { readonly document: PageDocument; readonly refused: readonly string[] };

/** The document with a pedal for each row of a spreadsheet, with headings or without: then a row reads like a typed line. */
export function withRows(document: PageDocument, text: string): Pasted {
  const rows = text.split(/\r?\n/).filter((row) => row.trim() !== '');
  const named = isHeader(rows[0] ?? '') ? withTable(document, rows) : null;
  return named ?? rows.reduce(withRow, { document, refused: [] });
}

/** By headings of the trade: one that names, and one that says something. */
function isHeader(row: string): boolean {
  const keys = row.split('\t').flatMap((cell) => headingOf('pedals', cell)?.key ?? []);
  return keys.includes('name') && keys.length > 1;
}

function withRow({ document, refused }: Pasted, row: string): Pasted {
  const line = row.split('\t').join(', ');
  const before = { ...document, line };
  const after = withLineEntered(before);
  if (after !== before) return { document: { ...after, line: document.line }, refused };
  const read = readLine(line, document.board.text);
  const why = read.kind === 'unclear' ? read.faults.join(' ') : 'It could not be put into the board.';
  return { document, refused: [...refused, `${line}: ${why}`] };
}

/** Null where the table is none: its rows are then read like lines. */
function withTable(document: PageDocument, rows: readonly string[]): Pasted | null {
  const given = { currency: 'EUR', board: 'pasted', assume: usualWithPolarity };
  const named = { file: 'pasted.tsv', text: { kind: 'text', text: `${rows.join('\n')}\n` } } as const;
  const read = convertTable(named, () => given, { skipBadRows: true });
  if (read.kind === 'faulty') return null;
  const data = boardData(document.board.text);
  const taken = new Set(statedPedals(data).map(({ id }) => id));
  const pedals = (parse(read.value.yaml) as { readonly pedals: readonly Data[] }).pedals;
  const isNew = ({ name }: Data): boolean => !taken.has(idFromName(String(name)) ?? '');
  const entries = pedals.filter(isNew).map((pedal) => ({
    name: String(pedal['name']),
    fields: Object.entries({ ...pedal, ...unsaid(pedal, assumptionOf(data)) }).map(([key, value]) => ({ key, value })),
    missing: [],
  }));
  const extended = withEntries(document.board.text, 'pedals', entries);
  if (extended.kind === 'closed') return null;
  const there = pedals
    .filter((pedal) => !isNew(pedal))
    .map(({ name }) => `${String(name)}: that name is there already.`);
  return {
    document: { ...document, board: { ...document.board, text: withTermsNeeded(extended.text) } },
    refused: [...(read.notes ?? []).map((note) => note.replace(/^pasted\.tsv: /, '')), ...there],
  };
}

/** What neither the table says nor the board lets plans take is not known. */
const unsaid = (pedal: Data, assumption: Assumption): Data =>
  Object.fromEntries(unsaidOf({ ...assumption, ...pedal }).map((key) => [key, 'unknown']));
