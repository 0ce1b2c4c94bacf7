import { isMap, isSeq } from 'yaml';

import { appending, mapIn, pairOf, settingKey, valueText, withEdits, type Edit } from '../text/text-edits.js';

/** What is owned from now on beyond what the file says. */
export type Acquired = {
  /** Ids, one a unit. */
  readonly supplies: readonly string[];
  /** How many there are of each part or battery, with what was there. The file may call a part by its name, too. */
  readonly parts: readonly {
    readonly list: 'parts' | 'batteries';
    readonly id: string;
    readonly name: string;
    readonly count: number;
  }[];
};

/** The text of a board file with what was bought under `owned`, all else as it is. */
export function withOwned(text: string, { supplies, parts }: Acquired): string {
  const stocked = supplies.length === 0 ? text : withEdits(text, [suppliesEdit(text, supplies)]);
  return parts.reduce((edited, part) => withEdits(edited, [partEdit(edited, part)]), stocked);
}

function suppliesEdit(text: string, supplies: readonly string[]): Edit {
  const { root, owned, json, written } = ownedIn(text);
  if (owned === null) return settingKey(text, { map: root, key: 'owned', json }, written({ supplies }));
  const list = pairOf(owned, 'supplies')?.value ?? null;
  if (!isSeq(list) || list.items.length === 0)
    return settingKey(text, { map: owned, key: 'supplies', json }, written(supplies));
  return appending(text, list, supplies.map(written));
}

function partEdit(text: string, { list, id, name, count }: Acquired['parts'][number]): Edit {
  const { root, owned, json, written } = ownedIn(text);
  if (owned === null) return settingKey(text, { map: root, key: 'owned', json }, written({ [list]: { [id]: count } }));
  const parts = pairOf(owned, list)?.value ?? null;
  if (!isMap(parts)) return settingKey(text, { map: owned, key: list, json }, written({ [id]: count }));
  const map = parts;
  const key = pairOf(map, id) === null && pairOf(map, name) !== null ? name : id;
  return settingKey(text, { map, key, json }, String(count));
}

function ownedIn(text: string) {
  const root = mapIn(text);
  const json = root.flow === true;
  const owned = pairOf(root, 'owned')?.value ?? null;
  const written = (value: unknown): string => valueText(value, json);
  return { root, json, written, owned: isMap(owned) ? owned : null };
}
