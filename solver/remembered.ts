type Known<Key, Value> = {
  readonly get: (key: Key) => Value | undefined;
  readonly set: (key: Key, value: Value) => unknown;
};

/** What is known under a key; made where it is not, and known from then on. */
export function remembered<Key, Value>(known: Known<Key, Value>, key: Key, make: () => Value): Value {
  const found = known.get(key);
  if (found !== undefined) return found;
  const made = make();
  known.set(key, made);
  return made;
}
