/** Things with the same key together: the groups in the order of their first members, each in the order of all. */
export function groupBy<Item>(
  items: readonly Item[],
  keyOf: (item: Item, at: number) => string,
): readonly [Item, ...Item[]][] {
  const groups = new Map<string, [Item, ...Item[]]>();
  for (const [at, item] of items.entries()) {
    const key = keyOf(item, at);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [item]);
    else group.push(item);
  }
  return [...groups.values()];
}
