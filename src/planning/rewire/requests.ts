import type { Kit } from '../../domain/kit.js';
import type { Board } from '../../domain/board.js';
import { priceText } from '../../domain/money.js';
import { minorUnits, type MinorUnits, type PedalId } from '../../domain/quantities.js';
import type { Violation } from '../../domain/violation.js';
import { ask, type Ask } from '../asking/ask.js';
import type { Effort } from '../../formulation/optimiser.js';
import { nothingToday } from '../../loadout/today.js';
import type { Reason, RewireRequest } from '../answer.js';
import { termsOf, type Wishes } from './rewire-terms.js';
import { worstFirst } from '../check/severity.js';
import type { TodaysWiring } from '../today/todays-wiring.js';

type RequestReason = Extract<Reason, { kind: 'request' }>;

/**
 * Which of the wishes make it impossible to re-plug the board, by solving again without them: each that by itself is one too
 * many; where there is no such one, a set of which none can stay. Nothing when the board is impossible even without all of
 * them, or when the time runs out first.
 */
export async function requestsInTheWay(asked: Wished, effort: Effort): Promise<readonly RequestReason[]> {
  const { board } = asked.kit;
  const requests = requestsOf(asked);
  const trial: Trial = { ...asked, requests, effort: { ...effort, onProgress: undefined } };
  if (requests.length === 0 || (await without(requests, trial)) === null) return [];
  const single: RequestReason[] = [];
  for (const request of requests) {
    const found = await without([request], trial);
    if (found !== null) single.push(reasonFor([request], found, board));
  }
  if (single.length > 0) return single;
  const set = await smallestSet(trial);
  return [reasonFor(set.requests, set.found, board)];
}

/** A board, how it is plugged today, and what is wished for. */
type Wished = {
  readonly kit: Kit;
  readonly plugged: TodaysWiring;
  readonly wishes: Wishes & { readonly partial?: boolean };
};

type Trial = Wished & {
  readonly requests: readonly RewireRequest[];
  readonly effort: Effort;
};

/** A plan was found; with the least money that one takes, where that was asked. */
type Found = { readonly money: MinorUnits | null };

function requestsOf({ plugged, wishes: { keep = [], buy, budget } }: Wished): readonly RewireRequest[] {
  const wrong = worstFirst(plugged.report.violations);
  return [
    ...keep.map((pedal) => ({ kind: 'keep', pedal, why: whyNot(pedal, wrong) }) as const),
    ...(buy === 'never' ? [{ kind: 'buy never' } as const] : []),
    ...(budget === undefined ? [] : [{ kind: 'budget', allowed: budget } as const]),
  ];
}

/** The worst that is wrong with the pedal's place today and concerns no other pedal. */
const whyNot = (pedal: PedalId, wrong: readonly Violation[]): Violation | null =>
  wrong.find(({ pedals }) => pedals.length === 1 && pedals[0] === pedal) ?? null;

/** What a plan without some of the requests comes to; null when there is none, or none was found in time. */
async function without(lifted: readonly RewireRequest[], trial: Trial): Promise<Found | null> {
  const { kit, plugged, wishes, effort } = trial;
  const keep = (wishes.keep ?? []).filter(
    (pedal) => !lifted.some((request) => request.kind === 'keep' && request.pedal === pedal),
  );
  const buys = lifted.some(({ kind }) => kind === 'buy never');
  const spends = lifted.some(({ kind }) => kind === 'budget');
  const terms = termsOf(kit, plugged, {
    keep,
    ...(wishes.buy === undefined || buys ? {} : { buy: wishes.buy }),
    ...(wishes.budget === undefined || spends ? {} : { budget: wishes.budget }),
  });
  const asksMoney = buys || spends;
  const asked: Ask = {
    tiers: asksMoney ? ['money'] : [],
    partial: wishes.partial ?? false,
    // Where no pedal has to stay, it is of no account where the others are.
    today: keep.length === 0 ? nothingToday : terms.today,
  };
  const outcome = await ask(terms.kit, asked, effort);
  if (outcome.kind !== 'plan') return null;
  return { money: asksMoney ? minorUnits(outcome.values.get('money') ?? 0) : null };
}

/** Of all requests those that have to go: the others are taken back one by one, as far as there still is a plan. */
async function smallestSet(
  trial: Trial,
): Promise<{ readonly requests: readonly RewireRequest[]; readonly found: Found }> {
  let requests = trial.requests;
  let found: Found = { money: null };
  for (const request of trial.requests) {
    const fewer = requests.filter((each) => each !== request);
    const next = await without(fewer, trial);
    if (next !== null) [requests, found] = [fewer, next];
  }
  return { requests, found };
}

const reasonFor = (requests: readonly RewireRequest[], { money }: Found, board: Board): RequestReason => ({
  kind: 'request',
  requests,
  needed: money,
  message: messageFor(requests, money, board),
});

function messageFor(requests: readonly RewireRequest[], money: MinorUnits | null, board: Board): string {
  const nameOf = (id: PedalId): string => board.pedals.find((pedal) => pedal.id === id)?.name ?? `the ${id}`;
  const texts = requests.map((request) => {
    switch (request.kind) {
      case 'keep':
        return `${nameOf(request.pedal)} is to stay where it is${whyText(request.why)}`;
      case 'buy never':
        return 'nothing is to be bought';
      case 'budget':
        return `no more than ${priceText(request.allowed, board)} is to be spent`;
    }
  });
  const takes = money === null ? '' : ` that takes ${priceText(money, board)}`;
  const lifted = requests.length === 1 ? 'that' : 'all of that';
  return `${texts.join(', and ')}. Without ${lifted} there is a plan${takes}`;
}

const whyText = (why: Violation | null): string =>
  why === null ? '' : `, against the rule ${why.rule}: ${why.message}`;
