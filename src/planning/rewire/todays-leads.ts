import type { Kit } from '../../domain/kit.js';
import { compareScores } from '../../domain/aim.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import { everyFeed, type Feed } from '../../domain/plan.js';
import { isSameFeed, isSameOutlet, isSamePlace } from './places.js';
import { auditedIfSound, type Judging } from '../asking/audited.js';

/**
 * The plan with today's leads at the pedals that stay, wherever that is worth as much under the aim `moves`: a search counts
 * leads, and of like ones it takes any.
 */
export function withTodaysLeads(
  wiring: JudgedPlan,
  today: readonly Feed[],
  { kit, partial }: Omit<Judging, 'moves'>,
): JudgedPlan {
  const before = new Map(today.map((feed) => [feed.pedal, feed]));
  const changed = everyFeed(wiring).filter((feed) => {
    const old = before.get(feed.pedal);
    return old !== undefined && isSamePlace(old, feed) && !isSameFeed(old, feed);
  });
  const outlets = changed.filter((feed, at) => changed.findIndex((other) => isSameOutlet(other, feed)) === at);
  const restored = (from: JudgedPlan, at: readonly Feed[]): JudgedPlan => {
    const feeds = everyFeed(from).map((feed) => restoredFeed(feed, at, before, from.feeds));
    const next = auditedIfSound({ kit, partial, moves: true }, feeds);
    return next !== null && isAsGood(next, from, kit) ? next : from;
  };
  const all = restored(wiring, outlets);
  return all === wiring ? outlets.reduce((best, outlet) => restored(best, [outlet]), wiring) : all;
}

/** Today's feed of a pedal that stays on one of the outlets; whoever comes to a chain there hangs on today's chain lead. */
function restoredFeed(
  feed: Feed,
  outlets: readonly Feed[],
  before: ReadonlyMap<Feed['pedal'], Feed>,
  plan: readonly Feed[],
): Feed {
  const outlet = outlets.find((each) => isSameOutlet(each, feed));
  if (outlet === undefined) return feed;
  const old = before.get(feed.pedal);
  if (old !== undefined && isSamePlace(old, feed)) return old;
  const resident = plan.find((each) => isSameOutlet(each, feed) && before.has(each.pedal) && each !== feed);
  const chain = resident === undefined ? null : (before.get(resident.pedal)?.chain ?? null);
  return { ...feed, chain: chain ?? feed.chain };
}

const isAsGood = (next: JudgedPlan, plan: JudgedPlan, { board }: Kit): boolean =>
  compareScores(next.score, plan.score, 'moves', board.policy) <= 0;
