import { withBoard } from '../../domain/changed-kit.js';
import { bankAt, type Kit } from '../../domain/kit.js';
import { audit, type AuditReport } from '../../audit/audit.js';
import type { BankRuntime, BatteryInUse, GroundDomain } from '../../domain/judged-plan.js';
import type { OutletLoad, TotalLoad } from '../../domain/load-numbers.js';
import type { Pedal, Polarity } from '../../domain/pedal.js';
import type { Exposure, Feed, Purchase, Wiring } from '../../domain/plan.js';
import { minorUnits, type Millivolts, type MinorUnits, type PedalId } from '../../domain/quantities.js';
import type { Bank } from '../../domain/supply.js';
import type { Violation } from '../../domain/violation.js';
import { compareBills, type Bill } from './lead-pieces.js';
import { hangingsOn, type Hanging } from './output-hangings.js';
import { setupOf, type OutputQuestion, type OutputSetup } from './output-setup.js';
import { worstFirst } from './severity.js';
import { wiredFeeds } from '../today/wired-feeds.js';
import { wiredPolarity } from '../today/wired-readings.js';

export type { OutputQuestion } from './output-setup.js';

/** One setting of the output, and one position of its polarity switch where it has one. */
export type OutputTrial = {
  readonly millivolts: Millivolts;
  /** Null for an output without a polarity switch. */
  readonly position: Polarity | null;
  /** How the pedal would hang there: through the cheapest leads that do, or those that fail least. */
  readonly feed: Feed;
  /** The other feeds of the output as they would be. */
  readonly company: readonly Feed[];
  /** Those of them that would have to change, such as those that move onto a chain. */
  readonly changed: readonly Feed[];
  /** What would have to be bought for it. */
  readonly buy: Wiring['buy'];
  readonly money: MinorUnits;
  /** What would hang on the output. */
  readonly outlet: OutletLoad | null;
  /** The stated totals of the unit. */
  readonly totals: readonly TotalLoad[];
  /** The pedals that would be newly exposed. */
  readonly exposures: readonly Exposure[];
  /** How long the power bank would last that it hangs on. */
  readonly runtimes: readonly BankRuntime[];
  /** How long the batteries would last that it runs on. */
  readonly batteries: readonly BatteryInUse[];
  /** The one that the pedal would be in; none where it could not be plugged. */
  readonly grounds: readonly GroundDomain[];
  /** Every rule that forbids it, the worst first; empty when it can be done. */
  readonly findings: readonly Violation[];
};

export type OutputAnswer = {
  readonly question: OutputQuestion;
  /** Whether it can be done at any setting. */
  readonly fits: boolean;
  /** Whether other pedals hang on this unit today: then it is judged with all of today's wiring in place, else alone. */
  readonly inPlace: boolean;
  /** The pedals that hang on this very output today and would share a chain with this one. */
  readonly company: readonly PedalId[];
  /** What can be done first, the cheapest of it before the rest; then what cannot, the least forbidden first. */
  readonly trials: readonly OutputTrial[];
};

/**
 * Whether a pedal can be plugged into an output, at each of its settings: straight, or with leads that are owned and not in
 * use, or for sale. Solves nothing, prints nothing.
 * @throws RangeError when the board has no such pedal, or nothing describes such a supply or output.
 */
export function checkOutput(kit: Kit, question: OutputQuestion): OutputAnswer {
  const { board } = kit;
  const pedal = board.pedals.find(({ id }) => id === question.pedal);
  const bank = bankAt(kit, question.supply, question.output);
  if (pedal === undefined || bank === undefined) throw new RangeError('there is no such pedal, supply or output');
  const setup = setupOf(kit, question);
  const tried = bank.settings.flatMap(({ millivolts }) =>
    positionsOf(bank).map((position) => bestTrial({ setup, question, kit, bank, millivolts, position })),
  );
  const trials = tried
    .sort((first, second) => compareTried(first, second) || likedBy(pedal, second) - likedBy(pedal, first))
    .map(({ trial }) => trial);
  return {
    question,
    fits: trials.some(({ findings }) => findings.length === 0),
    inPlace: setup.inPlace,
    company: setup.company.map((wired) => wired.pedal),
    trials,
  };
}

const positionsOf = ({ polarity }: Bank): readonly (Polarity | null)[] =>
  polarity === 'either' ? ['centre-negative', 'centre-positive'] : [null];

type Attempt = {
  readonly setup: OutputSetup;
  readonly question: OutputQuestion;
  readonly kit: Kit;
  readonly bank: Bank;
  readonly millivolts: Millivolts;
  readonly position: Polarity | null;
};

type Tried = { readonly trial: OutputTrial; readonly bill: Bill };

/** What can be done comes first, then what breaks fewer rules, then what costs less. */
const compareTried = (first: Tried, second: Tried): number =>
  first.trial.findings.length - second.trial.findings.length || compareBills(first.bill, second.bill);

const likedBy = ({ prefers }: Pedal, { trial }: Tried): number => (trial.millivolts === prefers ? 1 : 0);

function bestTrial(attempt: Attempt): Tried {
  const { setup, question, kit, bank, millivolts, position } = attempt;
  const offered = bank.polarity === 'either' ? position : bank.polarity;
  const hangings = hangingsOn(setup, question, { millivolts, exit: { plug: bank.plug, polarity: offered } }, kit);
  return hangings
    .map((hanging): Tried => ({ trial: trialOf(attempt, hanging, offered), bill: hanging.bill }))
    .reduce((best, next) => (compareTried(next, best) < 0 ? next : best));
}

function trialOf(attempt: Attempt, { wired }: Hanging, offered: Polarity | null): OutputTrial {
  const { setup, question, kit, millivolts, position } = attempt;
  const around = withBoard(kit, { ...setup.board, wiring: [...setup.others, ...wired] });
  const onOutput = new Set(wired.map(({ pedal }) => pedal));
  const feeds = wiredFeeds(around).feeds.map((feed): Feed => {
    const hung = wired.find(({ pedal }) => pedal === feed.pedal);
    return hung === undefined ? feed : { ...feed, ...wiredPolarity(hung, offered, around) };
  });
  const report = audit(around.board, around.catalogue, feeds, { partial: true });
  const feed = feeds.find(({ pedal }) => pedal === question.pedal);
  if (feed === undefined) throw new Error('the pedal in question has no feed');
  const company = feeds.filter(({ pedal }) => onOutput.has(pedal) && pedal !== question.pedal);
  const { before } = setup;
  const buy = {
    supplies: beyond(report.wiring.buy.supplies, before.wiring.buy.supplies),
    parts: beyond(report.wiring.buy.parts, before.wiring.buy.parts),
  };
  return {
    millivolts,
    position,
    feed,
    company,
    changed: changedFeeds(company, before.wiring.feeds),
    buy,
    money: minorUnits([...buy.supplies, ...buy.parts].reduce((sum, { units, price }) => sum + units * price, 0)),
    outlet: report.wiring.outlets.find(({ pedals }) => pedals.includes(question.pedal)) ?? null,
    totals: report.wiring.totals.filter(({ pedals }) => pedals.includes(question.pedal)),
    exposures: report.wiring.exposures.filter(({ pedal }) => !before.wiring.exposed.includes(pedal)),
    runtimes: report.wiring.runtimes.filter(({ pedals }) => pedals.includes(question.pedal)),
    batteries: report.wiring.batteries.filter(({ pedal }) => pedal === question.pedal),
    grounds: report.wiring.grounds.filter(({ pedals }) => pedals.includes(question.pedal)),
    findings: worstFirst(newFindings(report, before, question)),
  };
}

/** What must be bought more than before. */
const beyond = <Id>(after: readonly Purchase<Id>[], before: readonly Purchase<Id>[]): readonly Purchase<Id>[] =>
  after.flatMap(({ id, units, price }) => {
    const more = units - (before.find((one) => one.id === id)?.units ?? 0);
    return more > 0 ? [{ id, units: more, price }] : [];
  });

function changedFeeds(after: readonly Feed[], before: readonly Feed[]): readonly Feed[] {
  const known = new Set(before.map((feed) => JSON.stringify(feed)));
  return after.filter((feed) => !known.has(JSON.stringify(feed)));
}

/** What is wrong already, and would be without the pedal, forbids nothing. */
function newFindings(after: AuditReport, before: AuditReport, { pedal }: OutputQuestion): readonly Violation[] {
  const known = new Set(before.violations.map(keyOf));
  return after.violations.filter((violation) => violation.pedals.includes(pedal) || !known.has(keyOf(violation)));
}

const keyOf = ({ rule, pedals, numbers }: Violation): string => JSON.stringify([rule, pedals, numbers?.kind]);
