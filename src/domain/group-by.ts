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

/** Neighbours together: each goes into the run before it where it goes on with that. */
export function runsOf<Item>(
  items: readonly Item[],
  goesOn: (run: readonly [Item, ...Item[]], next: Item) => boolean,
): readonly [Item, ...Item[]][] {
  const runs: [Item, ...Item[]][] = [];
  for (const item of items) {
    const run = runs.at(-1);
    if (run !== undefined && goesOn(run, item)) run.push(item);
    else runs.push([item]);
  }
  return runs;
}
