/** What a file says, by its keys, before anybody has judged it. */
export type Data = Readonly<Record<string, unknown>>;

/** A value as a map; an empty one where it is none. */
export const mapOf = (value: unknown): Data =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Data) : {};

/** A value as a list; an empty one where it is none. */
export const listOf = (value: unknown): readonly unknown[] =>
  Array.isArray(value) ? (value as readonly unknown[]) : [];
