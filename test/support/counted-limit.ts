/** Far more asks than a search needs that does not get stuck in a small random case. */
export const mostAsks = 4_000;

/**
 * A limit for a search that is counted instead of timed, so that it ends at the same place on every machine: so often may
 * the search ask how much time is left.
 * @param left what is answered until then, in milliseconds
 */
export function askedAtMost(asks: number, left = Infinity): () => number {
  let open = asks;
  return () => ((open -= 1) >= 0 ? left : 0);
}
