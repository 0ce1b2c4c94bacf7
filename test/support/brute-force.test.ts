import { describe, expect, it } from 'vitest';

import type { ChoosingAim } from '../../src/domain/aim.js';
import type { Board, Catalogue } from '../../src/domain/board.js';
import { partId, supplyId } from '../../src/domain/quantities.js';
import type { Total } from '../../src/domain/supply.js';
import { bruteForce } from './brute-force.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  currentTotal,
  euros,
  factor,
  listed,
  milliamps,
  onMains,
  partOf,
  pedalOf,
  policyOf,
  scoreWith,
  powerTotal,
  settingOf,
  supplyOf,
  volts,
} from './builders.js';

type Figures = {
  unpowered?: number;
  money?: number;
  exposed?: number;
  bricks?: number;
  parts?: number;
  offPreferred?: number;
};

/** Every score that is not given is zero; money in euros. */
const planOf = ({ money = 0, ...figures }: Figures) => scoreWith({ money: euros(money), ...figures });

function best(board: Board, catalogue: Catalogue, aim: ChoosingAim = 'cost', partial = false) {
  const answer = bruteForce(board, catalogue, { aim, partial });
  return answer.kind === 'plan' ? answer.score : answer.kind;
}

const headroom = (alone: number, chained: number, supply: number) => ({
  alone: factor(alone),
  chained: factor(chained),
  supply: factor(supply),
});

const chainLead = (id: string, price: number, tails: number, more = {}) =>
  partOf(id, price, { kind: 'chain', tails }, more);
const adapterLead = (id: string, price: number, more = {}) => partOf(id, price, { kind: 'adapter' }, more);
const seriesLead = partOf('stack', 9, { kind: 'join', mode: 'series' });
const parallelLead = partOf('twin', 7, { kind: 'join', mode: 'parallel' });
const nine = (rating: number) => settingOf(9, rating);
const wall = (price: number, rating: number, more = {}) =>
  supplyOf(`wall-${rating}`, price, [bankOf(1, [nine(rating)])], more);

describe('the best of everything', () => {
  it('weighs money against bricks, and counts a load that just fits', () => {
    const board = boardOf([pedalOf('a', 100), pedalOf('b', 100)], {
      policy: policyOf({ headroom: headroom(1.2, 2, 1) }),
    });
    const catalogue = catalogueOf([wall(25, 120), supplyOf('brick', 60, [bankOf(4, [nine(120)])])]);
    expect(best(board, catalogue)).toEqual(planOf({ money: 50, bricks: 2 }));
    expect(best(board, catalogue, 'bricks')).toEqual(planOf({ money: 60, bricks: 1 }));
    const over = boardOf([pedalOf('a', 100.001)], { policy: board.policy });
    expect(best(over, catalogue)).toBe('impossible');
  });

  it('chains pedals under the factor for several', () => {
    const policy = policyOf({ headroom: headroom(1, 2, 1) });
    const catalogue = catalogueOf([wall(10, 500)], [chainLead('fan', 8, 3)]);
    const boardWith = (draw: number, alone = false) =>
      boardOf([pedalOf('a', draw, { alone }), pedalOf('b', draw), pedalOf('c', draw)], { policy });
    expect(best(boardWith(80), catalogue)).toEqual(planOf({ money: 18, bricks: 1, parts: 1 }));
    // 3 × 84 mA × 2 = 504 mA: one of them needs its own adapter, and so does one that must stand alone.
    expect(best(boardWith(84), catalogue)).toEqual(planOf({ money: 28, bricks: 2, parts: 1 }));
    expect(best(boardWith(80, true), catalogue)).toEqual(planOf({ money: 28, bricks: 2, parts: 1 }));
    const never = boardOf(boardWith(80).pedals, { policy: { ...policy, chains: 'never' } });
    expect(best(never, catalogue)).toEqual(planOf({ money: 30, bricks: 3 }));
    const twoTails = catalogueOf([wall(10, 500)], [chainLead('fan', 8, 2)]);
    expect(best(boardWith(80), twoTails)).toEqual(planOf({ money: 28, bricks: 2, parts: 1 }));
  });

  it('prices the noise', () => {
    const pedals = [pedalOf('a', 50, { highGain: true }), pedalOf('b', 50, { digital: true })];
    const catalogue = catalogueOf([wall(10, 500)], [chainLead('fan', 8, 2)]);
    const cheapNoise = boardOf(pedals, { policy: policyOf({ noisePrice: euros(1) }) });
    expect(best(boardOf(pedals), catalogue)).toEqual(planOf({ money: 20, bricks: 2 }));
    expect(best(cheapNoise, catalogue)).toEqual(planOf({ money: 18, exposed: 1, bricks: 1, parts: 1 }));
    expect(best(cheapNoise, catalogue, 'quiet')).toEqual(planOf({ money: 20, bricks: 2 }));
    expect(best(boardOf(pedals), catalogue, 'bricks')).toEqual(planOf({ money: 18, exposed: 1, bricks: 1, parts: 1 }));
  });

  it('counts the common ground across banks, and no pedal as its own noise', () => {
    const brick = supplyOf('brick', 30, [
      bankOf(1, [nine(100)], { isolated: false }),
      bankOf(1, [nine(100)], { isolated: false }),
    ]);
    const both = { highGain: true, digital: true };
    const policy = policyOf({ noisePrice: euros(2) });
    const boardWith = (first: object, second: object) =>
      boardOf([pedalOf('a', 50, first), pedalOf('b', 50, second)], { policy });
    const catalogue = catalogueOf([brick]);
    expect(best(boardWith(both, both), catalogue)).toEqual(planOf({ money: 30, exposed: 2, bricks: 1 }));
    expect(best(boardWith(both, {}), catalogue)).toEqual(planOf({ money: 30, bricks: 1 }));
    expect(best(boardWith(both, { highGain: true }), catalogue)).toEqual(planOf({ money: 30, exposed: 1, bricks: 1 }));
    // A positive ground must not meet a negative one.
    expect(best(boardWith({ ground: 'positive' }, {}), catalogue)).toEqual(planOf({ money: 60, bricks: 2 }));
    const isolated = catalogueOf([supplyOf('brick', 30, [bankOf(2, [nine(100)])])]);
    expect(best(boardWith({ ground: 'positive' }, {}), isolated)).toEqual(planOf({ money: 30, bricks: 1 }));
    const chain = catalogueOf([wall(10, 500)], [chainLead('fan', 1, 2)]);
    expect(best(boardWith({ ground: 'positive' }, {}), chain)).toEqual(planOf({ money: 20, bricks: 2 }));
  });

  it('joins in series, counting the load on both outputs', () => {
    const board = boardOf([pedalOf('a', 80, { accepts: listed(18) })]);
    const withTotals = (bank: number, watts: number) =>
      catalogueOf(
        [
          supplyOf('brick', 50, [bankOf(2, [nine(100)], { joins: ['series'], total: currentTotal(bank) })], {
            total: powerTotal(watts),
          }),
        ],
        [seriesLead],
      );
    expect(best(board, withTotals(160, 1.44))).toEqual(planOf({ money: 59, bricks: 1, parts: 1 }));
    expect(best(board, withTotals(159.999, 1.44))).toBe('impossible');
    expect(best(board, withTotals(160, 1.439))).toBe('impossible');
    expect(best(boardOf([pedalOf('a', 100.001, { accepts: listed(18) })]), withTotals(900, 90))).toBe('impossible');
  });

  it('joins in parallel across two banks, counting the load once in the supply', () => {
    const board = boardOf([pedalOf('a', 180)]);
    const withTotals = (bank: number, whole: number, polarity: 'either' | 'centre-positive' = 'either') => {
      const joins = ['parallel'] as const;
      const banks = [
        bankOf(1, [nine(100)], { joins, total: currentTotal(180) }),
        bankOf(1, [nine(80), settingOf(12, 400)], { joins, total: currentTotal(bank), polarity }),
      ];
      return catalogueOf([supplyOf('brick', 50, banks, { total: currentTotal(whole) })], [parallelLead]);
    };
    expect(best(board, withTotals(180, 180))).toEqual(planOf({ money: 57, bricks: 1, parts: 1 }));
    expect(best(board, withTotals(179.999, 180))).toBe('impossible');
    expect(best(board, withTotals(180, 179.999))).toBe('impossible');
    expect(best(board, withTotals(180, 180, 'centre-positive'))).toBe('impossible');
    expect(best(boardOf([pedalOf('a', 180.001)]), withTotals(400, 400))).toBe('impossible');
  });

  it('keeps one setting in a bank that is switched together', () => {
    const board = boardOf([pedalOf('a', 50), pedalOf('b', 50, { accepts: listed(12, 18), prefers: volts(18) })]);
    const settings = [nine(100), settingOf(12, 100), settingOf(18, 40)];
    const brick = (switching: 'each' | 'together') =>
      catalogueOf([supplyOf('brick', 30, [bankOf(2, settings, { switching })])]);
    expect(best(board, brick('together'))).toEqual(planOf({ money: 60, bricks: 2, offPreferred: 1 }));
    expect(best(board, brick('each'))).toEqual(planOf({ money: 30, bricks: 1, offPreferred: 1 }));
  });

  it('minds the open-circuit volts', () => {
    const catalogue = catalogueOf([supplyOf('wall', 10, [bankOf(1, [settingOf(9, 300, 13)])])]);
    const withPedal = (more: object) => best(boardOf([pedalOf('a', 50, more)]), catalogue);
    const fed = planOf({ money: 10, bricks: 1 });
    expect(withPedal({ survives: volts(13) })).toEqual(fed);
    expect(withPedal({ survives: volts(12.999) })).toBe('impossible');
    expect(withPedal({ accepts: listed(9, 13) })).toEqual(fed);
    expect(withPedal({ accepts: { kind: 'range', from: volts(9), to: volts(13) } })).toEqual(fed);
    expect(withPedal({ accepts: listed(13), survives: volts(20) })).toBe('impossible');
  });

  it('adds the open-circuit volts of a series join, and takes the higher of a parallel one', () => {
    const joins = ['series', 'parallel'] as const;
    const banks = [bankOf(1, [settingOf(9, 100, 12)], { joins }), bankOf(1, [settingOf(9, 100, 11)], { joins })];
    const catalogue = catalogueOf([supplyOf('brick', 20, banks)], [seriesLead, parallelLead]);
    const series = (survives: number) =>
      best(boardOf([pedalOf('a', 50, { accepts: listed(18), survives: volts(survives) })]), catalogue);
    const parallel = (survives: number) => best(boardOf([pedalOf('a', 150, { survives: volts(survives) })]), catalogue);
    expect(series(23)).toEqual(planOf({ money: 29, bricks: 1, parts: 1 }));
    expect(series(22.999)).toBe('impossible');
    expect(parallel(12)).toEqual(planOf({ money: 27, bricks: 1, parts: 1 }));
    expect(parallel(11.999)).toBe('impossible');
  });

  it('finds the way through at most two adapters', () => {
    const board = boardOf([pedalOf('a', 50, { inlet: 'jack-3.5', polarity: 'centre-positive' })]);
    const flip = adapterLead('flip', 4, { reverses: true });
    const mini = adapterLead('mini', 5, { gives: 'jack-3.5' });
    const both = adapterLead('mini-flip', 9, { gives: 'jack-3.5', reverses: true });
    expect(best(board, catalogueOf([wall(10, 100)], [flip, mini]))).toEqual(planOf({ money: 19, bricks: 1, parts: 2 }));
    expect(best(board, catalogueOf([wall(10, 100)], [flip, mini, both]))).toEqual(
      planOf({ money: 19, bricks: 1, parts: 1 }),
    );
    const hop = adapterLead('hop', 1, { gives: 'barrel-2.5' });
    const skip = adapterLead('skip', 1, { fits: 'barrel-2.5', gives: 'jack-3.5' });
    expect(best(board, catalogueOf([wall(10, 100)], [flip, hop, skip]))).toBe('impossible');
    const owned = { supplies: new Map(), parts: new Map([[partId('flip'), 1]]) };
    expect(best(boardOf(board.pedals, { owned }), catalogueOf([wall(10, 100)], [flip, mini, both]))).toEqual(
      planOf({ money: 15, bricks: 1, parts: 2 }),
    );
  });

  it('turns the polarity by a chain lead, a tail or a switch that the whole output shares', () => {
    const positive = { polarity: 'centre-positive' } as const;
    const pair = boardOf([pedalOf('a', 50, positive), pedalOf('b', 50, positive)]);
    const mixed = boardOf([pedalOf('a', 50, positive), pedalOf('b', 50)]);
    const flip = adapterLead('flip', 4, { reverses: true });
    const parts = [chainLead('fan', 1, 2), chainLead('turned', 6, 2, { reverses: true }), flip];
    expect(best(pair, catalogueOf([wall(10, 100)], parts))).toEqual(planOf({ money: 16, bricks: 1, parts: 1 }));
    expect(best(mixed, catalogueOf([wall(10, 100)], parts))).toEqual(planOf({ money: 15, bricks: 1, parts: 2 }));
    const switched = supplyOf('wall', 10, [bankOf(1, [nine(100)], { polarity: 'either' })]);
    expect(best(pair, catalogueOf([switched], parts))).toEqual(planOf({ money: 11, bricks: 1, parts: 1 }));
    expect(best(mixed, catalogueOf([switched], parts))).toEqual(planOf({ money: 15, bricks: 1, parts: 2 }));
  });

  it('uses what is owned first and no more than there is', () => {
    const three = [pedalOf('a', 50), pedalOf('b', 50), pedalOf('c', 50)];
    const gear = { supplies: [supplyOf('old', 0, [bankOf(1, [nine(100)])], { price: null, stock: 0 })], parts: [] };
    const owned = { supplies: new Map([[supplyId('old'), 1], [supplyId('wall-100'), 1]]), parts: new Map() }; // prettier-ignore
    const dear = supplyOf('dear', 15, [bankOf(1, [nine(100)])]);
    expect(best(boardOf(three, { gear, owned }), catalogueOf([wall(10, 100), dear]))).toEqual(
      planOf({ money: 10, bricks: 3 }),
    );
    expect(best(boardOf(three, { gear, owned }), catalogueOf([wall(10, 100, { stock: 0 }), dear]))).toEqual(
      planOf({ money: 15, bricks: 3 }),
    );
    expect(best(boardOf(three, { gear, owned }), catalogueOf([wall(10, 100, { stock: 0 })]))).toBe('impossible');
  });

  it('buys the cheap leads while they last', () => {
    const positive = { polarity: 'centre-positive' } as const;
    const board = boardOf([pedalOf('a', 50, positive), pedalOf('b', 50, positive)]);
    const leads = [
      adapterLead('flip', 4, { reverses: true, stock: 1 }),
      adapterLead('flip-de-luxe', 7, { reverses: true }),
    ];
    const catalogue = catalogueOf([supplyOf('brick', 30, [bankOf(2, [nine(100)])])], leads);
    expect(best(board, catalogue)).toEqual(planOf({ money: 41, bricks: 1, parts: 2 }));
  });

  it('keeps the limits, and leaves out as few pedals as it can when allowed to', () => {
    const pedals = [pedalOf('a', 50), pedalOf('b', 50), pedalOf('c', 50, { accepts: listed(24) })];
    const catalogue = catalogueOf([wall(10, 100)]);
    const under = (limits: object) => boardOf(pedals, { policy: policyOf(limits) });
    expect(best(under({}), catalogue)).toBe('impossible');
    expect(best(under({}), catalogue, 'cost', true)).toEqual(planOf({ unpowered: 1, money: 20, bricks: 2 }));
    const one = planOf({ unpowered: 2, money: 10, bricks: 1 });
    expect(best(under({ budget: euros(19.99) }), catalogue, 'cost', true)).toEqual(one);
    expect(best(under({ bricks: 1 }), catalogue, 'quiet', true)).toEqual(one);
    expect(best(under({ sockets: 1 }), catalogue, 'bricks', true)).toEqual(one);
    expect(best(under({ sockets: 0 }), catalogue, 'bricks', true)).toEqual(planOf({ unpowered: 3 }));
    expect(best(under({ budget: euros(20) }), catalogue, 'cost', true)).toEqual(
      planOf({ unpowered: 1, money: 20, bricks: 2 }),
    );
  });

  it('starts all pedals of an output at once', () => {
    const pedals = [pedalOf('a', 100, { startup: milliamps(300) }), pedalOf('b', 100)];
    const on = (rating: number, policy = policyOf(), given = pedals) =>
      best(boardOf(given, { policy }), catalogueOf([wall(10, rating)], [chainLead('fan', 8, 2)]));
    expect(on(400)).toEqual(planOf({ money: 18, bricks: 1, parts: 1 }));
    expect(on(399.999)).toEqual(planOf({ money: 20, bricks: 2 }));
    expect(on(300, policyOf({ headroom: headroom(3, 1, 1) }))).toEqual(planOf({ money: 20, bricks: 2 }));
    expect(on(299.999)).toBe('impossible');
    const both = pedals.map((pedal) => ({ ...pedal, startup: milliamps(300) }));
    expect(on(600, policyOf(), both)).toEqual(planOf({ money: 18, bricks: 1, parts: 1 }));
    expect(on(599.999, policyOf(), both)).toEqual(planOf({ money: 20, bricks: 2 }));
  });

  it('starts all pedals of a supply and of a bank at once', () => {
    const pedals = ['a', 'b'].map((id) => pedalOf(id, 50, { startup: milliamps(150) }));
    const board = boardOf(pedals, { policy: policyOf({ headroom: headroom(1, 1, 1.2) }) });
    const brick = (total: Total, ofBank: Total | null) =>
      supplyOf('brick', 40, [bankOf(2, [nine(150)], { total: ofBank })], { total });
    const on = (total: Total, ofBank: Total | null = null) => best(board, catalogueOf([brick(total, ofBank)]));
    const [one, two] = [planOf({ money: 40, bricks: 1 }), planOf({ money: 80, bricks: 2 })];
    expect([on(currentTotal(300)), on(powerTotal(2.7))]).toEqual([one, one]);
    expect([on(currentTotal(299.999)), on(powerTotal(2.699))]).toEqual([two, two]);
    expect(on(currentTotal(300), currentTotal(299.999))).toEqual(two);
    expect(on(powerTotal(2.7), powerTotal(1.349))).toBe('impossible');
  });

  it('multiplies a guessed draw, and every total by its own factor', () => {
    const pedals = [pedalOf('a', 100, { figure: 'guess' }), pedalOf('b', 90)];
    const policy = policyOf({ headroom: headroom(1.2, 1, 1.25), guess: factor(1.5) });
    const on = (rating: number, total: number) =>
      best(
        boardOf(pedals, { policy }),
        catalogueOf([supplyOf('brick', 40, [bankOf(2, [nine(rating)])], { total: currentTotal(total) })]),
      );
    // 150 mA × 1.2 = 180 mA; (150 + 90) mA × 1.25 = 300 mA.
    expect(on(180, 300)).toEqual(planOf({ money: 40, bricks: 1 }));
    expect(on(180, 299.999)).toEqual(planOf({ money: 80, bricks: 2 }));
    expect(on(179.999, 300)).toBe('impossible');
  });

  it('reads the draw at the volts that reach the pedal, and breaks ties by preferred volts', () => {
    const draw = { kind: 'per voltage', microamps: new Map([[volts(9), milliamps(300)], [volts(12), milliamps(200)]]) } as const; // prettier-ignore
    const pedal = pedalOf('a', 0, { accepts: listed(9, 12), prefers: volts(9), draw });
    const brick = (atNine: number) =>
      catalogueOf([supplyOf('brick', 40, [bankOf(1, [nine(atNine), settingOf(12, 200)])])]);
    expect(best(boardOf([pedal]), brick(300))).toEqual(planOf({ money: 40, bricks: 1 }));
    expect(best(boardOf([pedal]), brick(299))).toEqual(planOf({ money: 40, bricks: 1, offPreferred: 1 }));
  });

  it('hangs AC pedals on AC outputs, never on a chain, whatever the polarity of the leads', () => {
    const alternating = { power: 'AC', polarity: null } as const;
    const pedals = [pedalOf('a', 50, { ...alternating, inlet: 'jack-3.5' }), pedalOf('b', 50, alternating)];
    const acWall = supplyOf('ac', 12, [bankOf(1, [nine(500)], alternating)]);
    const parts = [adapterLead('mini', 5, { gives: 'jack-3.5', reverses: true }), chainLead('fan', 1, 2)];
    expect(best(boardOf(pedals), catalogueOf([wall(10, 500), acWall], parts))).toEqual(
      planOf({ money: 29, bricks: 2, parts: 1 }),
    );
    expect(best(boardOf(pedals), catalogueOf([wall(10, 500)], parts))).toBe('impossible');
    const joins = ['series'] as const;
    const acBrick = supplyOf('ac-brick', 20, [bankOf(2, [nine(500)], { ...alternating, joins })]);
    const eighteen = boardOf([pedalOf('a', 50, { ...alternating, accepts: listed(18) })]);
    expect(best(eighteen, catalogueOf([acBrick], [seriesLead]))).toEqual(planOf({ money: 29, bricks: 1, parts: 1 }));
  });

  it('refuses supplies that do not state the mains of the venue', () => {
    const board = boardOf([pedalOf('a', 50)], { policy: policyOf({ mains: [volts(230)] }) });
    const catalogue = (to: number) =>
      catalogueOf([wall(10, 100), wall(12, 200, onMains(100, 229.999)), wall(14, 300, onMains(230, to))]);
    expect(best(board, catalogue(230))).toEqual(planOf({ money: 14, bricks: 1 }));
    expect(best(boardOf(board.pedals), catalogue(230))).toEqual(planOf({ money: 10, bricks: 1 }));
    expect(best(board, catalogueOf([wall(10, 100)]))).toBe('impossible');
  });
});
