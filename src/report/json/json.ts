import type { Kit } from '../../domain/kit.js';
import type { Board } from '../../domain/board.js';
import { isMoney } from '../../domain/aim.js';
import { moneyText } from '../../domain/money.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import { minorUnits } from '../../domain/quantities.js';
import type { Answer, Gap, Reason } from '../../planning/answer.js';
import { planCautions } from '../words/cautions.js';
import { confirmEntries } from '../words/confirm.js';
import { inventoryOf } from '../words/inventory.js';
import { feedObject, purchaseObject } from './json-objects.js';
import { changesObject } from './rewire-json.js';
import { safeJson } from '../words/safe-text.js';

/**
 * The answer as one JSON object with a line break at its end. Keys and their order are a promise to programs that read it:
 * new keys come after those that are there.
 */
export function answerJson(kit: Kit, answer: Answer): string {
  return `${safeJson(JSON.stringify(answerObject(kit, answer), null, 2))}\n`;
}

/** The answer as an object, for results that hold several. */
export function answerObject(kit: Kit, answer: Answer) {
  const { board } = kit;
  const inventory = inventoryOf(kit);
  const wiring = answer.kind === 'plan' ? answer.wiring : nothingPlugged(board);
  const { score } = wiring;
  return {
    format: 'boardfeed/plan/1',
    board: board.name,
    aim: answer.aim,
    status: statusOf(answer),
    currency: board.currency.code,
    score: {
      unpowered: score.unpowered,
      money: moneyText(score.money, board.currency),
      exposed: score.exposed,
      bricks: score.bricks,
      parts: score.parts,
      offPreferred: score.offPreferred,
      moved: score.moved,
      ...(score.newlyExposed === undefined ? {} : { newlyExposed: score.newlyExposed }),
    },
    buy: {
      supplies: wiring.buy.supplies.map((purchase) => purchaseObject(board, purchase)),
      parts: wiring.buy.parts.map((purchase) => purchaseObject(board, purchase)),
    },
    feeds: wiring.feeds.map(feedObject),
    unpowered: wiring.unpowered,
    exposed: wiring.exposed,
    moved: wiring.moved ?? [],
    confirm: confirmEntries(board, inventory, wiring.feeds),
    cautions: planCautions(inventory, wiring),
    reasons: answer.kind === 'stopped' ? [] : answer.reasons.map((reason) => reasonObject(board, reason)),
    gap: gapObject(board, answer),
    ...(answer.aim === 'moves' ? changesObject(board, answer.kind === 'plan' ? answer.changes : undefined) : {}),
  };
}

/** What stands on the board while there is no plan: every pedal is without power. */
function nothingPlugged(board: Board): JudgedPlan {
  const unpowered = board.pedals.map(({ id }) => id);
  const money = minorUnits(0);
  return {
    feeds: [],
    unpowered,
    exposed: [],
    buy: { supplies: [], parts: [] },
    score: { unpowered: unpowered.length, money, exposed: 0, bricks: 0, parts: 0, offPreferred: 0, moved: null },
    outlets: [],
    totals: [],
    grounds: [],
    exposures: [],
  };
}

function statusOf(answer: Answer): 'proven' | 'best found' | 'impossible' {
  if (answer.kind === 'impossible') return 'impossible';
  return answer.kind === 'plan' && answer.gap === null ? 'proven' : 'best found';
}

/** `rule`, where there is one, is the hard rule that stands in the way; of a pedal it is its nearest miss's. */
export function reasonObject(board: Board, reason: Reason): Readonly<Record<string, unknown>> {
  switch (reason.kind) {
    case 'pedal': {
      const [nearest] = reason.refusals;
      return {
        ...(nearest === undefined ? {} : { rule: nearest.rule }),
        kind: reason.kind,
        pedals: [reason.pedal],
        message: nearest?.message ?? 'no supply can feed this pedal',
        refusals: reason.refusals.map(({ rule, at, message }) => ({
          rule,
          at: at === null ? null : { supply: at.supply, outputs: at.outputs },
          message,
        })),
      };
    }
    case 'together': {
      const { kind, pedals, message, smallest } = reason;
      return { kind, pedals, message, smallest };
    }
    case 'limit': {
      const { kind, message, limit } = reason;
      const form = (amount: number) => (limit === 'budget' ? moneyText(minorUnits(amount), board.currency) : amount);
      return {
        rule: 'limit',
        kind,
        pedals: [],
        message,
        limit,
        allowed: form(reason.allowed),
        needed: form(reason.needed),
      };
    }
    case 'request': {
      const { kind, requests, needed, message } = reason;
      return {
        kind,
        pedals: requests.flatMap((request) => (request.kind === 'keep' ? [request.pedal] : [])),
        message,
        requests: requests.map((request) => request.kind),
        needed: needed === null ? null : moneyText(needed, board.currency),
      };
    }
  }
}

/** Null when there is nothing left to prove. A search that stopped with no plan knows no bound. */
function gapObject(board: Board, answer: Answer) {
  if (answer.kind === 'impossible') return null;
  if (answer.kind === 'stopped') return { tier: 'unpowered', value: board.pedals.length, bound: null };
  return answer.gap === null ? null : openTier(board, answer.gap);
}

function openTier({ currency }: Board, { tier, value, bound }: Gap) {
  const form = (amount: number) => (isMoney(tier) ? moneyText(minorUnits(amount), currency) : amount);
  return { tier, value: form(value), bound: bound === null ? null : form(bound) };
}
