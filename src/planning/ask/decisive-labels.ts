import { remembered } from '../../../solver/remembered.js';
import { auditedIfSound } from '../asking/audited.js';
import { ask, planOf } from '../asking/ask.js';
import { furthest } from '../asking/furthest.js';
import { beyondThePlan, effortOf, type SearchOptions } from '../asking/search-options.js';
import { withBoard } from '../../domain/changed-kit.js';
import { circuitKinds } from '../../domain/circuit-kinds.js';
import { criterionValue, type JudgedPlan } from '../../domain/judged-plan.js';
import type { Kit } from '../../domain/kit.js';
import type { Pedal } from '../../domain/pedal.js';
import { everyFeed, readFeeds, type Feed } from '../../domain/plan.js';
import { microamps, type Microamps, type MinorUnits } from '../../domain/quantities.js';
import type { Violation } from '../../domain/violation.js';
import type { Effort } from '../../formulation/optimiser.js';
import { nothingToday } from '../../loadout/today.js';
import { answerTo } from '../choose/answer-to.js';
import { installedAs } from '../spare/installed.js';
import { basisOf } from '../spare/spare.js';
import { mostDrawn, openLabels, type OpenLabel, type Standing } from '../../domain/open-labels.js';
import { drawing, readingsOf } from './label-readings.js';

/** What a label decides: what to buy, only how it is wired, or nothing at all; `unknown` where time ran out. */
export type Decides = 'purchase' | 'wiring' | 'nothing' | 'unknown';

/** How far a draw may go; `most` is where looking ended, which is more than any pedal is planned with. */
export type Reach = { readonly microamps: Microamps; readonly isMost: boolean };

/** What comes of one other reading of a label. */
export type ReadingOutcome = {
  /** A polarity, a ground, AC or DC, a plug, or volts as a decimal. */
  readonly reads: string;
  readonly decides: Decides;
  /** The money of the best plan then; null where there is none, or none was sought to its end. */
  readonly money: MinorUnits | null;
  /** Whether it is known that no plan powers everything then. */
  readonly noPlan: boolean;
};

export type AskedLabel = OpenLabel & {
  readonly decides: Decides;
  /** Of a draw alone. */
  readonly draw: {
    readonly planned: Microamps;
    /** Up to what draw the plan holds as it is wired. */
    readonly asWired: Reach;
    /** Up to what draw what is owned and bought for the plan still powers everything; null where that was not settled. */
    readonly samePurchase: Reach | null;
  } | null;
  /** Of anything but a draw: each other way in which the label may read. */
  readonly readings: readonly ReadingOutcome[];
  /** Whether nobody has read what may leave no plan: what is bought before it is read may be of no use. */
  readonly isToReadFirst: boolean;
};

/** Which labels decide, the most decisive first. */
export type DecisiveLabels =
  | {
      readonly kind: 'labels';
      /** Whether it is asked of the wiring in the file, or of the best plan. */
      readonly of: 'wiring' | 'plan';
      readonly wiring: JudgedPlan;
      readonly labels: readonly AskedLabel[];
      /** Whether all of it was settled. */
      readonly whole: boolean;
    }
  | { readonly kind: 'unsafe'; readonly findings: readonly Violation[] }
  | { readonly kind: 'impossible' }
  | { readonly kind: 'stopped' };

/**
 * Which figures that are assumed, guessed or unknown decide what to buy, and which only how it is wired. Thresholds of draws
 * are exact, from the loads of the plan; for every other reading the purchase is solved anew.
 * @throws Error when a plan fails its own audit: a defect of boardfeed, never of the input.
 */
export async function decisiveLabels(kit: Kit, options: SearchOptions = {}): Promise<DecisiveLabels> {
  const effort = effortOf(options);
  const basis = await basisFor(kit, effort);
  if (basis.kind !== 'basis') return basis;
  const labels = await askedOf({ kit, wiring: basis.wiring, isCheapest: true, effort: beyondThePlan(effort) });
  const whole = labels.every(({ decides, draw }) => decides !== 'unknown' && draw?.samePurchase !== null);
  return { kind: 'labels', of: basis.of, wiring: basis.wiring, labels, whole };
}

/**
 * The same of a plan that is known already, whatever it aims at, the most decisive first; what was not settled in time decides
 * `unknown`. A reading with which something cheaper would do, too, is not looked for: it decides what to buy where what is
 * bought would not do.
 * @throws Error as `decisiveLabels` does.
 */
export const labelsOf = async (
  kit: Kit,
  wiring: JudgedPlan,
  options: SearchOptions = {},
): Promise<readonly AskedLabel[]> =>
  askedOf({ kit, wiring, isCheapest: false, effort: beyondThePlan(effortOf(options)) });

/** What is most open is asked first, so that time runs out at what was only assumed. */
async function askedOf(inquiry: Inquiry): Promise<readonly AskedLabel[]> {
  const { kit, wiring } = inquiry;
  const known = new Map<string, Promise<Pick<AskedLabel, 'decides' | 'draw' | 'readings'>>>();
  const labels: AskedLabel[] = [];
  for (const label of [...openLabels(kit.board)].sort(byStanding)) {
    const key = JSON.stringify(
      [label.field, feedKey(wiring, label.pedal), { ...label.pedal, id: '', name: '' }],
      plain,
    );
    const found = await remembered(known, key, () =>
      label.field === 'milliamps' ? askDraw(label, inquiry) : askReadings(label, inquiry),
    );
    const isToReadFirst = label.standing === 'unknown' && found.readings.some(({ noPlan }) => noPlan);
    labels.push({ ...label, ...found, isToReadFirst });
  }
  return mostDecisiveFirst(labels);
}

const plain = (_: string, value: unknown): unknown => (value instanceof Map ? [...value] : value);

/** Pedals that are alike are asked about once where they hang alike: alone or on the same chain. */
const feedKey = ({ feeds }: JudgedPlan, { id }: Pedal): unknown => {
  const feed = feeds.find(({ pedal }) => pedal === id);
  return feed === undefined ? null : [feed.supply, feed.unit, feed.outputs];
};

type Inquiry = {
  readonly kit: Kit;
  readonly wiring: JudgedPlan;
  /** Whether no plan costs less, so that one which does tells something. */
  readonly isCheapest: boolean;
  readonly effort: Effort;
};

type Basis = { readonly kind: 'basis'; readonly of: 'wiring' | 'plan'; readonly wiring: JudgedPlan };

/** With a shop the best plan; without one what is plugged, where that is whole. */
async function basisFor(kit: Kit, effort: Effort): Promise<Basis | Exclude<DecisiveLabels, { kind: 'labels' }>> {
  if (kit.catalogue === null) {
    const basis = await basisOf(kit, effort);
    return basis.kind === 'basis' ? { ...basis, wiring: basis.installed.wiring } : basis;
  }
  const answer = await answerTo({ kit, aim: 'cost', partial: false, today: nothingToday, effort });
  if (answer.kind !== 'plan') return { kind: answer.kind };
  return answer.gap === null ? { kind: 'basis', of: 'plan', wiring: answer.wiring } : { kind: 'stopped' };
}

/** The kit with one pedal as its label reads. */
const asRead = ({ kit }: Pick<Inquiry, 'kit'>, pedal: Pedal): Kit =>
  withBoard(kit, { ...kit.board, pedals: kit.board.pedals.map((each) => (each.id === pedal.id ? pedal : each)) });

/** The most that any kind of pedal is planned with, in microamps: no guess is tried beyond twice that. */
const mostPlanned = Math.max(...circuitKinds.map(({ planningMilliamps }) => planningMilliamps)) * 1000;

async function askDraw(
  { pedal }: OpenLabel,
  inquiry: Inquiry,
): Promise<Pick<AskedLabel, 'decides' | 'draw' | 'readings'>> {
  const { wiring, effort } = inquiry;
  const planned = mostDrawn(pedal);
  const highest = 2 * Math.max(mostPlanned, planned);
  const kitAt = (drawn: number): Kit => asRead(inquiry, drawing(pedal, drawn));
  const asWired = reachAsWired(planned, highest, kitAt, everyFeed(wiring));
  const bought = (drawn: number): Kit => installedAs(kitAt(drawn), wiring).kit;
  const found = await furthest({
    lowest: asWired,
    highest,
    kitAt: bought,
    planAt: async (drawn) => planOf(await ask(bought(drawn), { tiers: [] }, effort)),
  });
  const samePurchase = found === null || found === 'unknown' ? null : found.step;
  const reach = (drawn: number): Reach => ({ microamps: microamps(drawn), isMost: drawn === highest });
  return {
    decides: decidedBy(asWired >= highest, samePurchase === null ? null : samePurchase >= highest),
    draw: {
      planned: microamps(planned),
      asWired: reach(asWired),
      samePurchase: samePurchase === null ? null : reach(samePurchase),
    },
    readings: [],
  };
}

function decidedBy(holds: boolean, samePurchase: boolean | null): Decides {
  if (holds) return 'nothing';
  if (samePurchase === null) return 'unknown';
  return samePurchase ? 'wiring' : 'purchase';
}

/** The most that the pedal may draw while the very same plan keeps every rule; what is planned for a guess always does. */
function reachAsWired(planned: number, highest: number, kitAt: (drawn: number) => Kit, feeds: readonly Feed[]): number {
  let [sound, most] = [planned, highest];
  while (sound < most) {
    const middle = Math.ceil((sound + most) / 2);
    if (auditedIfSound({ kit: kitAt(middle), partial: false }, feeds) === null) most = middle - 1;
    else sound = middle;
  }
  return sound;
}

async function askReadings(
  label: OpenLabel,
  inquiry: Inquiry,
): Promise<Pick<AskedLabel, 'decides' | 'draw' | 'readings'>> {
  const readings: ReadingOutcome[] = [];
  for (const { reads, pedal } of readingsOf(label, inquiry.kit)) {
    const found = await outcomeOf(label, pedal, inquiry);
    readings.push({ reads, ...found });
  }
  const decides = severity.find((each) => readings.some((reading) => reading.decides === each)) ?? 'nothing';
  return { decides, draw: null, readings };
}

const severity: readonly Decides[] = ['purchase', 'unknown', 'wiring', 'nothing'];

/** What comes of a reading: whether the plan holds, whether its purchase does, and what is best then. */
async function outcomeOf(label: OpenLabel, pedal: Pedal, inquiry: Inquiry): Promise<Omit<ReadingOutcome, 'reads'>> {
  const { wiring, isCheapest, effort } = inquiry;
  const kit = asRead(inquiry, pedal);
  const holds = feedsAsRead(wiring.feeds, pedal).some(
    (feeds) => auditedIfSound({ kit, partial: false }, [...feeds, ...wiring.inlets]) !== null,
  );
  const same = holds ? true : planOf(await ask(installedAs(kit, wiring).kit, { tiers: [] }, effort));
  const isToSeek = isCheapest || (same === null && label.standing === 'unknown');
  const best = isToSeek ? planOf(await ask(kit, { tiers: isCheapest ? ['cost'] : [] }, effort)) : 'unsought';
  const found = { money: isCheapest ? moneyOf(best) : null, noPlan: best === null };
  if (same === null) return { decides: 'purchase', ...found };
  if (same === 'unknown' || best === 'unknown') return { decides: 'unknown', ...found };
  if (isCheaper(best, wiring, kit)) return { decides: 'purchase', ...found };
  // Where nobody has read the polarity, the plan has leads for either, and the label says which.
  const picksLeads = label.field === 'polarity' && label.standing === 'unknown';
  return { decides: holds && !picksLeads ? 'nothing' : 'wiring', ...found };
}

type Sought = JudgedPlan | null | 'unknown' | 'unsought';

const isPlan = (sought: Sought): sought is JudgedPlan => typeof sought === 'object' && sought !== null;

const moneyOf = (sought: Sought): MinorUnits | null => (isPlan(sought) ? sought.score.money : null);

function isCheaper(sought: Sought, than: JudgedPlan, { board: { policy } }: Kit): boolean {
  return isPlan(sought) && criterionValue('cost', sought, policy) < criterionValue('cost', than, policy);
}

/** The plan's feeds, that of the pedal by the leads that go with its label. */
function feedsAsRead(feeds: readonly Feed[], pedal: Pedal): readonly (readonly Feed[])[] {
  const own = feeds.find((feed) => feed.pedal === pedal.id);
  if (own?.readings === undefined || pedal.polarity === 'unknown') return [feeds];
  return readFeeds(own).map((read) => feeds.map((feed) => (feed === own ? read : feed)));
}

/**
 * What decides the purchase first, then what decides the wiring; of these what nobody has read before guesses, what may leave no
 * plan before all else and the draws with the least to spare first, and what is assumed last, as it mostly holds.
 */
const mostDecisiveFirst = (labels: readonly AskedLabel[]): readonly AskedLabel[] =>
  [...labels].sort(
    (one, other) =>
      severity.indexOf(one.decides) - severity.indexOf(other.decides) ||
      byStanding(one, other) ||
      Number(other.isToReadFirst) - Number(one.isToReadFirst) ||
      roomOf(one) - roomOf(other),
  );

const standings: readonly Standing[] = ['unknown', 'guessed', 'assumed'];

const byStanding = (one: OpenLabel, other: OpenLabel): number =>
  standings.indexOf(one.standing) - standings.indexOf(other.standing);

/** How many times what is planned the purchase bears; what is no draw has no room at all. */
const roomOf = ({ draw }: AskedLabel): number =>
  draw === null ? 0 : (draw.samePurchase ?? draw.asWired).microamps / draw.planned;
