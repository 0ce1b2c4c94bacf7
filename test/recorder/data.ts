/** Data that may be of any shape: what is not there is undefined or empty, and nothing ever throws. */

export type Data = Readonly<Record<string, unknown>>;

const isData = (value: unknown): value is Data => typeof value === 'object' && value !== null && !Array.isArray(value);

export const valueAt = (value: unknown, key: string): unknown => (isData(value) ? value[key] : undefined);

export const textAt = (value: unknown, key: string): string | undefined => {
  const found = valueAt(value, key);
  return typeof found === 'string' ? found : undefined;
};

export const list = (value: unknown): readonly unknown[] => (Array.isArray(value) ? (value as unknown[]) : []);

export const listAt = (value: unknown, key: string): readonly unknown[] => list(valueAt(value, key));

/** Those of the keys that are there. */
export const picked = (value: unknown, ...keys: readonly string[]): Data =>
  Object.fromEntries(keys.map((key) => [key, valueAt(value, key)] as const).filter(([, found]) => found !== undefined));

/** Without what is empty or undefined, so that a line says what there is. */
export const filled = (data: Data): Data =>
  Object.fromEntries(
    Object.entries(data).filter(([, value]) => value !== undefined && !(Array.isArray(value) && value.length === 0)),
  );

/** In an order that depends on nothing but what they are. */
export const sorted = (values: readonly unknown[]): readonly unknown[] =>
  [...values].sort((one, other) => (JSON.stringify(one) < JSON.stringify(other) ? -1 : 1));

export const unique = (values: readonly unknown[]): readonly unknown[] => sorted([...new Set(values)]);

/** What a text says as JSON; undefined when it is none. */
export function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}
