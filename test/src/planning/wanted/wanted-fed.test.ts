import { describe, expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import type { Pedal } from '../../../../src/domain/pedal.js';
import { pedalId } from '../../../../src/domain/quantities.js';
import type { Supply } from '../../../../src/domain/supply.js';
import { chooseOrSeek, type Wanted } from '../../../../src/planning/wanted/wanted.js';
import { wantedJson } from '../../../../src/report/json/wanted-codec.js';
import { speechOf } from '../../../../src/report/words/speech.js';
import { wantedLead, wantedPassages, wantedStanding } from '../../../../src/report/words/wanted.js';
import {
  bankOf,
  boardOf,
  factor,
  fedBy,
  listed,
  milliamps,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
} from '../../../support/builders.js';
import { bankHolding, block, fourHours, setsOf, wah } from '../../../support/impossible-sources.js';

const headroom = { alone: factor(1.2), chained: factor(2), supply: factor(1.5) };
const policy = policyOf({ headroom, chains: 'never' });

/** Two isolated outputs of 9 V; its inlet takes 12 V and draws 500 mA. */
const lock = supplyOf(
  'lock',
  20,
  [bankOf(2, [settingOf(9, 100)])],
  fedBy({ accepts: listed(12), microamps: milliamps(500) }),
);
const pedals = [pedalOf('a', 10), pedalOf('b', 20), pedalOf('c', 30)];

function bareKit(supplies: readonly Supply[], of: readonly Pedal[] = pedals, more = policy, units = 1) {
  const gear = supplies.map((supply) => ({ ...supply, price: null, stock: 0 }));
  const owned = { supplies: new Map(gear.map(({ id }) => [id, units] as const)), parts: new Map() };
  return kitOf(boardOf(of, { policy: more, gear: { supplies: gear, parts: [] }, owned }), null);
}

async function wantedFor(...of: Parameters<typeof bareKit>): Promise<Wanted> {
  const answer = await chooseOrSeek(bareKit(...of));
  if (answer.kind !== 'wanted') throw new Error(`nothing to look for: ${answer.kind}`);
  return answer;
}

const outputsOf = ({ outputs }: Wanted) =>
  outputs.map(({ pedals: fed, millivolts, rating }) => [fed.join(' + '), millivolts / 1000, rating / 1000]);

describe('an owned supply that hangs on another one', () => {
  it('is fed by an output to look for where that spares outputs', async () => {
    const wanted = await wantedFor([lock]);
    // With 12 mA for the smallest of the three, which then has an output of its own.
    expect(outputsOf(wanted)).toEqual([
      ['a', 9, 12],
      ['inlet of lock 1', 12, 600],
    ]);
    expect(wanted.isProven).toBe(true);
    expect(wanted.installed.feeds.map(({ pedal, supply }) => [pedal, supply])).toEqual([
      ['b', 'lock'],
      ['c', 'lock'],
    ]);
    expect(wanted.inlets).toEqual([]);
    // What hangs on the mains is to be found; its inlet takes none.
    expect(wanted.sockets).toEqual({ owned: 0, least: 1, most: 2 });
    // The inlet draws what it states, and the total has its reserve: (500 + 10) × 1.5.
    expect(wanted.together).toBe(milliamps(765));
  });

  it('hangs on a power bank to look for where no socket is left, by what its inlet draws', async () => {
    const wanted = await wantedFor([lock], pedals, { ...policy, ...fourHours, sockets: 0 });
    expect(outputsOf(wanted)).toEqual([
      ['a', 9, 12],
      ['inlet of lock 1', 12, 600],
    ]);
    // 4 h × (9 V × 10 mA + 12 V × 500 mA) by what counts of them.
    const { runtime } = fourHours;
    const usable = runtime.usable.numerator / runtime.usable.denominator;
    expect(wanted.charge).toBe(Math.ceil((4 * 6.09 * 10) / usable) * 100);
    expect(wanted.sockets).toEqual({ owned: 0, least: 0, most: 0 });
    const told = JSON.stringify(wantedPassages(speechOf(wanted.kit), wanted));
    // Nobody knows how long what is to be found lasts.
    expect(told).not.toMatch(/should last/);
    expect(told).toContain('Wh or more in all, so that they last 4 h');
  });

  it('is left where it spares none: milliamps then decide', async () => {
    const wanted = await wantedFor([lock], [pedalOf('a', 10)]);
    expect(outputsOf(wanted)).toEqual([['a', 9, 12]]);
  });

  it('hangs on what is owned where that does', async () => {
    const twelve = supplyOf('twelve', 1, [bankOf(1, [settingOf(12, 600)])]);
    const wanted = await wantedFor([twelve, lock]);
    expect(outputsOf(wanted)).toEqual([['a', 9, 12]]);
    expect(wanted.inlets).toMatchObject([{ supply: 'twelve', inletOf: { supply: 'lock', unit: 1 } }]);
    expect(wanted.sockets).toEqual({ owned: 1, least: 2, most: 2 });
    const both = await chooseOrSeek(bareKit([twelve, lock], pedals.slice(1)));
    expect(both.kind).toBe('plan');
  });

  it('needs but a lead where one makes it do', async () => {
    const jack = supplyOf('jack', 1, [bankOf(1, [settingOf(12, 600)], { plug: 'jack-3.5' })]);
    const wanted = await wantedFor([jack, lock], pedals.slice(1));
    expect(wanted.outputs).toEqual([]);
    expect(wanted.leads).toMatchObject([
      { units: 1, lead: { fits: 'jack-3.5', gives: 'barrel-2.1', reverses: false }, pedals: ['inlet of lock 1'] },
    ]);
  });

  it('of several units has an output for each that is used', async () => {
    const five = [...pedals, pedalOf('d', 40), pedalOf('e', 50)];
    const wanted = await wantedFor([lock], five, policy, 2);
    expect(outputsOf(wanted)).toEqual([
      ['a', 9, 12],
      ['inlet of lock 1 + inlet of lock 2', 12, 600],
    ]);
  });

  it('is one supply in use that a limit counts', async () => {
    const wanted = await wantedFor([lock], pedals, { ...policy, bricks: 1 });
    expect(outputsOf(wanted).map(([fed]) => fed)).toEqual(['a', 'b', 'c']);
  });

  it('is told in words and in JSON', async () => {
    const wanted = await wantedFor([lock]);
    const speech = speechOf(wanted.kit);
    expect(wantedLead(speech, wanted)).toMatch(/^Look for 2 isolated outputs with 612 mA in all\./);
    expect(wantedStanding(wanted)).toMatch(/^Proven, with a pedal or an inlet on each: /);
    const texts = wantedPassages(speech, wanted).flatMap(({ entries }) => entries.map(({ text }) => text));
    expect(texts).toContain(
      '1 isolated output, 12 V DC, 600 mA or more, centre-negative, plug 2.1 mm barrel: for lock inlet.',
    );
    expect(JSON.parse(wantedJson(wanted))).toMatchObject({
      count: 2,
      outputs: [
        { outputs: 1, pedals: ['a'], inlets: [] },
        { outputs: 1, pedals: [], inlets: [{ supply: 'lock', unit: 1 }] },
      ],
      feeds: [{ supply: 'lock' }, { supply: 'lock' }],
      inlets: [],
    });
    const twelve = supplyOf('twelve', 1, [bankOf(1, [settingOf(12, 600)])]);
    const owned = await wantedFor([twelve, lock]);
    expect(JSON.parse(wantedJson(owned))).toMatchObject({
      inlets: [{ supply: 'lock', unit: 1, from: { supply: 'twelve', unit: 1, output: 1 } }],
    });
    const told = wantedPassages(speechOf(owned.kit), owned).flatMap(({ entries }) => entries.map(({ text }) => text));
    expect(told.some((text) => text.startsWith('lock inlet: twelve'))).toBe(true);
  });
});

describe('other sources', () => {
  it('batteries that are owned spare an output, as many of them as are paid for', async () => {
    const parts = [{ ...block(550), price: null, stock: 0 }];
    const of = [wah(2), pedalOf('b', 20)];
    const sets = setsOf(of, parts);
    const terms = { ...policy, batteries: { change: factor(8), pay: factor(500) } };
    const having = (pieces: number) =>
      kitOf(
        boardOf(of, {
          policy: terms,
          gear: { supplies: sets.gear?.supplies ?? [], parts },
          owned: {
            supplies: new Map((sets.gear?.supplies ?? []).map(({ id }) => [id, 1])),
            parts: new Map(parts.map(({ id }) => [id, pieces])),
          },
        }),
        null,
      );
    const soughtWith = async (pieces: number) => {
      const answer = await chooseOrSeek(having(pieces));
      if (answer.kind !== 'wanted') throw new Error(`nothing to look for: ${answer.kind}`);
      return answer.outputs.flatMap(({ pedals: fed }) => fed);
    };
    // 500 h × 2 mA are 1000 mAh: two blocks.
    expect(await soughtWith(2)).toEqual(['b']);
    expect(await soughtWith(1)).toEqual(['wah', 'b']);
  });

  it('a power bank that is owned feeds what it can for as long as it must last', async () => {
    const of = [pedalOf('looper', 100), pedalOf('b', 20)];
    const enough = await wantedFor([bankHolding(7.2)], of, { ...policy, ...fourHours });
    expect(enough.installed.feeds.map(({ pedal }) => pedal)).toEqual(['looper']);
    const tooSmall = await wantedFor([bankHolding(7.1)], of, { ...policy, ...fourHours });
    expect(tooSmall.installed.feeds.map(({ pedal }) => pedal)).toEqual(['b']);
  });

  it('a pedal on its own adapter needs no output, and takes a socket', async () => {
    const own = supplyOf('own-station', 0, [bankOf(1, [settingOf(9, 1)])], {
      source: { kind: 'adapter', volts: null },
    });
    const station = pedalOf('station', 0, { adapter: { supply: own.id, only: true }, ground: 'unknown' });
    const wanted = await wantedFor([own], [station, pedalOf('b', 20)]);
    expect(wanted.outputs.flatMap(({ pedals: fed }) => fed)).toEqual([pedalId('b')]);
    expect(wanted.sockets).toEqual({ owned: 1, least: 2, most: 2 });
    const texts = wantedPassages(speechOf(wanted.kit), wanted).flatMap(({ entries }) =>
      entries.map(({ text }) => text),
    );
    // Nobody has stated its volts.
    expect(texts).toContain('station: own-station, own lead.');
  });
});
