import { describe, expect, it } from 'vitest';

import type { Board } from '../../../../src/domain/board.js';
import { kitOf } from '../../../../src/domain/kit.js';
import type { Pedal } from '../../../../src/domain/pedal.js';
import { partId, pedalId, supplyId } from '../../../../src/domain/quantities.js';
import type { Supply } from '../../../../src/domain/supply.js';
import { chooseOrSeek, type Wanted } from '../../../../src/planning/wanted/wanted.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  factor,
  listed,
  milliamps,
  partOf,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
  volts,
} from '../../../support/builders.js';
import { wantedJson } from '../../../../src/report/json/wanted-codec.js';
import { speechOf } from '../../../../src/report/words/speech.js';
import { wantedLead, wantedPassages } from '../../../../src/report/words/wanted.js';

const headroom = { alone: factor(1.2), chained: factor(2), supply: factor(1.5) };
const policy = policyOf({ headroom, guess: factor(1.5) });

const answerFor = (board: Board) => chooseOrSeek(kitOf(board, null));

async function wantedFor(pedals: readonly Pedal[], more: Partial<Omit<Board, 'pedals'>> = {}): Promise<Wanted> {
  const answer = await answerFor(boardOf(pedals, { policy, ...more }));
  if (answer.kind !== 'wanted') throw new Error(`nothing to look for: ${answer.kind}`);
  return answer;
}

/** A box and perhaps leads that are owned, one of each. */
const owning = (supply: Supply, ...parts: readonly ReturnType<typeof partOf>[]): Pick<Board, 'gear' | 'owned'> => ({
  gear: {
    supplies: [{ ...supply, price: null, stock: 0 }],
    parts: parts.map((part) => ({ ...part, price: null, stock: 0 })),
  },
  owned: {
    supplies: new Map([[supply.id, 1]]),
    parts: new Map(parts.map(({ id }) => [id, 1])),
  },
});

const outputsOf = ({ outputs }: Wanted) =>
  outputs.map(({ pedals, millivolts, rating, polarity, power }) => [
    pedals.join(' '),
    millivolts / 1000,
    rating / 1000,
    polarity ?? power,
  ]);

describe('outputs to look for', () => {
  it('are one a pedal, alike ones together, with headroom and switch-on in whole milliamps', async () => {
    const wanted = await wantedFor([
      pedalOf('tuner', 30),
      pedalOf('fuzz', 4.1),
      pedalOf('delay', 70, { startup: milliamps(200) }),
      pedalOf('drive', 30),
      pedalOf('guessed', 25, { figure: 'guess' }),
      pedalOf('pump', 100, { power: 'AC', polarity: null }),
    ]);
    expect(outputsOf(wanted)).toEqual([
      ['tuner drive', 9, 36, 'centre-negative'],
      ['fuzz', 9, 5, 'centre-negative'],
      ['delay', 9, 200, 'centre-negative'],
      ['guessed', 9, 45, 'centre-negative'],
      ['pump', 9, 120, 'AC'],
    ]);
    expect(wanted.leads).toEqual([]);
  });

  it('stand at the volts that take the least, then at those preferred, then at usual ones', async () => {
    const perVoltage = {
      kind: 'per voltage',
      microamps: new Map([
        [volts(9), milliamps(300)],
        [volts(12), milliamps(230)],
      ]),
    } as const;
    const wanted = await wantedFor([
      pedalOf('hungry', 0, { accepts: listed(9, 12), draw: perVoltage, prefers: volts(9) }),
      pedalOf('choosy', 15, { accepts: listed(9, 18), prefers: volts(18) }),
      pedalOf('wide', 50, { accepts: { kind: 'range', from: volts(7), to: volts(15) } }),
    ]);
    expect(outputsOf(wanted)).toEqual([
      ['hungry', 12, 276, 'centre-negative'],
      ['choosy', 18, 18, 'centre-negative'],
      ['wide', 9, 60, 'centre-negative'],
    ]);
  });

  it('never carry a chain, even where the policy allows it and a chain lead is owned', async () => {
    const fan = partOf('fan', 1, { kind: 'chain', tails: 5 });
    const weak = supplyOf('weak', 1, [bankOf(1, [settingOf(5, 10)])]);
    const wanted = await wantedFor([pedalOf('a', 10), pedalOf('b', 10), pedalOf('c', 500)], owning(weak, fan));
    expect(wanted.outputs.flatMap(({ pedals }) => pedals)).toHaveLength(3);
    expect(wanted.feeds.every(({ chain }) => chain === null)).toBe(true);
  });
});

describe('a search that stops early', () => {
  const pedals = [pedalOf('tuner', 30), pedalOf('drive', 10)];

  it('gives the best that was found, which is not proven, also where it never began', async () => {
    const answer = await chooseOrSeek(kitOf(boardOf(pedals, { policy }), null), { remainingMs: () => 0 });
    if (answer.kind !== 'wanted') throw new Error(`nothing to look for: ${answer.kind}`);
    expect(answer.isProven).toBe(false);
    expect(answer.outputs.flatMap(({ pedals: fed }) => fed)).toEqual(['tuner', 'drive']);
    expect((await wantedFor(pedals)).isProven).toBe(true);
  });

  it('never takes what is owned to be too little, where nothing was found to look for', async () => {
    const six = supplyOf('six', 1, [bankOf(2, [settingOf(9, 100)])]);
    const board = boardOf(pedals, { policy, ...owning(six) });
    const answer = await chooseOrSeek(kitOf(board, null), { remainingMs: () => 0 });
    expect(answer.kind).not.toBe('wanted');
  });
});

describe('what is owned', () => {
  const six = supplyOf('six', 1, [bankOf(2, [settingOf(9, 100)])]);

  it('is used where it spares an output, and then where that spares milliamps', async () => {
    const wanted = await wantedFor([pedalOf('a', 10), pedalOf('b', 80), pedalOf('c', 50)], owning(six));
    expect(outputsOf(wanted)).toEqual([['a', 9, 12, 'centre-negative']]);
    expect(wanted.installed.feeds.map(({ pedal, supply }) => [pedal, supply])).toEqual([
      ['b', 'six'],
      ['c', 'six'],
    ]);
    expect(wanted.installed.unpowered).toEqual(['a']);
    expect(wanted.sockets).toEqual({ owned: 1, least: 2, most: 2 });
  });

  it('answers alone where it is enough', async () => {
    const answer = await answerFor(boardOf([pedalOf('a', 10), pedalOf('b', 80)], { policy, ...owning(six) }));
    expect(answer.kind).toBe('plan');
  });

  it('needs but a lead where one makes it do: no output is looked for', async () => {
    const odd = pedalOf('odd', 10, { polarity: 'centre-positive' });
    const wanted = await wantedFor([odd], owning(six));
    expect(wanted.outputs).toEqual([]);
    expect(wanted.leads).toMatchObject([{ lead: { reverses: true, price: null }, units: 1, pedals: ['odd'] }]);
    const flip = partOf('flip', 1, { kind: 'adapter' }, { reverses: true });
    expect((await answerFor(boardOf([odd], { policy, ...owning(six, flip) }))).kind).toBe('plan');
  });

  it('feeds several on a chain lead that is owned, where that is allowed', async () => {
    const fan = partOf('fan', 1, { kind: 'chain', tails: 5 });
    const strong = supplyOf('strong', 1, [bankOf(1, [settingOf(9, 1000)])]);
    const pedals = [pedalOf('a', 10), pedalOf('b', 10), pedalOf('c', 600)];
    const allowed = await wantedFor(pedals, owning(strong, fan));
    expect(allowed.installed.feeds.map(({ chain }) => chain)).toEqual(['fan', 'fan']);
    expect(outputsOf(allowed)).toEqual([['c', 9, 720, 'centre-negative']]);
    const never = await wantedFor(pedals, { ...owning(strong, fan), policy: { ...policy, chains: 'never' } });
    expect(outputsOf(never)).toEqual([['a b', 9, 12, 'centre-negative']]);
  });

  it('leaves a supply and a socket to the outputs where those are limited', async () => {
    const pedals = [pedalOf('a', 10), pedalOf('b', 20), pedalOf('c', 30)];
    const limited = await wantedFor(pedals, { ...owning(six), policy: { ...policy, bricks: 1 } });
    expect(limited.installed.feeds).toEqual([]);
    expect(limited.sockets).toEqual({ owned: 0, least: 1, most: 1 });
    const none = await answerFor(boardOf(pedals, { policy: { ...policy, sockets: 0 } }));
    expect(none.kind).toBe('impossible');
  });
});

describe('where no socket is left', () => {
  const lasting = { ...policy, runtime: { hours: factor(3), usable: factor(0.8) } };
  const street = { ...lasting, sockets: 0 };

  it('they are those of a power bank that lasts', async () => {
    const wanted = await wantedFor([pedalOf('drive', 15), pedalOf('looper', 140)], { policy: street });
    expect(outputsOf(wanted)).toEqual([
      ['drive', 9, 18, 'centre-negative'],
      ['looper', 9, 168, 'centre-negative'],
    ]);
    // 3 h × 9 V × 155 mA ÷ 0.8 = 5.23 Wh, in tenths.
    expect(wanted).toMatchObject({ charge: 5300, sockets: { owned: 0, least: 0, most: 0 }, isProven: true });
  });

  const terms = { ...policy, sockets: 0, batteries: { change: factor(8), pay: factor(100) } };
  const onBlock = (id: string, draw: number) =>
    pedalOf(id, draw, { battery: { type: '9V-block', count: 1, of: pedalId(id) } });

  it('nor anybody says how long a power bank must last, they are batteries of those that take any', async () => {
    const wanted = await wantedFor([onBlock('wah', 2), onBlock('boost', 5)], { policy: terms });
    // 8 h × 2 mA = 16 mAh, of which 100 h take ⌈200 ÷ 16⌉ = 13; of 40 mAh likewise ⌈500 ÷ 40⌉ = 13.
    expect(
      wanted.batteries.map(({ pedal, units, count, battery: { role } }) => [pedal, units, count, role.microampHours]),
    ).toEqual([
      ['wah', 13, 1, 16_000],
      ['boost', 13, 1, 40_000],
    ]);
    expect(wanted).toMatchObject({ outputs: [], leads: [], charge: null, isProven: true });
    expect(wanted.installed.unpowered).toEqual([]);
    const speech = speechOf(wanted.kit);
    expect(wantedLead(speech, wanted)).toContain('Look for 26 batteries.');
    expect(wantedPassages(speech, wanted)[0]?.entries.map(({ text }) => text)).toEqual([
      '13 × 9 V block batteries of 9 V with 16 mAh or more each: for wah, 1 at a time, which then last 8 h by what is known of the draw.',
      '13 × 9 V block batteries of 9 V with 40 mAh or more each: for boost, 1 at a time, which then last 8 h by what is known of the draw.',
    ]);
    expect(
      wantedPassages(speech, wanted)
        .at(-1)
        ?.entries.map(({ text }) => text),
    ).toEqual([
      'When you have found batteries, note what they hold and cost and ask again: the plan then says what to buy and which go into which pedal.',
    ]);
    expect(JSON.parse(wantedJson(wanted))).toMatchObject({
      batteries: [
        { type: '9V-block', volts: 9, milliampHours: 16, units: 13, count: 1, pedal: 'wah' },
        { pedal: 'boost' },
      ],
      feeds: [{ source: 'battery' }, { source: 'battery' }],
    });
  });

  it('batteries stand beside what takes the only socket, and are none of a pedal that takes none', async () => {
    const own = pedalOf('own', 0, { adapter: { supply: supplyId('own-own'), only: true } });
    const adapter = supplyOf('own-own', 0, [bankOf(1, [settingOf(9, 1)])], {
      source: { kind: 'adapter', volts: null },
    });
    const pedals = [onBlock('wah', 2), pedalOf('looper', 50)];
    const more = { ...owning(adapter), policy: { ...terms, sockets: 1 } };
    const beside = await wantedFor([own, onBlock('wah', 2)], more);
    expect(beside.batteries.map(({ pedal }) => pedal)).toEqual(['wah']);
    expect(beside.sockets).toEqual({ owned: 1, least: 1, most: 1 });
    expect(wantedLead(speechOf(beside.kit), beside)).toContain('what you own (1 of them) and what to look for');
    expect((await answerFor(boardOf(pedals, { policy: terms }))).kind).toBe('impossible');
  });

  it('stand beside what takes the only socket, and on mains where one is left', async () => {
    const pedals = [pedalOf('a', 10), pedalOf('b', 20)];
    const one = { ...supplyOf('one', 1, [bankOf(1, [settingOf(9, 20)])]) };
    const beside = await wantedFor(pedals, { ...owning(one), policy: { ...lasting, sockets: 1 } });
    // On mains, without what is owned, there would be two outputs; on mains all the same.
    expect(beside).toMatchObject({ charge: null, sockets: { owned: 0, least: 1, most: 1 } });
    const own = pedalOf('own', 0, { adapter: { supply: supplyId('own-own'), only: true } });
    const adapter = supplyOf('own-own', 0, [bankOf(1, [settingOf(9, 1)])], {
      source: { kind: 'adapter', volts: null },
    });
    const held = await wantedFor([own, ...pedals], { ...owning(adapter), policy: { ...lasting, sockets: 1 } });
    // 3 h × 9 V × 30 mA ÷ 0.8 = 1.0125 Wh.
    expect(held).toMatchObject({ charge: 1100, sockets: { owned: 1, least: 1, most: 1 } });
  });

  it('count guesses with their factor, and the supplies in use', async () => {
    const guessed = [pedalOf('a', 100, { figure: 'guess' })];
    // 3 h × 9 V × 150 mA ÷ 0.8 = 5.0625 Wh.
    expect(await wantedFor(guessed, { policy: street })).toMatchObject({ charge: 5100 });
    const none = await answerFor(boardOf(guessed, { policy: { ...street, bricks: 0 } }));
    expect(none.kind).toBe('impossible');
  });

  it('cannot be of AC', async () => {
    const pump = pedalOf('pump', 100, { power: 'AC', polarity: null });
    expect((await answerFor(boardOf([pump], { policy: street }))).kind).toBe('impossible');
    expect((await wantedFor([pump], { policy: lasting })).charge).toBe(null);
  });
});

describe('what nobody has read', () => {
  it('is looked for so that either polarity does: with a reversing lead, unless one is owned', async () => {
    const mole = pedalOf('mole', 30, { polarity: 'unknown', ground: 'unknown', unknown: ['polarity', 'ground'] });
    const wanted = await wantedFor([mole]);
    expect(outputsOf(wanted)).toEqual([['mole', 9, 36, 'centre-negative']]);
    expect(wanted.leads).toMatchObject([
      { units: 1, lead: { fits: 'barrel-2.1', gives: 'barrel-2.1', reverses: true } },
    ]);
    const [{ lead } = { lead: null }] = wanted.leads;
    expect(wanted.ledThere).toMatchObject([
      { pedal: 'mole', readings: { 'centre-negative': [], 'centre-positive': [lead?.id] } },
    ]);
    const flip = partOf('flip', 1, { kind: 'adapter' }, { reverses: true });
    const none = supplyOf('none', 1, [bankOf(1, [settingOf(5, 10)])]);
    const owned = await wantedFor([mole], owning(none, flip));
    expect(owned.leads).toEqual([]);
    expect(owned.ledThere).toMatchObject([{ readings: { 'centre-positive': [partId('flip')] } }]);
  });

  it('keeps a place, which counts like any other', async () => {
    const later = pedalOf('later', 30, { kept: 'later' });
    expect(outputsOf(await wantedFor([later, pedalOf('now', 30)]))).toEqual([['later now', 9, 36, 'centre-negative']]);
  });
});

describe('a supply with all of them', () => {
  it('needs a total for the loads with its headroom, or for what they take at switch-on', async () => {
    expect((await wantedFor([pedalOf('a', 10), pedalOf('b', 20)])).together).toBe(milliamps(45));
    const starting = pedalOf('a', 10, { startup: milliamps(90) });
    expect((await wantedFor([starting, pedalOf('b', 20)])).together).toBe(milliamps(110));
  });
});

describe('a catalogue, or a partial plan', () => {
  it('is answered by choose as ever', async () => {
    const board = boardOf([pedalOf('a', 10)], { policy });
    const partial = await chooseOrSeek(kitOf(board, null), { partial: true });
    expect(partial).toMatchObject({ kind: 'plan', wiring: { unpowered: ['a'] } });
    const sold = catalogueOf([supplyOf('weak', 1, [bankOf(1, [settingOf(9, 5)])])]);
    const answer = await chooseOrSeek(kitOf(board, sold));
    expect(answer.kind).toBe('impossible');
  });
});
