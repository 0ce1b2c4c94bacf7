import { withAppended, withValue, type KeyPath } from '../../reading/drafts/set-value.js';
import { withKeys } from '../../reading/drafts/set-keys.js';
import { idFromName } from '../../reading/resolve/resolve-id.js';
import { boardData } from './board-data.js';
import type { PageDocument } from './page-document.js';
import { withUnitsLeft } from './todays-wiring.js';
import { mapOf, type Data } from '../../reading/text/data.js';

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
  counting(counted[kind], id, more);

export const owningOneLess = (kind: Owned, id: string): Change =>
  kind === 'supply' ? editing((text) => withoutOne(text, id)) : counting(counted[kind], id, -1);

/** Where a board counts what is owned. */
const counted = { part: ['owned', 'parts'], battery: ['owned', 'batteries'] } as const;

/** Where a board describes the supplies that no shop lists. */
const gear: KeyPath = ['gear', 'supplies'];

const gearIn = (data: Data): readonly Data[] => {
  const stated = settingIn(data, gear);
  return Array.isArray(stated) ? stated.map(mapOf) : [];
};

const isCalled = ({ id, name }: Data, called: string): boolean => means(id ?? name, called);

/** Its label was read, and says what was taken. */
export const labelAgrees = (id: string): Change =>
  editing((text) => {
    const index = gearIn(boardData(text)).findIndex((supply) => isCalled(supply, id));
    return withKeys(text, { list: gear, index }, { assumed: undefined });
  });

/** Files call a thing by its id or its name. */
const means = (called: unknown, id: string): boolean => called === id || idFromName(String(called)) === id;

function withoutOne(text: string, id: string): string | null {
  const had = settingIn(boardData(text), ['owned', 'supplies']);
  const list = Array.isArray(had) ? (had as readonly unknown[]) : [];
  const last = list.findLastIndex((one) => means(one, id));
  const left = list.filter((_, at) => at !== last);
  const units = left.filter((one) => means(one, id)).length;
  return withValue(withUnitsLeft(text, id, units), ['owned', 'supplies'], left);
}

const counting = (path: KeyPath, id: string, more: number): Change =>
  editing((text) => {
    const had = settingIn(boardData(text), path);
    const parts = (typeof had === 'object' && had !== null ? had : {}) as Readonly<Record<string, number>>;
    const key = Object.keys(parts).find((one) => means(one, id)) ?? id;
    return withValue(text, path, { ...parts, [key]: Math.max(0, (parts[key] ?? 0) + more) });
  });

const editing =
  (edit: (text: string) => string | null): Change =>
  (document) => {
    const text = edit(document.board.text);
    return text === null ? document : { ...document, board: { ...document.board, text } };
  };

/** What the column of that heading holds; nothing that was said where it is empty. */
export const meaningOf =
  (heading: string, meaning: string): Change =>
  (document) => {
    const { [heading]: _, ...others } = document.meanings;
    return { ...document, meanings: meaning === '' ? others : { ...others, [heading]: meaning } };
  };
