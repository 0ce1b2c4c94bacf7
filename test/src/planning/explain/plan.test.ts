import { kitOf } from '../../../../src/domain/kit.js';
import { describe, expect, it } from 'vitest';

import type { Board, Catalogue } from '../../../../src/domain/board.js';
import { pedalId } from '../../../../src/domain/quantities.js';
import { explain, type Explanation } from '../../../../src/planning/explain/explain.js';
import { bruteForce } from '../../../support/brute-force.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  euros,
  listed,
  partOf,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
  volts,
} from '../../../support/builders.js';

const echo = pedalOf('echo', 90, { digital: true });
const fuzz = pedalOf('fuzz', 5, { highGain: true });
const drive = pedalOf('drive', 10, { accepts: listed(9, 18), prefers: volts(18) });
const small = supplyOf('small', 20, [bankOf(2, [settingOf(9, 100)], { isolated: false })]);
const large = supplyOf('large', 35, [
  bankOf(2, [settingOf(9, 100)]),
  bankOf(1, [settingOf(9, 100), settingOf(18, 50)]),
]);
const board = boardOf([echo, fuzz, drive], { policy: policyOf({ noisePrice: euros(20), chains: 'never' }) });
const shop = catalogueOf([small, large]);

type Plan = Extract<Explanation, { kind: 'plan' }>;

async function planFor(asked: Board, catalogue: Catalogue, pedal?: string): Promise<Plan> {
  const named = pedal === undefined ? {} : { pedal: pedalId(pedal) };
  const explanation = await explain(kitOf(asked, catalogue), { ...named });
  if (explanation.kind !== 'plan') throw new Error(`it is ${explanation.kind}`);
  expect(explanation.whole).toBe(true);
  return explanation;
}

/** What the best plan costs with its noise, by brute force. */
function leastCost(asked: Board, catalogue: Catalogue): number | null {
  const best = bruteForce(asked, catalogue, { aim: 'cost', partial: false });
  return best.kind === 'plan' ? best.score.money + asked.policy.noisePrice * best.score.exposed : null;
}

describe('why a plan is the best', () => {
  it('says what the best plan without a purchase comes to', async () => {
    const { forced, wiring } = await planFor(board, shop);
    expect(forced.map(({ bought }) => bought)).toEqual([{ of: 'supply', id: 'large', units: 1 }]);
    const without = leastCost(board, catalogueOf([small]));
    expect(wiring.score.money).toBe(euros(35));
    expect(forced[0]?.without).toContainEqual({ tier: 'cost', from: euros(35), to: without });
  });

  it('says which pedals a purchase is there for', async () => {
    const { forced } = await planFor(
      boardOf([fuzz, pedalOf('reverb', 95)]),
      catalogueOf([supplyOf('weak', 5, [bankOf(2, [settingOf(9, 50)])]), large]),
    );
    expect(forced).toEqual([{ bought: { of: 'supply', id: 'large', units: 1 }, without: null, pedals: ['reverb'] }]);
  });

  it('says whom less money leaves without power', async () => {
    const { cheaper } = await planFor(board, catalogueOf([large]));
    expect(cheaper).toMatchObject({ kind: 'too little', wiring: { score: { money: 0 } } });
    const other = await planFor(boardOf([echo, fuzz]), catalogueOf([small, large]));
    // Both on one ground would be exposed: the dearer supply is the better plan, though less money powers both.
    expect(other.wiring.score).toMatchObject({ money: euros(35), exposed: 0 });
    expect(other.cheaper).toMatchObject({ kind: 'worse', wiring: { score: { money: euros(20), exposed: 1 } } });
    expect(leastCost(boardOf([echo, fuzz]), catalogueOf([small]))).toBe(euros(40));
  });
});

describe('why a pedal sits where it does', () => {
  it('says what every other place would cost or break', async () => {
    const { seat } = await planFor(board, shop, 'drive');
    expect(seat?.feed).toMatchObject({ supply: 'large', outputs: [3], settings: [volts(18)] });
    expect(seat?.alike).toEqual([]);
    const [bank, other] = seat?.elsewhere ?? [];
    expect(bank).toMatchObject({ supply: 'large', bank: 0, outputs: [1, 2] });
    expect(bank?.verdict).toMatchObject({ kind: 'plan', differences: [{ tier: 'offPreferred', from: 0, to: 1 }] });
    expect(other).toMatchObject({ supply: 'small', bank: null });
    if (other?.verdict.kind !== 'plan') throw new Error('there is no plan with it on the other supply');
    const feeds = other.verdict.wiring.feeds;
    expect(feeds.find(({ pedal }) => pedal === 'drive')).toMatchObject({ supply: 'small' });
    expect(other.verdict.differences[0]).toMatchObject({ tier: 'cost', from: euros(35) });
  });

  it('names the rule that forbids a place', async () => {
    const strong = pedalOf('strong', 150);
    const box = supplyOf('box', 10, [bankOf(1, [settingOf(9, 100)]), bankOf(1, [settingOf(9, 200)])]);
    const { seat } = await planFor(boardOf([strong]), catalogueOf([box, small]), 'strong');
    expect(seat?.feed.outputs).toEqual([2]);
    expect(seat?.elsewhere).toHaveLength(1);
    expect(seat?.elsewhere[0]?.verdict).toMatchObject({ kind: 'forbidden', findings: [{ rule: 'current' }] });
    expect(seat?.unfit).toEqual(['small']);
  });

  it('counts two joined outputs as a place on either bank', async () => {
    const wide = pedalOf('wide', 50, { accepts: { kind: 'range', from: volts(9), to: volts(18) } });
    const banks = [4.5, 10.5].map((each) => bankOf(1, [settingOf(each, 100)], { joins: ['series'] }));
    const stack = partOf('stack', 9, { kind: 'join', mode: 'series' });
    const { seat } = await planFor(boardOf([wide]), catalogueOf([supplyOf('box', 10, banks)], [stack]), 'wide');
    expect(seat?.feed.outputs).toEqual([2]);
    expect(seat?.elsewhere).toMatchObject([{ supply: 'box', outputs: [1] }]);
    const verdict = seat?.elsewhere[0]?.verdict;
    if (verdict?.kind !== 'plan') throw new Error(`it is ${verdict?.kind ?? 'not looked at'}`);
    expect(verdict.wiring.feeds).toMatchObject([{ outputs: [1, 2], join: { mode: 'series', part: 'stack' } }]);
    expect(verdict.differences).toMatchObject([
      { tier: 'cost', from: euros(10), to: euros(19) },
      { tier: 'parts', from: 0, to: 1 },
    ]);
  });

  it('does not speak of supplies that cannot be had', async () => {
    const gone = supplyOf('gone', 1, [bankOf(2, [settingOf(9, 200)])], { stock: 0 });
    const { seat } = await planFor(board, catalogueOf([small, gone, large]), 'drive');
    expect(seat?.unfit).toEqual([]);
    expect(seat?.elsewhere.map(({ supply }) => supply)).toEqual(['large', 'small']);
  });

  it('names the pedals that would lose their power', async () => {
    const [strong, weak] = [pedalOf('strong', 150), pedalOf('weak', 50)];
    const box = supplyOf('box', 10, [bankOf(1, [settingOf(9, 100)]), bankOf(1, [settingOf(9, 200)])], { stock: 1 });
    const { seat } = await planFor(boardOf([strong, weak]), catalogueOf([box]), 'weak');
    expect(seat?.feed.outputs).toEqual([1]);
    const verdict = seat?.elsewhere[0]?.verdict;
    if (verdict?.kind !== 'impossible') throw new Error('it can hang there');
    expect(verdict.conflict?.pedals).toContain('strong');
  });

  it('does not know a pedal that is not on the board', async () => {
    await expect(explain(kitOf(board, shop), { pedal: pedalId('kazoo') })).rejects.toThrow(RangeError);
  });
});

it('stops when it is told to', async () => {
  expect(await explain(kitOf(board, shop), { remainingMs: () => 0 })).toMatchObject({ kind: 'stopped' });
});
