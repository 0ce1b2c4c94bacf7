import { audit } from '../../audit/audit.js';
import { banksOf, type Kit } from '../../domain/kit.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import { everyFeed, type Feed } from '../../domain/plan.js';
import type { PartId, PedalId } from '../../domain/quantities.js';
import type { Violation } from '../../domain/violation.js';
import { adapterShapes, availabilityOf } from '../check/lead-pieces.js';
import { cheapestWays } from '../check/lead-ways.js';
import { worstFirst } from '../check/severity.js';
import type { TodaysWiring } from '../today/todays-wiring.js';
import { wiredPolarity } from '../today/wired-readings.js';
import { isSameOutlet, meet } from './places.js';

export type Replugging = {
  readonly kit: Kit;
  /** How everything is plugged today. */
  readonly today: TodaysWiring;
  /** The plan. */
  readonly wiring: JudgedPlan;
};

/** What comes of putting pedals back where they are today, with whoever took their outputs taken off. */
export type PutBack = {
  /** Those taken off. */
  readonly takers: readonly Feed[];
  /** The worst first. */
  readonly violations: readonly Violation[];
  /** More than the plan asks for, in minor units. */
  readonly money: number;
  /** Supplies in use beyond the plan's, where the policy counts them as money. */
  readonly supplies: number;
  /** Exposed neither today nor in the plan. */
  readonly exposed: readonly PedalId[];
};

/** The best that comes of it, for the leads may be laid in several ways. `group` is as plugged today. */
export function putBack(of: Replugging, group: readonly Feed[]): PutBack {
  const others = everyFeed(of.wiring).filter(({ pedal }) => !group.some((back) => back.pedal === pedal));
  const near = others.filter((feed) => group.some((back) => meet(feed, back)));
  const company = near.flatMap((inPlan) => {
    const before = of.today.feeds.find(({ pedal }) => pedal === inPlan.pedal);
    const stays =
      before !== undefined && isSameOutlet(before, inPlan) && group.some((back) => isSameOutlet(back, before));
    return stays ? [{ inPlan, before }] : [];
  });
  const takers = near.filter((feed) => !company.some(({ inPlan }) => inPlan === feed));
  const rest = others.filter((feed) => !near.includes(feed));
  const chains = new Set(company.flatMap(({ inPlan }) => inPlan.chain ?? []));
  const hangings = [
    [...group, ...company.map(({ before }) => before)],
    ...[...chains].map((chain) => [
      ...group.map((back) => ({ ...back, chain })),
      ...company.map(({ inPlan }) => inPlan),
    ]),
  ];
  return hangings
    .map((hung) => judged(of, takers, withoutLonelyChains([...rest, ...hung], of.kit)))
    .reduce((best, next) => (isBetter(next, best) ? next : best));
}

/** Whoever is left alone on an output takes no chain lead, but the cheapest leads that are left. */
function withoutLonelyChains(feeds: readonly Feed[], kit: Kit): readonly Feed[] {
  return feeds.reduce<readonly Feed[]>((all, feed) => {
    const others = all.filter(({ pedal }) => pedal !== feed.pedal);
    const isLonely = feed.chain !== null && !others.some((other) => isSameOutlet(other, feed));
    return isLonely ? [...others, aloneOn(feed, others, kit)] : all;
  }, feeds);
}

function aloneOn(feed: Feed, others: readonly Feed[], kit: Kit): Feed {
  const pedals = kit.board.pedals.filter(({ id }) => id === feed.pedal);
  const wanted = pedals[0]?.polarity ?? null;
  const [bank] = banksOf(kit, feed);
  if (bank === undefined) return feed;
  // Where a switch may wait for the label, plus and minus come out right by themselves.
  const bySwitch = wanted === 'unknown' ? null : wanted;
  const offered = bank.polarity === 'either' ? bySwitch : bank.polarity;
  const shapes = adapterShapes(kit, availabilityOf(kit.board.owned, others), 2);
  const [adapters = []]: readonly (readonly PartId[])[] = cheapestWays(
    { plug: bank.plug, polarity: offered },
    pedals,
    shapes,
  ).adapters;
  const alone = { ...feed, chain: null, adapters };
  return { ...alone, ...wiredPolarity(alone, offered, kit) };
}

function judged({ kit, today, wiring }: Replugging, takers: readonly Feed[], feeds: readonly Feed[]): PutBack {
  const report = audit(kit.board, kit.catalogue, feeds, { partial: true });
  const exposed = new Set([...today.report.wiring.exposed, ...wiring.exposed]);
  return {
    takers,
    violations: worstFirst(report.violations),
    money: report.wiring.score.money - wiring.score.money,
    supplies: kit.board.policy.supplyPrice === 0 ? 0 : report.wiring.score.bricks - wiring.score.bricks,
    exposed: report.wiring.exposed.filter((pedal) => !exposed.has(pedal)),
  };
}

const isBetter = (one: PutBack, other: PutBack): boolean =>
  one.violations.length < other.violations.length ||
  (one.violations.length === other.violations.length &&
    one.money + one.exposed.length < other.money + other.exposed.length);
