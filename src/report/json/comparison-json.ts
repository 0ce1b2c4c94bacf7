import type { Kit } from '../../domain/kit.js';
import { isMoney } from '../../domain/aim.js';
import type { Board } from '../../domain/board.js';
import { moneyText } from '../../domain/money.js';
import type { Purchase, Score } from '../../domain/plan.js';
import { minorUnits } from '../../domain/quantities.js';
import type {
  Comparison,
  Failure,
  Option,
  PlannedOption,
  Preference,
  TradeOff,
} from '../../planning/compare/comparison.js';
import { answerObject, reasonObject } from './json.js';
import { loadObject, placeObject, purchaseObject } from './json-objects.js';
import { safeJson } from '../words/safe-text.js';

/**
 * Purchases side by side as one JSON object with a line break at its end. Keys and their order are a promise to programs
 * that read it: new keys come after those that are there.
 */
export const comparisonJson = (kit: Kit, comparison: Comparison): string =>
  `${safeJson(JSON.stringify(comparisonObject(kit, comparison), null, 2))}\n`;

export type ComparisonObject = ReturnType<typeof comparisonObject>;

/** The same as an object, for results of many boards. */
export function comparisonObject(kit: Kit, comparison: Comparison) {
  const { board, catalogue } = kit;
  const { aim, options, best, tradeOffs, reasons } = comparison;
  return {
    format: 'boardfeed/comparison/1',
    board: board.name,
    catalogue: catalogue?.name ?? null,
    aim,
    status: statusOf(comparison),
    currency: board.currency.code,
    wanted: best.wanted,
    end: best.end,
    options: options.map((option) => optionObject(kit, comparison, option)),
    tradeOffs: tradeOffs.map((tradeOff) => tradeOffObject(board, tradeOff)),
    reasons: reasons.map((reason) => reasonObject(board, reason)),
  };
}

/** `proven` when everything that is said is; `impossible` when no purchase can power the board. */
function statusOf({ isProven, reasons }: Comparison): 'proven' | 'best found' | 'impossible' {
  if (!isProven) return 'best found';
  return reasons.length > 0 ? 'impossible' : 'proven';
}

/** `score` and `price` count all that is bought; `plan` is the wiring as `choose` prints one. */
function optionObject(kit: Kit, { aim }: Comparison, option: Option) {
  const { board } = kit;
  const buy = (purchases: readonly Purchase<unknown>[]) => purchases.map((purchase) => purchaseObject(board, purchase));
  const { rank, asked, supplies } = option;
  if (option.kind === 'fails') {
    const { price, reasons } = option;
    return {
      rank,
      asked,
      status: reasons.length === 0 ? ('stopped' as const) : ('fails' as const),
      buy: { supplies: buy(supplies), parts: [] },
      price: moneyText(price, board.currency),
      reasons: reasons.map((reason) => failureObject(board, reason)),
    };
  }
  const { wiring, gap, score, idle } = option;
  return {
    rank,
    asked,
    status: gap === null ? ('proven' as const) : ('best found' as const),
    buy: { supplies: buy(supplies), parts: buy(wiring.buy.parts) },
    price: moneyText(score.money, board.currency),
    idle: buy(idle),
    score: scoreObject(board, score),
    ...figuresObject(option),
    prefer: preferenceObject(board, option.preference),
    unbeaten: option.unbeaten,
    plan: answerObject(kit, { kind: 'plan', aim, wiring, gap, reasons: [] }),
  };
}

const scoreObject = ({ currency }: Board, score: Score) => ({
  unpowered: score.unpowered,
  money: moneyText(score.money, currency),
  exposed: score.exposed,
  bricks: score.bricks,
  parts: score.parts,
  offPreferred: score.offPreferred,
});

const figuresObject = ({ figures: { sockets, spareOutputs, tightest } }: PlannedOption) => ({
  sockets,
  spareOutputs,
  tightest: { ...placeObject(tightest.place), moment: tightest.moment, ...loadObject(tightest.numbers) },
});

function preferenceObject({ currency }: Board, preference: Preference) {
  const { kind } = preference;
  switch (kind) {
    case 'best':
    case 'as good':
    case 'unknown':
      return { kind };
    case 'price':
      return { kind, at: moneyText(preference.at, currency), below: moneyText(preference.below, currency) };
    case 'never': {
      const { tier, behind } = preference;
      return { kind, tier, behind: isMoney(tier) ? moneyText(minorUnits(behind), currency) : behind };
    }
  }
}

function failureObject(board: Board, reason: Failure) {
  if (reason.kind !== 'stock') return reasonObject(board, reason);
  const { kind, message, supply, units, inStock } = reason;
  return { rule: 'stock', kind, pedals: [], message, supply, units, inStock };
}

function tradeOffObject(board: Board, { against, points, complete }: TradeOff) {
  return {
    against,
    exact: complete,
    points: points.map(({ money, wiring: { buy, score } }) => ({
      money: moneyText(money, board.currency),
      exposed: score.exposed,
      bricks: score.bricks,
      parts: score.parts,
      buy: {
        supplies: buy.supplies.map((purchase) => purchaseObject(board, purchase)),
        parts: buy.parts.map((purchase) => purchaseObject(board, purchase)),
      },
    })),
  };
}
