import type { Kit } from '../../domain/kit.js';
import { isMoney } from '../../domain/aim.js';
import { moneyText } from '../../domain/money.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import { minorUnits, type PedalId } from '../../domain/quantities.js';
import type { Argument } from '../../planning/explain/argument.js';
import type { TierDifference } from '../../planning/explain/difference.js';
import type { Explanation } from '../../planning/explain/explain.js';
import type { Fact } from '../../planning/conflict/facts.js';
import type { Cheaper, Forced } from '../../planning/explain/purchases.js';
import type { Elsewhere, Seat } from '../../planning/explain/seats.js';
import type { WayOut } from '../../planning/explain/way-out.js';
import { argumentTexts } from '../words/explain-argument.js';
import type { Told } from '../words/explain-facts.js';
import { changeObject } from './explain-change-json.js';
import { changeText } from '../words/explain-ways.js';
import { inventoryOf } from '../words/inventory.js';
import { feedObject, findingObject, purchaseObject } from './json-objects.js';
import { safeJson } from '../words/safe-text.js';

/**
 * An explanation as one JSON object with a line break at its end. Keys and their order are a promise to programs that read it:
 * new keys come after those that are there. `pedal` is the one that was asked about.
 */
export function explanationJson(kit: Kit, explanation: Explanation, pedal: PedalId | null): string {
  const told = { kit, board: kit.board, inventory: inventoryOf(kit) };
  return `${safeJson(JSON.stringify(explanationObject(told, explanation, pedal), null, 2))}\n`;
}

const statuses = { plan: 'proven', impossible: 'impossible', stopped: 'stopped' } as const;

function explanationObject(told: Told, explanation: Explanation, pedal: PedalId | null) {
  const { board } = told;
  const impossible = explanation.kind === 'impossible' ? explanation : null;
  const plan = explanation.kind === 'plan' ? explanation : null;
  return {
    format: 'boardfeed/explain/1',
    board: board.name,
    aim: explanation.aim,
    status: statuses[explanation.kind],
    currency: board.currency.code,
    pedal,
    /** False where the time ran out before everything was settled. */
    complete: explanation.kind !== 'stopped' && explanation.whole,
    conflicts: (impossible?.conflicts ?? []).map((argument) => conflictObject(told, argument)),
    ways: (impossible?.ways ?? []).map((way) => wayObject(told, way)),
    plan: plan === null ? null : wiringObject(told, plan.wiring),
    purchases: (plan?.forced ?? []).map((each) => forcedObject(told, each)),
    cheaper: plan?.cheaper ? cheaperObject(told, plan.cheaper) : null,
    seat: plan?.seat ? seatObject(told, plan.seat) : null,
  };
}

const factObject = (fact: Fact) =>
  fact.kind === 'stock' ? { fact: fact.kind, of: fact.of, id: fact.id } : { fact: fact.kind, of: null, id: null };

function conflictObject(told: Told, argument: Argument) {
  const { conflict, feeders, refusals, least, units } = argument;
  const { currency } = told.board;
  return {
    pedals: conflict.pedals,
    facts: conflict.facts.map(factObject),
    size: conflict.size,
    argument: argumentTexts(told, argument),
    feeders,
    units,
    needed: {
      budget: typeof least.budget === 'number' ? moneyText(minorUnits(least.budget), currency) : null,
      bricks: least.bricks ?? null,
      sockets: least.sockets ?? null,
    },
    refusals: refusals.map((each) => ({
      pedal: each.pedal,
      refusals: each.refusals.map(({ rule, at, message }) => ({ rule, at, message })),
    })),
  };
}

const wiringObject = ({ board }: Told, { score, buy, feeds, unpowered }: JudgedPlan) => ({
  money: moneyText(score.money, board.currency),
  buy: {
    supplies: buy.supplies.map((purchase) => purchaseObject(board, purchase)),
    parts: buy.parts.map((purchase) => purchaseObject(board, purchase)),
  },
  bricks: score.bricks,
  exposed: score.exposed,
  unpowered,
  feeds: feeds.map(feedObject),
});

const wayObject = (told: Told, { change, wiring, cheapest }: WayOut) => ({
  ...changeObject(told, change),
  message: changeText(told, change),
  cheapest: cheapest === true,
  plan: wiringObject(told, wiring),
});

const differenceObject = ({ board }: Told, { tier, from, to, exposed = 0 }: TierDifference) => {
  const form = (amount: number) => (isMoney(tier) ? moneyText(minorUnits(amount), board.currency) : amount);
  return { tier, from: form(from), to: form(to), exposed };
};

const forcedObject = (told: Told, { bought, without, pedals }: Forced) => ({
  of: bought.of,
  id: bought.id,
  units: bought.units,
  without:
    without === 'unknown'
      ? { answer: 'unknown', differences: [] }
      : without === null
        ? { answer: 'impossible', differences: [] }
        : { answer: 'plan', differences: without.map((each) => differenceObject(told, each)) },
  pedals,
});

const cheaperObject = (told: Told, cheaper: Cheaper) => ({
  answer: cheaper.kind === 'worse' ? 'worse' : 'too little',
  plan: wiringObject(told, cheaper.wiring),
  differences: cheaper.kind === 'worse' ? cheaper.differences.map((each) => differenceObject(told, each)) : [],
  pedals: cheaper.kind === 'worse' ? [] : cheaper.pedals,
});

const seatObject = (told: Told, { feed, alike, elsewhere, unfit }: Seat) => ({
  feed: feedObject(feed),
  alike,
  elsewhere: elsewhere.map((each) => elsewhereObject(told, each)),
  unfit,
});

function elsewhereObject(told: Told, { supply, bank, outputs, verdict }: Elsewhere) {
  const place = { supply, bank: bank === null ? null : bank + 1, outputs, answer: verdict.kind };
  switch (verdict.kind) {
    case 'plan': {
      const differences = verdict.differences.map((each) => differenceObject(told, each));
      return { ...place, differences, plan: wiringObject(told, verdict.wiring) };
    }
    case 'forbidden':
      return { ...place, findings: verdict.findings.map((finding) => findingObject(told.board, finding)) };
    case 'impossible': {
      const { conflict } = verdict;
      return { ...place, pedals: conflict?.pedals ?? [], facts: (conflict?.facts ?? []).map(factObject) };
    }
    case 'unknown':
      return place;
  }
}
