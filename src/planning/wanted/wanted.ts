import { cheapestTiers, compareByTiers } from '../../domain/aim.js';
import { withBoard, withGear } from '../../domain/changed-kit.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Kit } from '../../domain/kit.js';
import type { Part } from '../../domain/part.js';
import { compareExact, exactly, loadAt, scaled, sum, type Exact } from '../../domain/load.js';
import { everyFeed, feedMillivolts, leadsOf, type Feed, type InletFeed } from '../../domain/plan.js';
import type { Microamps, MilliwattHours, PartId, PedalId } from '../../domain/quantities.js';
import { natureOf } from '../../domain/source.js';
import type { Effort } from '../../formulation/optimiser.js';
import type { Answer } from '../answer.js';
import { ask, type Ask } from '../asking/ask.js';
import { audited } from '../asking/audited.js';
import { effortOf, type SearchOptions } from '../asking/search-options.js';
import { choose, type ChooseOptions } from '../choose/choose.js';
import { unownedReason, type UnownedReason } from '../choose/unowned.js';
import { chargeFor } from '../explain/missing-supply.js';
import { quickPlans } from '../choose/first-plans.js';
import { changesOf, type Changes } from '../rewire/changes.js';
import { termsOf } from '../rewire/rewire-terms.js';
import { withTodaysLeads } from '../rewire/todays-leads.js';
import { todaysWiring, type TodaysWiring } from '../today/todays-wiring.js';
import { isOnWanted, outputsOf, withFound, withoutOutput, type WantedOutputs } from './found-outputs.js';
import { kitWithBatteries, madeUpKit, ownedInlets, type BatteriesFor, type MadeUpKit } from './made-up-kit.js';
import { wholeMilliamps } from './needs.js';

/** Leads of one kind to look for. */
export type WantedLead = {
  /** Its id stands in the feeds; it has no price. */
  readonly lead: Part;
  readonly units: number;
  /** Those that it goes to, in the order of the board; ids of inlets stand among them. */
  readonly pedals: readonly PedalId[];
};

/** Batteries to look for, for one pedal. */
export type WantedBatteries = Omit<BatteriesFor, 'set'> & {
  /** How many are paid for. */
  readonly units: number;
};

/** What to look for, where nothing is for sale and what is owned is not enough. */
export type Wanted = {
  readonly kind: 'wanted';
  /**
   * Whether no fewer outputs do beside what is owned, no as many with fewer milliamps in all, and none of those with fewer leads
   * to look for. Else it is the best that was found before the time ran out.
   */
  readonly isProven: boolean;
  /** Isolated, regulated outputs, each for one pedal by itself. */
  readonly outputs: readonly WantedOutputs[];
  readonly leads: readonly WantedLead[];
  /** Where neither a socket nor a power bank is to be had. */
  readonly batteries: readonly WantedBatteries[];
  /** What a power bank with all of them must hold at least, where no socket is left for them; null where they stand on mains. */
  readonly charge: MilliwattHours | null;
  /** Leads that are plugged today and not owned, with which there would be a plan without anything to look for. */
  readonly unowned: UnownedReason | null;
  /** Mains sockets: those that the owned supplies in use take, and with them the least and the most that all takes. */
  readonly sockets: { readonly owned: number; readonly least: number; readonly most: number };
  /** The board as if the leads to look for were there, and the outputs that inlets hang on. */
  readonly kit: Kit;
  /** What owned supplies hang on that is owned as well; others hang on outputs to look for. */
  readonly inlets: readonly InletFeed[];
  /** What is owned feeds these pedals, audited; the others are those that outputs are looked for. */
  readonly installed: JudgedPlan;
  /** How every pedal is fed then, those on outputs to look for from a supply that there is not. */
  readonly feeds: readonly Feed[];
  /** Those of them on outputs to look for that take more than the output's own lead. */
  readonly ledThere: readonly Feed[];
  /** What is changed of how the board is plugged today, where as little as may be was to change; absent where nobody asked. */
  readonly changes?: Changes;
  /** What one supply with all those outputs must give in all, where it states a total: headroom and switch-on counted. */
  readonly together: Microamps;
};

/**
 * `choose` for a board without a catalogue: a plan with what is owned, else what to look for. What is owned answers alone where a
 * plan may be partial. What to look for is proven the least, or the best that was found in time. Impossible where not even outputs made for the pedals would do, such as without a mains socket.
 * @throws Error when a plan fails its own audit: a defect of boardfeed, never of the input.
 */
export async function chooseOrSeek(kit: Kit, options: ChooseOptions = {}): Promise<Answer | Wanted> {
  const { aim = 'cost', partial = false } = options;
  if (kit.catalogue !== null || partial) return choose(kit, options);
  const { onProgress: _progress, ...effort } = effortOf(options);
  const owned = await ask(kit, { tiers: [] }, effort);
  const answer = owned.kind === 'impossible' ? null : await choose(kit, options);
  if (answer !== null && answer.kind !== 'stopped') return answer;
  const sought = await soughtFor(kit, null, effort);
  return sought === null ? (answer ?? choose(kit, options)) : sought === 'unknown' ? { kind: 'stopped', aim } : sought;
}

/**
 * What to look for where a board that is plugged has not enough and nothing is for sale: the same list, with as few moves from
 * today's wiring as it allows. Null where nothing that could be looked for would do.
 * @throws Error when a plan fails its own audit: a defect of boardfeed, never of the input.
 */
export async function seekAsPlugged(kit: Kit, options: SearchOptions = {}): Promise<Wanted | null | 'unknown'> {
  const { onProgress: _progress, ...effort } = effortOf(options);
  return soughtFor(kit, todaysWiring(kit), effort);
}

async function soughtFor(kit: Kit, plugged: TodaysWiring | null, effort: Effort): Promise<Wanted | null | 'unknown'> {
  const seekIn = (made: MadeUpKit | null) => seek(kit, made, plugged, effort);
  const onMains = await seekIn(madeUpKit(kit, 'mains'));
  const onBanks = onMains ?? (await seekIn(madeUpKit(kit, 'charge')));
  const sought = onBanks ?? (await seekIn(kitWithBatteries(kit)));
  if (sought === null || sought === 'unknown') return sought;
  return { ...sought, unowned: await unownedReason(kit, effort) };
}

/** What to look for, whatever is plugged today. */
type Sought = Omit<Wanted, 'unowned'>;

/** Null when nothing that could be looked for would do. */
async function seek(
  bare: Kit,
  made: MadeUpKit | null,
  plugged: TodaysWiring | null,
  effort: Effort,
): Promise<Sought | null | 'unknown'> {
  if (made === null) return null;
  const asked: Ask =
    plugged === null
      ? { tiers: cheapestTiers }
      : { tiers: ['money', 'moved', 'exposed', 'parts'], today: termsOf(made.kit, plugged, {}).today };
  const solved = await ask(made.kit, asked, effort);
  if (solved.kind === 'impossible') return null;
  if (solved.kind === 'plan' && plugged !== null) {
    const wiring = withTodaysLeads(solved.wiring, plugged.feeds, { kit: made.kit, partial: false });
    return withChanges(wantedOf(wiring, made, bare, true), plugged);
  }
  if (solved.kind === 'plan') return wantedOf(solved.wiring, made, bare, true);
  const best = leastOf([...solved.plans, ...quickPlans(made.kit, asked)], bare);
  // With nothing to look for what is owned would be enough: that is another answer, which nobody has shown.
  return best === null || best.score.money === 0 ? 'unknown' : wantedOf(best, made, bare, false);
}

/** Of what hangs on nothing to look for: of the rest nobody knows yet how it is plugged. */
const withChanges = (sought: Sought, plugged: TodaysWiring): Sought =>
  sought.installed.inlets.some(isOnWanted)
    ? sought
    : { ...sought, changes: changesOf(sought.kit, plugged, sought.installed) };

const leastOf = (plans: readonly JudgedPlan[], { board: { policy } }: Kit): JudgedPlan | null =>
  plans.reduce<JudgedPlan | null>(
    (best, plan) => (best !== null && compareByTiers(best.score, plan.score, cheapestTiers, policy) <= 0 ? best : plan),
    null,
  );

function wantedOf(plan: JudgedPlan, made: MadeUpKit, bare: Kit, isProven: boolean): Sought {
  const leads = plan.buy.parts.flatMap(({ id, units }) => {
    const lead = made.leads.get(id);
    return lead === undefined ? [] : [{ lead: unpriced(lead), units, pedals: pedalsOf(everyFeed(plan), id) }];
  });
  const batteries = plan.buy.parts.flatMap(({ id, units }) => {
    const found = made.batteries.get(id);
    return found === undefined ? [] : [{ ...found, battery: unpriced(found.battery), units }];
  });
  const [onOutputs, owned] = parted(plan.feeds);
  const [inletsOnOutputs, inlets] = parted(plan.inlets);
  const found = withFound(withBatteries(withLeads(bare, leads), batteries), inletsOnOutputs, made);
  const installed = audited({ kit: found.kit, partial: true }, [...owned, ...inlets, ...found.inlets]);
  const sought = [...onOutputs, ...inletsOnOutputs];
  const there = onOutputs.map((feed) => withoutOutput(feed, made));
  return {
    kind: 'wanted',
    isProven,
    outputs: outputsOf(sought, made),
    leads,
    batteries: batteries.map(({ set: _, ...each }) => each),
    charge: chargeOf(sought, made, bare),
    sockets: socketsOf(installed, sought.length, made, bare),
    kit: found.kit,
    // How long what is to be found will last, nobody knows yet.
    installed: { ...installed, runtimes: installed.runtimes.filter((bank) => !isOnWanted(bank)) },
    inlets,
    feeds: [...owned, ...there],
    ledThere: there.filter(({ adapters }) => adapters.length > 0),
    together: togetherOf(sought, bare),
  };
}

const parted = <Fed extends Feed>(
  feeds: readonly Fed[],
): readonly [onWanted: readonly Fed[], others: readonly Fed[]] => [
  feeds.filter(isOnWanted),
  feeds.filter((feed) => !isOnWanted(feed)),
];

const unpriced = <Found extends Part>(found: Found): Found => ({ ...found, price: null, stock: 0 });

const pedalsOf = (feeds: readonly Feed[], id: PartId): readonly PedalId[] =>
  feeds.filter((feed) => leadsOf(feed).includes(id)).map(({ pedal }) => pedal);

function withLeads(bare: Kit, leads: readonly WantedLead[]): Kit {
  const { gear, owned } = bare.board;
  return withBoard(bare, {
    ...bare.board,
    gear: { ...gear, parts: [...gear.parts, ...leads.map(({ lead }) => lead)] },
    owned: { ...owned, parts: new Map([...owned.parts, ...leads.map(({ lead, units }) => [lead.id, units] as const)]) },
  });
}

const withBatteries = (bare: Kit, batteries: readonly (BatteriesFor & { readonly units: number })[]): Kit =>
  batteries.reduce((kit, { set, battery, units }) => withGear(kit, { supplies: [set], parts: [battery] }, units), bare);

/** One supply with all outputs takes one socket; the most are as many as there are outputs, and as the policy leaves. */
function socketsOf(
  installed: JudgedPlan,
  outputs: number,
  { source }: MadeUpKit,
  { board: { policy } }: Kit,
): Wanted['sockets'] {
  // What inlets hang on stands for one supply to look for.
  const sought = installed.inlets.some(isOnWanted) ? 1 : 0;
  const each = source === null ? 0 : natureOf(source).sockets;
  const [owned, bricks] = [installed.sockets - sought * each, installed.score.bricks - sought];
  const left = Math.min((policy.sockets ?? Infinity) - owned, (policy.bricks ?? Infinity) - bricks);
  return { owned, least: owned + each * Math.min(outputs, 1), most: owned + each * Math.min(outputs, left) };
}

function chargeOf(feeds: readonly Feed[], { source }: MadeUpKit, bare: Kit): MilliwattHours | null {
  const { guess, runtime } = bare.board.policy;
  if (source?.kind !== 'charge' || runtime === null || feeds.length === 0) return null;
  return chargeFor(hangingBy(feeds, bare), guess, runtime).milliwattHours;
}

/** Rules `total` and `startup` of a supply that all of these hang on. */
function togetherOf(feeds: readonly Feed[], bare: Kit): Microamps {
  const { policy } = bare.board;
  const loads = hangingBy(feeds, bare).map(({ pedal, at }) => ({ pedal, load: loadAt(pedal, at, policy.guess) }));
  const planned = scaled(sum(loads.map(({ load }) => load)), policy.headroom.supply);
  const started = sum(loads.map(({ pedal, load }) => larger(load, exactly(pedal.startup ?? 0))));
  return wholeMilliamps(larger(planned, started));
}

function hangingBy(feeds: readonly Feed[], bare: Kit) {
  const pedals = [...bare.board.pedals, ...ownedInlets(bare)];
  return feeds.flatMap((feed) => {
    const pedal = pedals.find(({ id }) => id === feed.pedal);
    return pedal === undefined ? [] : [{ pedal, at: feedMillivolts(feed) }];
  });
}

const larger = (one: Exact, other: Exact): Exact => (compareExact(one, other) < 0 ? other : one);
