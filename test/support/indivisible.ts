import type { Board, Catalogue } from '../../src/domain/board.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  currentTotal,
  listed,
  milliamps,
  partOf,
  pedalOf,
  settingOf,
  supplyOf,
} from './builders.js';

/** What the best plan comes to: minor units, supplies, leads and pedals off their preferred volts. */
type Best = readonly [cost: number, bricks: number, parts: number, offPreferred: number];

const nine = [settingOf(9, 100)];
const pedalsOf = (...draws: readonly number[]) => draws.map((draw, index) => pedalOf(`pedal-${index}`, draw));
const at = (volts: number) => ['a', 'b', 'c'].map((id) => pedalOf(id, 50, { accepts: listed(volts) }));
const slow = (startup: number) => ['a', 'b'].map((id) => pedalOf(id, 40, { startup: milliamps(startup) }));

const chains = catalogueOf(
  [supplyOf('single', 10, [bankOf(1, nine)])],
  [partOf('pair', 1, { kind: 'chain', tails: 2 })],
);
const boxes = catalogueOf([supplyOf('box', 10, [bankOf(2, nine)], { total: currentTotal(100) })]);
const joins = catalogueOf(
  [supplyOf('three', 10, [bankOf(3, nine, { joins: ['series'] })])],
  [partOf('stack', 9, { kind: 'join', mode: 'series' })],
);
const both = [settingOf(9, 100), settingOf(12, 100)];
const switched = catalogueOf([supplyOf('together', 10, [bankOf(2, both, { switching: 'together' })])]);

const of = (what: string, pedals: Board['pedals'], catalogue: Catalogue, best: Best) => ({
  what,
  board: boardOf(pedals),
  catalogue,
  best,
});

/** Boards for which units would do together that do not one by one: nothing can be cut in parts. */
export const indivisible = [
  // Two chains of 100 mA would do for 200 mA in all, were it not for the three of 60 mA.
  of('chains that have the room together', pedalsOf(60, 60, 60, 20), chains, [3100, 3, 1, 0]),
  // 70 + 30 and 70 + 25 mA; two slow ones together would take 140.
  of('chains on which no two may start that are slow', [...slow(70), ...pedalsOf(30, 25)], chains, [2200, 2, 2, 0]),
  of('a milliamp more at switch-on', [...slow(71), ...pedalsOf(30, 25)], chains, [3100, 3, 1, 0]),
  // Three of 60 mA and one of 20 mA: 200 mA for two units, but no two of the three fit on one.
  of('totals that hold together', pedalsOf(60, 60, 60, 20), boxes, [3000, 3, 0, 0]),
  of('totals that hold one by one', pedalsOf(60, 60, 40, 40), boxes, [2000, 2, 0, 0]),
  of('a join that takes two outputs of one', at(18), joins, [5700, 3, 3, 0]),
  // Six outputs on three units, but three pedals at 9 V and three at 12 V take two units each.
  of('switches that are set for a whole unit', [...pedalsOf(50, 50, 50), ...at(12)], switched, [4000, 4, 0, 0]),
];
