/** Between a lead that leaves an output and another one that reaches a pedal, so that neither seems to go on as the other. */
const apart = 3.2;
const step = 0.5;
/** How far a number on a lead has to be able to go up and down beside its pedal for a free height to be there. */
export const leastReach = apart + step;

/**
 * The height at which a lead comes into a pedal, at most `reach` from its middle: that of its own output where it is near, so
 * that the lead is straight; else the nearest to the middle that is not the height of any output. `sockets` are all outputs
 * in use, which are far enough apart to leave such a height.
 */
export function plugHeight(middle: number, reach: number, own: readonly number[], sockets: readonly number[]): number {
  const [only] = own;
  if (own.length === 1 && only !== undefined && Math.abs(only - middle) <= reach) return only;
  for (let away = 0; away <= reach; away += step) {
    const free = [middle - away, middle + away].find((y) => sockets.every((socket) => Math.abs(socket - y) >= apart));
    if (free !== undefined) return free;
  }
  return middle;
}
