import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { Board } from '../../../../src/domain/board.js';
import { inletPedal, isFed, isInletId } from '../../../../src/domain/inlet.js';
import { kitOf } from '../../../../src/domain/kit.js';
import type { Part, PartRole } from '../../../../src/domain/part.js';
import type { Pedal } from '../../../../src/domain/pedal.js';
import { milliwattHours, minorUnits } from '../../../../src/domain/quantities.js';
import { choose } from '../../../../src/planning/choose/choose.js';
import { isSamePlace } from '../../../../src/planning/rewire/places.js';
import { todaysWiring } from '../../../../src/planning/today/todays-wiring.js';
import type { Stand } from '../../../../src/planning/wanted/made-up-kit.js';
import { chooseOrSeek, seekAsPlugged, type Wanted } from '../../../../src/planning/wanted/wanted.js';
import { caseOf, type Case } from '../../../support/arbitraries.js';
import { fedCase } from '../../../support/arbitrary-fed.js';
import { wiredCase } from '../../../support/arbitrary-wirings.js';
import { bruteForce } from '../../../support/brute-force.js';
import { catalogueOf, factor, onMains, partOf } from '../../../support/builders.js';
import { share, trying } from '../../../support/runs.js';
import { subsetsOf } from '../../../support/subsets.js';

const runs = 120;

/** One to three pedals, with no more than what their player owns. */
const bareBoard: fc.Arbitrary<Board> = caseOf({ min: 1, max: 3 }, { min: 1, max: 2 }, 2).map(bared);

/** The same, plugged already. */
const pluggedBoard: fc.Arbitrary<Board> = wiredCase.map(bared);

/** What was for sale is described and not for sale. */
function bared({ board, catalogue }: Case): Board {
  return {
    ...board,
    gear: {
      supplies: [...board.gear.supplies, ...catalogue.supplies].map((supply) => ({ ...supply, price: null, stock: 0 })),
      parts: [...board.gear.parts, ...catalogue.parts].map((part) => ({ ...part, price: null, stock: 0 })),
    },
  };
}

/** The same with one fed unit at the most, and without power banks: one stands in for what hangs on an output to look for. */
const fedBoard: fc.Arbitrary<Board> = fedCase(3, 2).map(({ board, catalogue }) => {
  const supplies = [...board.gear.supplies, ...catalogue.supplies].map((supply) => ({
    ...supply,
    ...(supply.source.kind === 'charge' ? onMains() : {}),
    price: null,
    stock: 0,
  }));
  const isOneFed = (id: string): boolean => supplies.find(isFed)?.id === id;
  const owned = supplies.map(({ id, source }): readonly [typeof id, number] => [
    id,
    source.kind === 'fed' ? Number(isOneFed(id)) : (board.owned.supplies.get(id) ?? 0),
  ]);
  const parts = [...board.gear.parts, ...catalogue.parts].map((part) => ({ ...part, price: null, stock: 0 }));
  return { ...board, gear: { supplies, parts }, owned: { ...board.owned, supplies: new Map(owned) } };
});

/** The same with no socket for what is to be found, and hours that a power bank must last. */
const streetBoard: fc.Arbitrary<Board> = fedBoard.map((board) => ({
  ...board,
  policy: { ...board.policy, sockets: 0, runtime: { hours: factor(2.5), usable: factor(0.8) } },
}));

/** The board with its fed unit standing on a charge that lasts for ever, as on an output that is found for it. */
function withFedFound(board: Board): Board {
  const charge = { kind: 'charge', milliwattHours: milliwattHours(1e12) } as const;
  const supplies = board.gear.supplies.map((supply) => (isFed(supply) ? { ...supply, source: charge } : supply));
  const runtime = { hours: factor(0.001), usable: factor(1) };
  return { ...board, gear: { ...board.gear, supplies }, policy: { ...board.policy, runtime } };
}

/** On mains where that is possible at all; else on a power bank, where somebody has said how long one must last. */
const leastAnywhere = (least: (board: Board, stand: Stand) => Least | null, board: Board): Least | null =>
  least(board, 'mains') ?? (board.policy.runtime === null ? null : least(board, 'charge'));

/** With the fed unit on an output to look for, or not. */
function leastOfFed(board: Board, stand: Stand): Least | null {
  const fed = board.gear.supplies.filter(isFed).find(({ id }) => (board.owned.supplies.get(id) ?? 0) > 0);
  const without = leastOf(board, stand);
  if (fed === undefined) return without;
  const found = leastOf(withFedFound(board), stand, [inletPedal(fed, 1)]);
  if (found === null || without === null) return found ?? without;
  return isLess(found, without) ? found : without;
}

/** Outputs, milliamps and leads to look for. */
type Least = readonly [outputs: number, milliamps: number, leads: number];

/** By trying every set of pedals on what is owned, each with all leads at a price of one; the others take an output each. */
function leastOf(board: Board, stand: Stand, inlets: readonly Pedal[] = []): Least | null {
  let best: Least | null = null;
  for (const owned of subsetsOf(board.pedals)) {
    const others = [...inlets, ...board.pedals.filter((pedal) => !owned.includes(pedal))];
    // A power bank has no output of AC.
    if (stand === 'charge' && others.some(({ power }) => power === 'AC')) continue;
    const leads = leadsFor(board, owned, others.length > 0 ? stand : null);
    if (leads === null) continue;
    const rated = others.reduce((sum, pedal) => sum + milliampsFor(pedal, board), 0);
    const reversing = others.filter(({ polarity }) => polarity === 'unknown').length;
    const found: Least = [others.length, rated, leads + reversing];
    if (best === null || isLess(found, best)) best = found;
  }
  return best;
}

const isLess = (one: Least, other: Least): boolean => {
  const at = one.findIndex((value, index) => value !== other[index]);
  return at >= 0 && (one[at] ?? 0) < (other[at] ?? 0);
};

/** The fewest leads to look for with which what is owned feeds them beside one more supply, if any; null when nothing does. */
function leadsFor(board: Board, pedals: readonly Pedal[], beside: Stand | null): number | null {
  const left = (limit: number | null, isTaken: boolean): number | null =>
    limit === null || !isTaken ? limit : limit - 1;
  const policy = {
    ...board.policy,
    budget: null,
    bricks: left(board.policy.bricks, beside !== null),
    sockets: left(board.policy.sockets, beside === 'mains'),
    noisePrice: minorUnits(0),
    supplyPrice: minorUnits(0),
  };
  if (Math.min(policy.bricks ?? 0, policy.sockets ?? 0) < 0) return null;
  if (pedals.length === 0) return 0;
  const answer = bruteForce({ ...board, policy, pedals }, catalogueOf([], everyLead(board)), {
    aim: 'cost',
    partial: false,
  });
  return answer.kind === 'plan' ? answer.score.money : null;
}

/** Adapters and join leads between all connectors that there are. */
function everyLead({ pedals, gear }: Board): readonly Part[] {
  const fed = gear.supplies.filter(isFed).map(({ source }) => source.inlet.plug);
  const inlets = new Set([...pedals.map(({ inlet }) => inlet), ...fed]);
  const plugs = new Set(gear.supplies.flatMap(({ banks }) => banks.map(({ plug }) => plug)));
  const all = [...new Set([...inlets, ...plugs, ...gear.parts.map(({ gives }) => gives)])];
  const roles: readonly (readonly [PartRole, readonly string[], readonly string[]])[] = [
    [{ kind: 'adapter' }, all, [...inlets]],
    [{ kind: 'join', mode: 'series' }, [...plugs], all],
    [{ kind: 'join', mode: 'parallel' }, [...plugs], all],
  ];
  return roles.flatMap(([role, from, to]) =>
    from.flatMap((fits) =>
      to.flatMap((gives) =>
        [false, true].map((reverses) =>
          partOf(`any ${JSON.stringify([role, fits, gives, reverses])}`, 0.01, role, { fits, gives, reverses }),
        ),
      ),
    ),
  );
}

/** load × alone, or what it takes at switch-on, in whole milliamps, at the volts where that is least. */
function milliampsFor({ draw, figure, startup }: Pedal, { policy: { guess, headroom } }: Board): number {
  const draws = draw.kind === 'flat' ? [draw.microamps] : [...draw.microamps.values()];
  const factors = figure === 'guess' ? [guess, headroom.alone] : [headroom.alone];
  const ratings = draws.map((drawn) => {
    const above = factors.reduce((product, { numerator }) => product * BigInt(numerator), BigInt(drawn));
    const below = factors.reduce((product, { denominator }) => product * BigInt(denominator), 1000n);
    return Math.max(Number((above + below - 1n) / below), Math.ceil((startup ?? 0) / 1000));
  });
  return Math.min(...ratings);
}

const soughtOf = ({ outputs, leads }: Wanted): Least => [
  outputs.reduce((sum, { pedals }) => sum + pedals.length, 0),
  outputs.reduce((sum, { pedals, rating }) => sum + (pedals.length * rating) / 1000, 0),
  leads.reduce((sum, { units }) => sum + units, 0),
];

/** Whether an owned lead may reverse what a label leaves open: it then saves a lead on an output to look for, too. */
const ownsReversing = ({ gear, owned, pedals }: Board): boolean =>
  pedals.some(({ polarity }) => polarity === 'unknown') &&
  gear.parts.some(({ id, role, reverses }) => role.kind === 'adapter' && reverses && (owned.parts.get(id) ?? 0) > 0);

describe('what to look for', () => {
  it('is as little as trying everything finds: outputs, then milliamps, then leads', async () => {
    const seen = { wanted: 0, beside: 0, leads: 0, impossible: 0 };
    await fc.assert(
      fc.asyncProperty(bareBoard, async (board) => {
        const kit = kitOf(board, null);
        const answer = await chooseOrSeek(kit);
        if (answer.kind === 'plan') return;
        expect((await choose(kit)).kind).toBe('impossible');
        const least = leastAnywhere(leastOf, board);
        if (answer.kind === 'impossible') seen.impossible += 1;
        if (answer.kind !== 'wanted') {
          expect([answer.kind, least]).toEqual(['impossible', null]);
          return;
        }
        const sought = soughtOf(answer);
        const counted = ownsReversing(board) ? 2 : 3;
        expect(sought.slice(0, counted)).toEqual(least?.slice(0, counted));
        seen.wanted += 1;
        if (answer.installed.feeds.length > 0 && sought[0] > 0) seen.beside += 1;
        if (sought[2] > 0) seen.leads += 1;
      }),
      trying(runs),
    );
    expect(seen.wanted).toBeGreaterThan(share(runs / 3));
    expect(seen.beside).toBeGreaterThan(share(runs / 10));
    expect(seen.leads).toBeGreaterThan(share(runs / 15));
  });

  it('is as little for a board that is plugged, and no fewer pedals stay where they are', async () => {
    const seen = { wanted: 0, more: 0 };
    await fc.assert(
      fc.asyncProperty(pluggedBoard, async (board) => {
        const kit = kitOf(board, null);
        const free = await chooseOrSeek(kit);
        if (free.kind !== 'wanted') return;
        const held = await seekAsPlugged(kit);
        if (held === null || held === 'unknown') throw new Error('nothing to look for');
        expect([held.isProven, ...soughtOf(held)]).toEqual([true, ...soughtOf(free)]);
        const today = todaysWiring(kit).feeds;
        const staying = ({ installed }: Wanted): number =>
          installed.feeds.filter((feed) => today.some((old) => old.pedal === feed.pedal && isSamePlace(old, feed)))
            .length;
        expect(staying(held)).toBeGreaterThanOrEqual(staying(free));
        expect(held.changes?.stays.length).toBe(staying(held));
        seen.wanted += 1;
        if (staying(held) > staying(free)) seen.more += 1;
      }),
      trying(runs),
    );
    expect(seen.wanted).toBeGreaterThan(share(runs / 10));
    expect(seen.more).toBeGreaterThan(0);
  });

  it.each([
    ['feeds an owned supply that hangs on another one where that spares something', fedBoard, 'mains'],
    ['is that of a power bank where no socket is left', streetBoard, 'charge'],
  ] as const)('%s', async (_, boards, stand) => {
    const seen = { wanted: 0, onWanted: 0 };
    await fc.assert(
      fc.asyncProperty(boards, async (board) => {
        const answer = await chooseOrSeek(kitOf(board, null));
        if (answer.kind === 'plan') return;
        const least = leastAnywhere(leastOfFed, board);
        if (answer.kind !== 'wanted') {
          expect([answer.kind, least]).toEqual(['impossible', null]);
          return;
        }
        const counted = ownsReversing(board) ? 2 : 3;
        expect(soughtOf(answer).slice(0, counted)).toEqual(least?.slice(0, counted));
        seen.wanted += 1;
        if (stand === 'charge') expect(answer.charge !== null).toBe(answer.outputs.length > 0);
        if (answer.outputs.some(({ pedals }) => pedals.some(isInletId))) seen.onWanted += 1;
      }),
      trying(runs),
    );
    expect(seen.wanted).toBeGreaterThan(share(runs / 3));
    expect(seen.onWanted).toBeGreaterThan(share(runs / 20));
  });
});
