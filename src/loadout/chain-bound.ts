/**
 * How much a chain can be worth at the most, by prices on load and on places ("Lagrangian relaxation for integer
 * programming", 1974): for any λ, μ ≥ 0 a chain of at most K pedals within a load of L is worth no more than
 * λL + μK + Σ max(0, value − λ · load − μ). All of it in whole numbers.
 */

/** Pedals that may hang on a chain, each copy by itself, as plain numbers. */
export type Sack = { readonly values: readonly number[]; readonly loads: readonly number[] };

/** The prices under which pedals of a sack on so many tails are worth the least, and what that is; the lead is not paid. */
export type ChainBound = {
  readonly bound: number;
  readonly perLoad: number;
  readonly perPedal: number;
};

/**
 * The least bound of whole prices, or one that is no more than enough. For a price of load that of places follows: what is
 * left of the last pedal that still finds one. So the bound is a convex function of one price, made of straight pieces:
 * where those at both ends of a bracket meet is looked at next.
 */
export function chainBound(sack: Sack, room: number, tails: number, enough: number): ChainBound {
  let low = boundAt(sack, room, tails, 0);
  if (low.load <= room) return low;
  let best = low;
  // With a price high enough nothing is picked.
  let high: Pick<Picked, 'perLoad' | 'value' | 'load'> = { perLoad: Infinity, value: 0, load: 0 };
  while (best.bound > enough) {
    const meeting = Math.floor((low.value - high.value) / (low.load - high.load));
    const perLoad = Math.max(meeting, low.perLoad + 1);
    if (perLoad >= high.perLoad) return best;
    const now = boundAt(sack, room, tails, perLoad);
    if (now.bound < best.bound) best = now;
    if (now.load > room) low = now;
    else high = now;
  }
  return best;
}

/** What is picked under prices, and what it comes to. */
type Picked = ChainBound & { readonly value: number; readonly load: number };

/** Where what is picked is kept while it is being picked: this is asked for so often that getting memory would take longer. */
const slate = { nets: new Float64Array(16), picked: new Int32Array(16) };

function slateFor(tails: number): typeof slate {
  if (slate.nets.length < tails) {
    slate.nets = new Float64Array(2 * tails);
    slate.picked = new Int32Array(2 * tails);
  }
  return slate;
}

/** The bound at a price of load: as many pedals as there are tails, those of which most is left when load is paid. */
function boundAt({ values, loads }: Sack, room: number, tails: number, perLoad: number): Picked {
  const { nets, picked } = slateFor(tails);
  let count = 0;
  let least = 0;
  for (let index = 0; index < values.length; index += 1) {
    const net = (values[index] ?? 0) - perLoad * (loads[index] ?? 0);
    if (net <= least) continue;
    if (count < tails) count += 1;
    insert(net, index, nets, picked, count);
    if (count === tails) least = nets[tails - 1] ?? 0;
  }
  let [bound, value, load] = [perLoad * room, 0, 0];
  for (let at = 0; at < count; at += 1) {
    const index = picked[at] ?? 0;
    bound += nets[at] ?? 0;
    value += values[index] ?? 0;
    load += loads[index] ?? 0;
  }
  return { bound, value, load, perLoad, perPedal: least };
}

/** Puts a pedal in its place among those picked, the largest net first; the last one of so many gives way. */
function insert(net: number, index: number, nets: Float64Array, picked: Int32Array, count: number): void {
  let at = count - 1;
  for (; at > 0 && (nets[at - 1] ?? 0) < net; at -= 1) {
    nets[at] = nets[at - 1] ?? 0;
    picked[at] = picked[at - 1] ?? 0;
  }
  nets[at] = net;
  picked[at] = index;
}
