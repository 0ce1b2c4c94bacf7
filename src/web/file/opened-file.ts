import { neededColumns } from '../../reading/csv/columns.js';
import { isCsvName, readCsv } from '../../reading/csv/read-csv.js';
import { convertTable } from '../../reading/csv/convert-table.js';
import { usualAssumption } from '../../reading/drafts/assumption.js';
import { faultText } from '../../reading/faults/input-fault.js';
import { mapOf } from '../../reading/text/data.js';
import { decode } from '../../reading/text/decode.js';
import { boardData } from '../document/board-data.js';
import { documentOf, type HeldFile, type PageDocument } from '../document/page-document.js';

/** What opening a file does to the document, or a sentence that says why it does nothing. */
type OpenedFile =
  | {
      readonly kind: 'opened';
      readonly edit: (document: PageDocument) => PageDocument;
      /** What of a table is left out, a sentence each. */
      readonly leftOut: readonly string[];
    }
  | { readonly kind: 'refused'; readonly why: string };

/** The most bytes of a shop, as for the commands, and of a board, which is read anew with every key. */
const [mostBytes, mostOfBoard] = [5_000_000, 300_000];

/** Tells what a file is by its name and its beginning; the worker reads it in full. */
export async function openedFile({
  name,
  size,
  bytes,
}: {
  readonly name: string;
  readonly size: number;
  readonly bytes: () => Promise<Uint8Array>;
}): Promise<OpenedFile> {
  if (size > mostBytes)
    return refused(name, 'it is larger than 5 MB, the most that is read. Leave out what is not needed.');
  const text = decode(await bytes());
  if (text.kind === 'unreadable') return refused(name, `${text.words.message} ${text.words.remedy}`);
  const held = { file: name, text: text.text };
  if (isShop(held)) return { kind: 'opened', edit: (document) => ({ ...document, shop: held }), leftOut: [] };
  if (size > mostOfBoard) return refused(name, 'a board of more than 300 kB is more than this page takes.');
  return isCsvName(name) ? boardOfTable(held) : boardOf(held);
}

const refused = (name: string, why: string): OpenedFile => ({ kind: 'refused', why: `${name}: ${why}` });

/** By a table's headings, or by the keys at the beginning of lines. */
function isShop({ file, text }: HeldFile): boolean {
  if (isCsvName(file)) return !isOfPedals(file, text);
  return /^[{\s]*"?(?:catalogue|supplies|parts)"?\s*:/m.test(text) && !/^[{\s]*"?(?:board|pedals)"?\s*:/m.test(text);
}

/** Only where all is understood that makes a pedal of a row: the columns of a shop are matched by hand. */
function isOfPedals(file: string, text: string): boolean {
  const { tableKind, places } = readCsv(file, text.split('\n', 60).join('\n'));
  return tableKind === 'pedals' && neededColumns.pedals.every((key) => places?.hasColumn(key) === true);
}

function boardOf(board: HeldFile): OpenedFile {
  return Object.keys(boardData(board.text)).length === 0
    ? refused(board.file, 'it is neither a board nor a shop that can be read. Open one in YAML, JSON or CSV.')
    : opened(board);
}

/** What a table says goes before what most pedals have; what is left open is to be read, as of rows that are pasted. */
function boardOfTable({ file, text }: HeldFile): OpenedFile {
  const read = convertTable(
    { file, text: { kind: 'text', text } },
    (_, { currency = 'EUR', assume }) => ({ currency, assume: { ...usualAssumption, ...mapOf(assume) } }),
    { skipBadRows: true, leavesOpen: true },
  );
  if (read.kind === 'faulty') return refused(file, read.faults.map(faultText).join(' '));
  const board = { file: file.replace(/\.[^.]*$/, '.yaml'), text: read.value.yaml };
  return opened(board, read.notes);
}

/** Nothing that was made of another board holds for it; the shop stays, and what its columns mean. */
const opened = (board: HeldFile, leftOut: readonly string[] = []): OpenedFile => ({
  kind: 'opened',
  edit: ({ shop, meanings }) => ({ ...documentOf({ board, shop }), meanings }),
  leftOut,
});
