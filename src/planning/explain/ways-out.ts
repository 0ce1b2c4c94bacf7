import type { PedalId } from '../../domain/quantities.js';
import type { Effort } from '../../formulation/optimiser.js';
import type { Kit } from '../../domain/kit.js';
import type { Conflict } from '../conflict/conflict.js';
import { sameFact, type Fact } from '../conflict/facts.js';
import { demandWay, type DemandName } from './demand-ways.js';
import { limitNames, type LimitName } from '../limit-names.js';
import { limitsWay, limitWay } from './limit-ways.js';
import { withPolicy } from '../../domain/changed-kit.js';
import { missingBatteries } from './missing-battery.js';
import { missingFeeds } from './missing-feed.js';
import { missingLeads } from './missing-lead.js';
import { missingSupplies } from './missing-supply.js';
import { fewestLeftOut, pedalWays } from './pedal-ways.js';
import { pricedWays } from './priced-ways.js';
import { stockWay } from './stock-ways.js';
import { within } from '../asking/within.js';
import { unownedWay } from './unowned-way.js';
import { noWays, together, waysFor, wayWith, type Ways } from './way-out.js';

/** How long one kind of way out is sought, in milliseconds; on boards of usual size it takes a fraction of that. */
const patienceMs = 4_000;

/**
 * What would have to be otherwise for a plan to exist: what is plugged but not owned first, then money and limits, then leads,
 * supplies and batteries to look for, then the reserves and what has to last, then pedals to do without. Whatever is part of
 * no conflict that was found helps nobody, so it is not tried; and where there are several conflicts, only what is part of
 * them all does.
 */
export async function waysOut(conflicts: readonly Conflict[], kit: Kit, effort: Effort): Promise<Ways> {
  const limited = (look: (effort: Effort) => Promise<Ways>): Promise<Ways> => within(patienceMs, effort, look);
  const facts = sharedFacts(conflicts);
  const pedals = sharedPedals(conflicts);
  const each = (wanted: (fact: Fact) => Promise<Ways>): Promise<Ways> => waysFor(facts, wanted);
  const unowned = await limited((each) => unownedWay(kit, each));
  const policy = [
    await each(async (fact) => {
      const { kind } = fact;
      return isLimit(kind) ? limited((each) => limitWay(kind, kit, each)) : noWays;
    }),
    await each(async (fact) => (fact.kind === 'chains' ? limited((each) => chainsWay(kit, each)) : noWays)),
    await each(async (fact) => (fact.kind === 'stock' ? limited((each) => stockWay(fact, kit, each)) : noWays)),
  ];
  const demands = await each(async (fact) => {
    const demand = demandOfFact[fact.kind];
    return demand === undefined ? noWays : limited((each) => demandWay(demand, kit, each));
  });
  const single = await limited((each) => pedalWays(pedals, kit, each));
  const alone = kit.board.pedals.length === 1;
  const replaced = alone
    ? pedals
    : single.ways.flatMap(({ change }) => (change.kind === 'pedal' ? change.pedals.slice(0, 1) : []));
  const supplies = await limited((each) => missingSupplies(replaced, kit, each));
  const batteries = await limited((each) => missingBatteries(replaced, kit, each));
  const feeds = await limited((each) => missingFeeds(kit, each));
  const leads = await limited((each) => missingLeads(kit, each));
  const isOpen = [...policy, demands].every(({ ways }) => ways.length === 0);
  // A conflict that no limit takes part in stays whatever the limits are.
  const isByLimits = conflicts.every(({ facts: its }) => its.some(({ kind }) => isLimit(kind)));
  const joint = isOpen && isByLimits ? await limited((each) => limitsWay(kit, each)) : noWays;
  const few = single.ways.length === 0 ? await limited((each) => fewestLeftOut(kit, each)) : noWays;
  return pricedWays(
    together([unowned, ...policy, joint, leads, supplies, feeds, batteries, demands, single, few]),
    effort,
  );
}

const isLimit = (kind: Fact['kind']): kind is LimitName => limitNames.some((name) => name === kind);

const demandOfFact: Partial<Readonly<Record<Fact['kind'], DemandName>>> = {
  'headroom alone': 'alone',
  'headroom chained': 'chained',
  'headroom supply': 'supply',
  guess: 'guess',
  runtime: 'bank',
  battery: 'battery',
};

const chainsWay = async (kit: Kit, effort: Effort): Promise<Ways> =>
  wayWith({ kind: 'chains' }, withPolicy(kit, { chains: 'allow' }), effort);

/** What takes part in every conflict. */
const sharedFacts = ([first, ...others]: readonly Conflict[]): readonly Fact[] =>
  (first?.facts ?? []).filter((fact) => others.every(({ facts }) => facts.some((other) => sameFact(fact, other))));

const sharedPedals = ([first, ...others]: readonly Conflict[]): readonly PedalId[] =>
  (first?.pedals ?? []).filter((pedal) => others.every(({ pedals }) => pedals.includes(pedal)));
