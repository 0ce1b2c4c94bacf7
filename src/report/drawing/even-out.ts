/** A thing that would like its top to be somewhere; `weight` 0 does not care. */
export type Wish = { readonly top: number; readonly weight: number; readonly height: number };

/**
 * Tops of things one below the other, `gap` apart at least, between 0 and `bottom`, as near to where they would like to be as
 * can be (the least sum of squares, by pooling those that push one another). @throws RangeError when there is too little room.
 */
export function evenOut(wishes: readonly Wish[], gap: number, bottom: number): readonly number[] {
  const offsets: number[] = [];
  let needed = 0;
  for (const { height } of wishes) {
    offsets.push(needed);
    needed += height + gap;
  }
  const slack = bottom - Math.max(0, needed - gap);
  if (slack < -0.001) throw new RangeError(`no room for things of ${needed - gap} within ${bottom}`);
  const shifts = rising(wishes.map(({ top, weight }, at) => ({ value: top - (offsets[at] ?? 0), weight })));
  return offsets.map((offset, at) => offset + Math.min(Math.max(shifts[at] ?? 0, 0), Math.max(slack, 0)));
}

type Weighed = { readonly value: number; readonly weight: number };

/** The numbers that never fall and are nearest to the values. */
function rising(values: readonly Weighed[]): readonly number[] {
  const pools: { value: number; weight: number; count: number }[] = [];
  for (const { value, weight } of values) {
    let pool = { value, weight: weight + negligible, count: 1 };
    for (let last = pools.at(-1); last !== undefined && last.value >= pool.value; last = pools.at(-1)) {
      pools.pop();
      const both = last.weight + pool.weight;
      const mean = (last.value * last.weight + pool.value * pool.weight) / both;
      pool = { value: mean, weight: both, count: last.count + pool.count };
    }
    pools.push(pool);
  }
  return pools.flatMap(({ value, count }) => Array.from({ length: count }, () => value));
}

/** So that what does not care has a place of its own where nothing else decides. */
const negligible = 0.0001;
