import { countOutputs, type Kit } from '../../domain/kit.js';
import type { Part } from '../../domain/part.js';
import { isOfOnePedal } from '../../domain/source.js';
import type { Supply } from '../../domain/supply.js';
import { columnsOf, neededColumns } from '../../reading/csv/columns.js';
import type { OpenColumn } from '../../reading/csv/header.js';
import { meansNothing, type Meanings } from '../../reading/csv/headings.js';
import { isCsvName, readCsv } from '../../reading/csv/read-csv.js';
import { columnWords } from '../../report/words/column-words.js';
import { speechOf } from '../../report/words/speech.js';
import { assumedText, priceText } from '../../report/words/words.js';
import type { Owned } from '../document/change-supplies.js';
import type { HeldFile } from '../document/page-document.js';
import { remembering } from '../document/remembering.js';

/** Something that can be owned. */
export type ToldThing = {
  readonly kind: Owned;
  readonly id: string;
  readonly name: string;
  /** Null of what is not for sale. */
  readonly price: string | null;
  /** Of a supply; none of anything else. */
  readonly outputs: number;
  /** What the shop's table remarks on it; empty where there is nothing. */
  readonly remark: string;
  /** How many are owned. */
  readonly units: number;
  /** What of it stands in the board without having been read, in words; empty where there is nothing. */
  readonly taken: string;
};

/** A column of the shop's table that is not understood, or that somebody has said the meaning of. */
export type ToldColumn = OpenColumn & {
  /** What was said; null while nobody has. */
  readonly meaning: string | null;
};

/** What a column may hold that no other one holds, in words; the last is nothing that matters. */
export type ColumnChoice = { readonly meaning: string; readonly words: string };

export type ToldColumns = {
  readonly columns: readonly ToldColumn[];
  readonly choices: readonly ColumnChoice[];
  /** What no column holds yet, and no supply can be read without; in words. */
  readonly missing: readonly string[];
};

/** What a pedal came with, or has in it, is not picked: it goes with its pedal. */
export function toldThings(kit: Kit, remarks: ReadonlyMap<string, string> = new Map()): readonly ToldThing[] {
  const { inventory } = speechOf(kit);
  const { owned, gear } = kit.board;
  const price = (thing: Supply | Part): string | null =>
    thing.price === null ? null : priceText(thing.price, kit.board);
  return [
    ...[...kit.supplies.values()]
      .filter(({ source }) => !isOfOnePedal(source))
      .map((supply) => ({
        ...{ kind: 'supply' as const, id: supply.id, name: inventory.supplyName(supply.id), price: price(supply) },
        outputs: countOutputs(supply),
        remark: remarks.get(supply.name) ?? '',
        units: owned.supplies.get(supply.id) ?? 0,
        taken: gear.supplies.includes(supply) ? assumedText(supply.assumed, 'gives') : '',
      })),
    ...[...kit.parts.values()].map((part) => ({
      ...{
        kind: part.role.kind === 'battery' ? ('battery' as const) : ('part' as const),
        id: part.id,
        name: inventory.partName(part.id),
        price: price(part),
      },
      outputs: 0,
      remark: '',
      units: owned.parts.get(part.id) ?? 0,
      taken: assumedText(part.assumed ?? {}, 'gives'),
    })),
  ];
}

/** What the shop's table remarks on what it sells, by the names there. It is read once for as long as it stays the same. */
export const remarksIn = (shop: HeldFile | null, meanings: Meanings): ReadonlyMap<string, string> =>
  shop === null || !isCsvName(shop.file) ? new Map() : remarksOf(JSON.stringify([shop, meanings]));

const remarksOf = remembering((known) => {
  const [{ file, text }, meanings] = JSON.parse(known) as readonly [HeldFile, Meanings];
  const things = readCsv(file, text, { meanings }).places?.things ?? [];
  return new Map(things.map(({ name, remark }) => [name ?? '', remark]));
}, 1);

/** So many rows show what a column holds. */
const sampleLines = 200;

/** The columns to be matched by hand, and those that have been; null where the shop is no table. */
export function toldColumns(shop: HeldFile | null, meanings: Meanings): ToldColumns | null {
  if (shop === null || !isCsvName(shop.file)) return null;
  const beginning = shop.text.split('\n', sampleLines).join('\n');
  const unsaid = readCsv(shop.file, beginning, { meanings: {} }).places?.open ?? [];
  const columns = unsaid.map((column) => ({
    ...column,
    meaning: Object.hasOwn(meanings, column.heading) ? (meanings[column.heading] ?? null) : null,
  }));
  const places = readCsv(shop.file, beginning, { meanings }).places;
  const choices = Object.entries(columnWords)
    .filter(([key]) => Object.hasOwn(columnsOf.supplies, key))
    .filter(([key]) => places?.hasColumn(key) !== true || columns.some(({ meaning }) => meaning === key))
    .map(([meaning, words]) => ({ meaning, words }));
  const missing = neededColumns.supplies.filter((key) => places?.hasColumn(key) === false);
  return {
    columns,
    missing: Object.entries(columnWords).flatMap(([key, words]) => (missing.includes(key) ? [words] : [])),
    choices: [...choices, { meaning: meansNothing, words: 'nothing that limits it' }],
  };
}
