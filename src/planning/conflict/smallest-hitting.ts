/** What has been decided of a class: that so many are chosen, and that no more than so many are. */
type Range = { readonly least: number; readonly most: number };

/** After so many cases the search is given up: with few plans to hit it takes some dozen. */
const mostCases = 20_000;

/**
 * The smallest set of pedals, counted by class, that asks of every known plan for at least one pedal more than it powers:
 * minimise Σ chosen(k) subject to, for every plan p, chosen(k) > powered(p, k) for some k. `none` when no such set has fewer
 * than `fewer` pedals; `unknown` when the search was given up.
 */
export function smallestHitting(
  members: readonly number[],
  plans: readonly (readonly number[])[],
  fewer: number,
): readonly number[] | 'none' | 'unknown' {
  let best = null as readonly number[] | null;
  let size = fewer;
  let cases = 0;
  /** Of a plan that is not hit yet, the first class that hits it is the first, the second, …: each is a case of its own. */
  const descend = (ranges: readonly Range[]): void => {
    if ((cases += 1) > mostCases) return;
    const open = plans.filter((powered) => !isHit(powered, ranges)).map((powered) => waysToHit(powered, ranges));
    const chosen = ranges.map(({ least }) => least);
    const sum = chosen.reduce((total, count) => total + count, 0);
    if (sum + needed(open) >= size) return;
    const [ways] = open.sort((one, other) => one.length - other.length);
    if (ways === undefined) {
      best = chosen;
      size = sum;
      return;
    }
    let left = ranges;
    for (const { index, least } of ways) {
      descend(left.with(index, { least, most: left[index]?.most ?? least }));
      left = left.with(index, { least: left[index]?.least ?? 0, most: least - 1 });
    }
  };
  descend(members.map((most) => ({ least: 0, most })));
  if (cases > mostCases) return 'unknown';
  return best ?? 'none';
}

/** To choose so many of a class at least. */
type Way = { readonly index: number; readonly least: number; readonly more: number };

const isHit = (powered: readonly number[], ranges: readonly Range[]): boolean =>
  ranges.some(({ least }, index) => least > (powered[index] ?? 0));

const waysToHit = (powered: readonly number[], ranges: readonly Range[]): readonly Way[] =>
  ranges.flatMap(({ least, most }, index) => {
    const enough = (powered[index] ?? 0) + 1;
    return enough <= most ? [{ index, least: enough, more: enough - least }] : [];
  });

/** How many more are needed at the least: plans that no class can hit together need theirs each. */
function needed(open: readonly (readonly Way[])[]): number {
  const seen = new Set<number>();
  let sum = 0;
  for (const ways of [...open].sort((one, other) => one.length - other.length)) {
    if (ways.some(({ index }) => seen.has(index))) continue;
    for (const { index } of ways) seen.add(index);
    sum += Math.min(...ways.map(({ more }) => more));
  }
  return sum;
}
