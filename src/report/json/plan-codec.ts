import { aims, isMoney, tiers } from '../../domain/aim.js';
import type { Board } from '../../domain/board.js';
import type { Kit } from '../../domain/kit.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import { perCountedTier } from '../../domain/counted-tiers.js';
import { everyFeed, type Score, type Wiring } from '../../domain/plan.js';
import { minorUnits } from '../../domain/quantities.js';
import type { Answer, Gap } from '../../planning/answer.js';
import { planCautions } from '../words/cautions.js';
import { confirmEntries } from '../words/confirm.js';
import { moves, steps } from './changes-codec.js';
import { inlets } from './inlets-codec.js';
import { at, orAbsent, orNull, record } from './codec.js';
import { confirmed } from './confirm-codec.js';
import { measureKeys } from './measure-keys.js';
import { printed } from './printed.js';
import { reasons } from './reason-codec.js';
import { boardName, buy, cautions, currency, feeds, format, runtimes } from './shared-codecs.js';
import { amountOrCount, choice, count, pedals } from './values.js';

export const statuses = ['proven', 'best found', 'impossible'] as const;
export const aboutStatus =
  '`proven`: no plan is better. `best found`: the search stopped first. `impossible`: no plan exists.';

const score = record<Score>()('What the plan comes to, by each measure.', {
  ...measureKeys,
  moved: orNull(
    'Pedals whose unit, output or setting differs from the present wiring; null where that does not count.',
    count('Pedals whose unit, output or setting differs from the present wiring.'),
  ),
  newlyExposed: orAbsent(count('Of `rewire`: exposed pedals that are not exposed today.')),
});

const gap = orNull(
  'How far the plan may be from the best; null when nothing is left to prove.',
  record<Gap>()('How far the plan may be from the best.', {
    tier: choice(
      tiers,
      'The first measure of the aim that is still open; `cost` is money with the prices of noise and of supplies in use, ' +
        '`newCost` with noise of newly exposed pedals only, `outlay` without noise.',
    ),
    value: at(amountOrCount('What the plan reaches.'), ({ tier, value }) => ({
      amount: value,
      isMoney: isMoney(tier),
    })),
    bound: at(
      orNull(
        'No plan does better than this; null when nothing is known.',
        amountOrCount('No plan does better than this.'),
      ),
      ({ tier, bound }) => (bound === null ? null : { amount: bound, isMoney: isMoney(tier) }),
    ),
  }),
);

/** The answer as one JSON object with a line break at its end. */
export const answerJson = (kit: Kit, answer: Answer): string => printed(planCodec, kit, answer);

/** Keys and their order are a promise to programs that read it: new keys come after those that are there. */
export const planCodec = record<Answer>()('A result of boardfeed: what to buy, and how each pedal is fed.', {
  format: format('boardfeed/plan/1'),
  board: boardName(),
  aim: choice(aims, 'What was taken to be best; `moves` is that of `rewire`.'),
  status: at(choice(statuses, aboutStatus), statusOf),
  currency: currency(),
  score: at(score, (answer, { board }) => wiringOf(answer, board).score),
  buy: at(buy, (answer, { board }) => wiringOf(answer, board).buy),
  feeds: at(feeds, (answer, { board }) => wiringOf(answer, board)),
  unpowered: at(
    pedals('The ids of the pedals without power.'),
    (answer, { board }) => wiringOf(answer, board).unpowered,
  ),
  exposed: at(
    pedals('The ids of the high-gain pedals that share a ground with a digital one.'),
    (answer, { board }) => wiringOf(answer, board).exposed,
  ),
  moved: at(
    pedals('The ids of the pedals whose unit, output or setting differs from the present wiring.'),
    (answer, { board }) => wiringOf(answer, board).moved ?? [],
  ),
  confirm: at(confirmed, (answer, { board, inventory }) =>
    confirmEntries(board, inventory, everyFeed(wiringOf(answer, board))),
  ),
  cautions: cautions((answer: Answer, { board, inventory }) => planCautions(inventory, wiringOf(answer, board))),
  reasons: at(reasons, (answer) => (answer.kind === 'stopped' ? [] : answer.reasons)),
  gap: at(gap, gapOf),
  stays: at(
    orAbsent(pedals('Of `rewire`: the ids of the pedals that keep unit, outputs and volts.')),
    (answer) => ofRewire(answer)?.stays,
  ),
  moves: at(orAbsent(moves), (answer) => ofRewire(answer)?.moves),
  steps: at(orAbsent(steps), (answer) => ofRewire(answer)?.steps),
  runtimes: at(runtimes, (answer, { board }) => wiringOf(answer, board).runtimes),
  inlets: at(inlets, (answer, { board }) => wiringOf(answer, board)),
});

const nothingChanged = { stays: [], moves: [], steps: [] };

/** Of a plan for re-plugging alone; all lists are empty where there is no plan. */
function ofRewire(answer: Answer) {
  if (answer.aim !== 'moves') return undefined;
  return (answer.kind === 'plan' ? answer.changes : undefined) ?? nothingChanged;
}

const wiringOf = (answer: Answer, board: Board): JudgedPlan | Nothing =>
  answer.kind === 'plan' ? answer.wiring : nothingPlugged(board);

type Nothing = Wiring & {
  readonly exposures: readonly [];
  readonly grounds: readonly [];
  readonly runtimes: readonly [];
  readonly batteries: readonly [];
};

/** What stands on the board while there is no plan: every pedal is without power. */
function nothingPlugged(board: Board): Nothing {
  const unpowered = board.pedals.map(({ id }) => id);
  const nothing = { money: minorUnits(0), exposed: 0, bricks: 0, moved: null, ...perCountedTier(() => 0) };
  return {
    feeds: [],
    inlets: [],
    unpowered,
    exposed: [],
    buy: { supplies: [], parts: [] },
    score: { unpowered: unpowered.length, ...nothing },
    exposures: [],
    grounds: [],
    runtimes: [],
    batteries: [],
  };
}

function statusOf(answer: Answer): (typeof statuses)[number] {
  if (answer.kind === 'impossible') return 'impossible';
  return answer.kind === 'plan' && answer.gap === null ? 'proven' : 'best found';
}

/** Null when there is nothing left to prove. A search that stopped with no plan knows no bound. */
function gapOf(answer: Answer, { board }: { readonly board: Board }): Gap | null {
  if (answer.kind === 'impossible') return null;
  if (answer.kind === 'stopped') return { tier: 'unpowered', value: board.pedals.length, bound: null };
  return answer.gap;
}
