/** All subsets, the empty one first. */
export const subsetsOf = <Item>(items: readonly Item[]): readonly (readonly Item[])[] =>
  items.reduce<readonly (readonly Item[])[]>((all, item) => [...all, ...all.map((each) => [...each, item])], [[]]);
