import { withAppended, withValue, type KeyPath } from '../../reading/drafts/set-value.js';
import { withKeys } from '../../reading/drafts/set-keys.js';
import { withoutEntry } from '../../reading/drafts/take-out.js';
import { idFromName } from '../../reading/resolve/resolve-id.js';
import { boardData } from './board-data.js';
import type { PageDocument } from './page-document.js';
import { withNoneLeft, withUnitsLeft } from './todays-wiring.js';
import { listOf, mapOf, type Data } from '../../reading/text/data.js';

type Change = (document: PageDocument) => PageDocument;

/** What the board's text says at a key; undefined where it says nothing. */
export const settingIn = (data: Data, [key, inner]: KeyPath): unknown =>
  inner === undefined ? data[key] : (data[key] as Data | null | undefined)?.[inner];

/** A setting of the board, which goes where it is undefined; the document stays as it is where its text has no room. */
export const withSetting = (path: KeyPath, value: unknown): Change => editing((text) => withValue(text, path, value));

/** What can be owned. */
export type Owned = 'supply' | 'part' | 'battery';

/** One more unit of a supply, one more lead or battery is owned. */
export const owningAnother = (kind: Owned, id: string): Change =>
  kind === 'supply' ? editing((text) => withAppended(text, ['owned', 'supplies'], id)) : owningMore(kind, id, 1);

/** So many more leads or batteries are owned. */
export const owningMore = (kind: Exclude<Owned, 'supply'>, id: string, more: number): Change =>
  editing((text) => withMore(text, { path: counted[kind], id }, more));

/** What the board alone describes goes with the last one of it, so that it can be typed anew. */
export const owningOneLess = (kind: Owned, id: string): Change =>
  editing((text) => {
    const less = kind === 'supply' ? withoutOne(text, id) : withMore(text, { path: counted[kind], id }, -1);
    return less === null || unitsOf(less, kind, id) > 0 ? less : (withoutGear(less, lists[kind], id) ?? less);
  });

/** Where a board counts what is owned, and where it describes what no shop lists. */
const counted = { part: ['owned', 'parts'], battery: ['owned', 'batteries'] } as const;
const lists = { supply: 'supplies', part: 'parts', battery: 'batteries' } as const;

const gearIn = (data: Data, list: string): readonly Data[] => listOf(settingIn(data, ['gear', list])).map(mapOf);

const isCalled = ({ id, name }: Data, called: string): boolean => means(id ?? name, called);

/** It was looked at, and is as was taken. */
export const labelAgrees = (kind: Owned, id: string): Change =>
  editing((text) => {
    const index = gearIn(boardData(text), lists[kind]).findIndex((thing) => isCalled(thing, id));
    return withKeys(text, { list: ['gear', lists[kind]], index }, { assumed: undefined });
  });

/** Files call a thing by its id or its name. */
const means = (called: unknown, id: string): boolean => called === id || idFromName(String(called)) === id;

function unitsOf(text: string, kind: Owned, id: string): number {
  const had = settingIn(boardData(text), ['owned', lists[kind]]);
  if (Array.isArray(had)) return had.filter((one) => means(one, id)).length;
  return Number(Object.entries(mapOf(had)).find(([called]) => means(called, id))?.[1] ?? 0);
}

function withoutOne(text: string, id: string): string | null {
  const list = listOf(settingIn(boardData(text), ['owned', 'supplies']));
  const last = list.findLastIndex((one) => means(one, id));
  const left = list.filter((_, at) => at !== last);
  const units = left.filter((one) => means(one, id)).length;
  return withValue(withUnitsLeft(text, id, units), ['owned', 'supplies'], left);
}

function withoutGear(text: string, list: string, id: string): string | null {
  const data = boardData(text);
  const described = gearIn(data, list);
  const index = described.findIndex((thing) => isCalled(thing, id));
  if (index < 0) return text;
  const unplugged = withNoneLeft(text, id);
  if (described.length > 1) return withoutEntry(unplugged, { list: ['gear', list], index });
  return withValue(unplugged, Object.keys(mapOf(data['gear'])).length > 1 ? ['gear', list] : ['gear'], undefined);
}

type Counted = { readonly path: KeyPath; readonly id: string };

function withMore(text: string, { path, id }: Counted, more: number): string | null {
  const parts = mapOf(settingIn(boardData(text), path));
  const key = Object.keys(parts).find((one) => means(one, id)) ?? id;
  const { [key]: had = 0, ...others } = parts;
  const units = Number(had) + more;
  return withValue(text, path, units > 0 ? { ...parts, [key]: units } : others);
}

const editing =
  (edit: (text: string) => string | null): Change =>
  (document) => {
    const text = edit(document.board.text);
    return text === null || text === document.board.text
      ? document
      : { ...document, board: { ...document.board, text } };
  };

/** What the column of that heading holds; nothing that was said where it is empty. */
export const meaningOf =
  (heading: string, meaning: string): Change =>
  (document) => {
    const { [heading]: _, ...others } = document.meanings;
    return { ...document, meanings: meaning === '' ? others : { ...others, [heading]: meaning } };
  };
