import type { WiredFeed, WiredInlet } from './board.js';
import type { Kit } from './kit.js';
import { leadNumbers } from './lead-numbers.js';
import { leadTails } from './lead-tails.js';
import { everyFeed, feedMillivolts, type Feed, type Wiring } from './plan.js';
import { isOfOnePedal } from './source.js';
import type { Supply } from './supply.js';

/**
 * How a board is plugged once a plan is carried out, kept places included: each feed with the number of its lead and the letter
 * of its tail, which those that the board file numbers keep.
 */
export function wiredAs(
  kit: Kit,
  plan: Pick<Wiring, 'feeds' | 'inlets'>,
): { readonly wiring: readonly WiredFeed[]; readonly inlets: readonly WiredInlet[] } {
  const feeds = everyFeed(plan);
  const [numbers, tails] = [leadNumbers(kit, feeds), leadTails(kit, feeds)];
  const wired = (feed: Feed): WiredFeed => {
    const { pedal, supply, unit, outputs, join, chain, adapters } = feed;
    const [lead, tail] = [numbers.get(pedal), tails.get(pedal)];
    return {
      ...{ pedal, supply, unit, outputs, millivolts: feedMillivolts(feed), join, chain, adapters },
      ...(lead === undefined ? {} : { lead }),
      ...(tail === undefined ? {} : { tail }),
      ...ownMark(kit.supplies.get(supply)),
    };
  };
  return {
    wiring: plan.feeds.map(wired),
    inlets: plan.inlets.map((feed) => ({ ...wired(feed), inletOf: feed.inletOf })),
  };
}

/** What a board file says in place of output and volts of what belongs to one pedal. */
function ownMark(supply: Supply | undefined): Pick<WiredFeed, 'own' | 'battery'> {
  if (supply === undefined || !isOfOnePedal(supply.source)) return {};
  return supply.source.kind === 'battery' ? { own: true, battery: supply.source.battery } : { own: true };
}
