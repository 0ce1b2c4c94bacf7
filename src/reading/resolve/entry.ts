import type { Path, InputKind, Spot } from '../../domain/finding.js';

/**
 * The data of one input file after its schema was applied. What breaks the schema has been reported already and is left
 * out here, so that nothing is complained about twice.
 */
export type Sheet = {
  readonly source: InputKind;
  readonly data: unknown;
  /** The paths of what breaks the schema, by `pathKey`. */
  readonly broken: ReadonlySet<string>;
  /** The same paths and every path on the way to them. */
  readonly brokenWithin: ReadonlySet<string>;
};

/** A map in an input file: those of its fields that are sound, and where it stands. */
export type Entry<Fields> = Spot & {
  readonly fields: Readonly<Partial<Fields>>;
  /** True when the field is there but was reported already. Such a field is not in `fields`, yet it is not missing. */
  readonly isBroken: (field: keyof Fields & string) => boolean;
  /** Where the field stands. */
  readonly spotOf: (field: keyof Fields & string) => Spot;
};

/** A path as the key of a set; different paths have different keys. */
export const pathKey = (path: Path): string => JSON.stringify(path);

/** The map at a path. When it is absent it has no fields; when it is no map at all, each of its fields is broken. */
export function entryAt<Fields>(sheet: Sheet, path: Path): Entry<Fields> {
  const whollyBroken = path.some((_, index) => sheet.broken.has(pathKey(path.slice(0, index + 1))));
  const value = whollyBroken ? undefined : valueAt(sheet.data, path);
  const isBroken = (field: string) => whollyBroken || sheet.brokenWithin.has(pathKey([...path, field]));
  const sound = Object.entries(isRecord(value) ? value : {}).filter(([field]) => !isBroken(field));
  return {
    source: sheet.source,
    path,
    // The schema was applied to the whole sheet, and what breaks it has been filtered out.
    fields: Object.fromEntries(sound) as Partial<Fields>,
    isBroken,
    spotOf: (field) => ({ source: sheet.source, path: [...path, field] }),
  };
}

/** The maps of the list at a path, in order; none when the list is absent or no list at all. */
export function entriesAt<Fields>(sheet: Sheet, path: Path): readonly Entry<Fields>[] {
  const value = sheet.broken.has(pathKey(path)) ? undefined : valueAt(sheet.data, path);
  return Array.isArray(value) ? value.map((_, index) => entryAt<Fields>(sheet, [...path, index])) : [];
}

function valueAt(data: unknown, path: Path): unknown {
  let value = data;
  for (const step of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step)) return undefined;
    value = (value as Readonly<Record<string | number, unknown>>)[step];
  }
  return value;
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
