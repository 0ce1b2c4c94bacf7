import { describe, expect, it } from 'vitest';

import type { Policy } from '../../../src/domain/board.js';
import type { Part } from '../../../src/domain/part.js';
import type { Pedal } from '../../../src/domain/pedal.js';
import type { Supply } from '../../../src/domain/supply.js';
import { withoutDominated } from '../../../src/loadout/dominance.js';
import { benchOf, usesOf } from '../../support/bench.js';
import {
  bankOf,
  currentTotal,
  factor,
  listed,
  milliamps,
  partOf,
  pedalOf,
  policyOf,
  powerTotal,
  settingOf,
  supplyOf,
  volts,
} from '../../support/builders.js';

type Setup = {
  readonly pedals?: readonly Pedal[];
  readonly parts?: readonly Part[];
  readonly policy?: Policy;
  readonly owned?: Readonly<Record<string, number>>;
};

const two = [pedalOf('one', 50), pedalOf('two', 80)];

/** The supplies that are left: the better one alone when it makes the other needless. */
function left(supplies: readonly Supply[], { pedals = two, parts = [], policy, owned = {} }: Setup = {}) {
  const bench = benchOf(pedals, parts, policy);
  const all = supplies.map((supply) => usesOf(supply, bench, owned[supply.id] ?? 0));
  return withoutDominated(all, bench).map(({ supply, forSale }) => [supply.id, forSale] as const);
}

const idsLeft = (supplies: readonly Supply[], setup: Setup = {}): readonly string[] =>
  left(supplies, setup).map(([id]) => id);

type Bank = ReturnType<typeof bankOf>;
type BankChange = Partial<Bank>;
const nine = [settingOf(9, 100)];
const nineAndTwelve = [settingOf(9, 100), settingOf(12, 100)];
const supply = (
  id: string,
  price: number,
  change: BankChange = {},
  more: Parameters<typeof supplyOf>[3] = {},
): Supply => supplyOf(id, price, [bankOf(2, nine, change)], more);

describe('a supply that another one matches in every respect', () => {
  const good = supply('good', 20);

  it('is left out when it costs as much or more, wherever it stands', () => {
    expect(idsLeft([good, supply('dear', 20.01)])).toEqual(['good']);
    expect(idsLeft([supply('dear', 20.01), good])).toEqual(['good']);
    expect(idsLeft([good, supply('same', 20)])).toEqual(['good']);
  });

  it('stays when it is a cent cheaper', () => {
    expect(idsLeft([good, supply('cheap', 19.99, { outputs: 1 })])).toEqual(['good', 'cheap']);
  });

  it.each<[string, BankChange]>([
    ['fewer outputs', { outputs: 1 }],
    ['a rating too low for a pedal', { settings: [settingOf(9, 79.999)] }],
    ['a common ground', { isolated: false }],
    ['a total', { total: currentTotal(150) }],
    ['unregulated settings', { settings: [settingOf(9, 100, 9)] }],
  ])('is left out with %s', (_, change) => {
    expect(idsLeft([good, supply('worse', 20, change)])).toEqual(['good']);
    // The other way round, each of these is a reason to stay.
    expect(idsLeft([supply('worse', 20, change), supply('good', 21)])).toEqual(['worse', 'good']);
  });

  it('is left out when it has one of two settings, one position of a polarity switch, one bank of two', () => {
    const pedals = [pedalOf('one', 50), pedalOf('two', 50, { accepts: listed(12) })];
    const rich = supply('rich', 20, { settings: nineAndTwelve, polarity: 'either' });
    expect(idsLeft([rich, supply('nine', 20)], { pedals })).toEqual(['rich']);
    const wide = supplyOf('wide', 20, [bankOf(2, nine), bankOf(2, nine)]);
    expect(idsLeft([wide, good])).toEqual(['wide']);
  });

  it('is left out when all that it has more is of no use to the board', () => {
    expect(idsLeft([good, supply('volts', 20, { settings: nineAndTwelve })])).toEqual(['good']);
    const second = supplyOf('second', 20, [bankOf(2, nine), bankOf(2, [settingOf(24, 100)])]);
    expect(idsLeft([good, second])).toEqual(['good']);
    expect(idsLeft([good, supply('strong', 20, { settings: [settingOf(9, 900)] })])).toEqual(['good']);
  });
});

describe('a supply that another one does not quite match', () => {
  const stays = (change: BankChange, setup: Setup = {}, better: BankChange = {}): void => {
    expect(idsLeft([supply('first', 20, better), supply('second', 30, change)], setup)).toEqual(['first', 'second']);
  };

  it('stays for one output, or one bank, more', () => {
    stays({ outputs: 3 });
    const pair = supplyOf('pair', 30, [bankOf(1, nine), bankOf(1, nine)]);
    // One bank cannot stand in for two, large as it may be.
    expect(idsLeft([supply('large', 20, { outputs: 5 }), pair])).toEqual(['large', 'pair']);
  });

  it('stays for a rating that one more pedal can use', () => {
    const pedals = [...two, pedalOf('three', 100.001)];
    expect(
      idsLeft([supply('first', 20), supply('second', 30, { settings: [settingOf(9, 100.001)] })], { pedals }),
    ).toEqual(['first', 'second']);
    expect(idsLeft([supply('first', 20), supply('second', 30, { settings: [settingOf(9, 100)] })], { pedals })).toEqual(
      ['first'],
    );
  });

  it('stays for a rating that a guess, the headroom or a start can use', () => {
    const stronger = { settings: [settingOf(9, 120)] };
    const headroom = policyOf({ headroom: { ...policyOf().headroom, alone: factor(1.2) } });
    stays(stronger, { pedals: [pedalOf('one', 50), pedalOf('two', 100)], policy: headroom });
    stays(stronger, {
      pedals: [pedalOf('one', 50), pedalOf('two', 80, { figure: 'guess' })],
      policy: policyOf({ guess: factor(1.5) }),
    });
    stays(stronger, { pedals: [pedalOf('one', 50), pedalOf('two', 80, { startup: milliamps(120) })] });
  });

  it('stays for a rating that only a chain can use', () => {
    const fan = partOf('fan', 8, { kind: 'chain', tails: 5 });
    const stronger = { settings: [settingOf(9, 130)] };
    stays(stronger, { parts: [fan] });
    const never = policyOf({ chains: 'never' });
    expect(idsLeft([supply('first', 20), supply('second', 30, stronger)], { parts: [fan], policy: never })).toEqual([
      'first',
    ]);
    expect(
      idsLeft([supply('first', 20), supply('second', 30, stronger)], { parts: [{ ...fan, fits: 'jack-3.5' }] }),
    ).toEqual(['first']);
    // Both pedals together draw 130 mA; whatever is above that is of no use.
    const full = supply('first', 20, { settings: [settingOf(9, 130)] });
    expect(idsLeft([full, supply('second', 30, { settings: [settingOf(9, 500)] })], { parts: [fan] })).toEqual([
      'first',
    ]);
  });

  it('stays for a ground of its own, another plug, polarity or power', () => {
    stays({}, {}, { isolated: false });
    stays({ plug: 'jack-3.5' }, { pedals: [...two, pedalOf('three', 50, { inlet: 'jack-3.5' })] });
    stays({ polarity: 'either' }, { pedals: [...two, pedalOf('three', 50, { polarity: 'centre-positive' })] });
    stays({ power: 'AC', polarity: null }, { pedals: [...two, pedalOf('three', 50, { power: 'AC', polarity: null })] });
  });

  it('stays for settings that are chosen output by output', () => {
    const pedals = [pedalOf('one', 50), pedalOf('two', 50, { accepts: listed(12) })];
    const each = { settings: nineAndTwelve };
    const together: BankChange = { settings: nineAndTwelve, switching: 'together' };
    stays(each, { pedals }, together);
    expect(idsLeft([supply('first', 20, each), supply('second', 30, together)], { pedals })).toEqual(['first']);
    // Where only one of the settings is of use, there is nothing to choose.
    expect(idsLeft([supply('first', 20, together), supply('second', 30, each)])).toEqual(['first']);
  });

  it('stays for a wider total, of its bank or of the whole', () => {
    stays({ total: currentTotal(130) }, {}, { total: currentTotal(129.999) });
    stays({ total: powerTotal(1.17) }, {}, { total: powerTotal(1.169) });
    // 1.8 W are 200 mA at 9 V, and 1 W is 111 mA.
    stays({ total: powerTotal(1.8) }, {}, { total: currentTotal(100) });
    stays({ total: currentTotal(130) }, {}, { total: powerTotal(1) });
    const tight = supply('tight', 20, {}, { total: currentTotal(100) });
    expect(idsLeft([tight, supply('wide', 30, {}, { total: currentTotal(101) })])).toEqual(['tight', 'wide']);
    expect(idsLeft([tight, supply('free', 30)])).toEqual(['tight', 'free']);
    expect(idsLeft([tight, supply('same', 30, {}, { total: currentTotal(100) })])).toEqual(['tight']);
  });

  it('stays for a join that its maker allows, as long as there is a lead for it', () => {
    const stack = partOf('stack', 9, { kind: 'join', mode: 'series' });
    const pedals = [...two, pedalOf('high', 50, { accepts: listed(9, 18) })];
    stays({ joins: ['series'] }, { pedals, parts: [stack] });
    expect(
      idsLeft([supply('first', 20, { joins: ['series', 'parallel'] }), supply('second', 30, { joins: ['series'] })], {
        pedals,
        parts: [stack],
      }),
    ).toEqual(['first']);
  });

  it('stays for a rating or a setting that only a join can use', () => {
    const twin = partOf('twin', 9, { kind: 'join', mode: 'parallel' });
    const joins = { joins: ['parallel'] as const };
    stays({ ...joins, settings: [settingOf(9, 150)] }, { parts: [twin], pedals: [...two, pedalOf('big', 300)] }, joins);
    const stack = partOf('stack', 9, { kind: 'join', mode: 'series' });
    // Nothing on the board takes 12 V, but twice that.
    const pedals = [...two, pedalOf('high', 50, { accepts: listed(24) })];
    const settings = { joins: ['series'] as const, settings: nineAndTwelve };
    stays(settings, { parts: [stack], pedals }, { joins: ['series'] });
  });

  it('stays for open-circuit volts that add up to others in a join', () => {
    const stack = partOf('stack', 9, { kind: 'join', mode: 'series' });
    const pedals = [
      pedalOf('one', 50, { survives: volts(12) }),
      pedalOf('high', 50, { accepts: listed(18), survives: volts(24) }),
    ];
    const joins = { joins: ['series'] as const };
    // Two regulated outputs stay at 18 V, two unregulated ones rise to 24 V.
    stays({ ...joins, settings: [settingOf(9, 100, 12)] }, { pedals, parts: [stack] }, joins);
  });
});

describe('units that run out', () => {
  it('make no other supply needless, unless there is one for every pedal', () => {
    const few = supply('few', 20, {}, { stock: 1 });
    expect(idsLeft([few, supply('dear', 30)])).toEqual(['few', 'dear']);
    expect(idsLeft([{ ...few, stock: 2 }, supply('dear', 30)])).toEqual(['few']);
    expect(idsLeft([few, supply('dear', 30)], { owned: { few: 1 } })).toEqual(['few', 'dear']);
  });

  it('that are owned stay, but no more of them are bought', () => {
    expect(left([supply('good', 20), supply('dear', 30)], { owned: { dear: 1 } })).toEqual([
      ['good', Infinity],
      ['dear', 0],
    ]);
  });

  it('that are not for sale make nothing needless', () => {
    const gear = { ...supply('gear', 0), price: null, stock: 0 };
    expect(idsLeft([gear, supply('dear', 30)], { owned: { gear: 5 } })).toEqual(['gear', 'dear']);
  });

  it('and are themselves needless do not hide a supply behind a third', () => {
    // The second is needless beside the first, and the third beside either.
    const chainOfThree = [supply('third', 40, { outputs: 1 }), supply('first', 20), supply('second', 30)];
    expect(idsLeft(chainOfThree)).toEqual(['first']);
    // The first runs out: the second must be kept, and it is enough for the third.
    expect(idsLeft([supply('first', 20, {}, { stock: 1 }), supply('second', 30), supply('third', 40)])).toEqual([
      'first',
      'second',
    ]);
  });
});
