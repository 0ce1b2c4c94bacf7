import { kitOf } from '../../../../src/domain/kit.js';
import { describe, expect, it } from 'vitest';

import type { Board, Catalogue, WiredFeed } from '../../../../src/domain/board.js';
import { microamps, partId, supplyId } from '../../../../src/domain/quantities.js';
import { rewire } from '../../../../src/planning/rewire/rewire.js';
import { addPedal } from '../../../../src/planning/spare/add-pedal.js';
import { usualPedal, withPedals } from '../../../../src/planning/spare/extra-pedal.js';
import { spare, type Room, type Spare } from '../../../../src/planning/spare/spare.js';
import { bruteForce } from '../../../support/brute-force.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  currentTotal,
  factor,
  listed,
  partOf,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
  volts,
} from '../../../support/builders.js';
import { wiredOn } from '../../../support/wired.js';

const wired = (pedal: string, output: number, more: Partial<WiredFeed> = {}) => wiredOn('box', pedal, output, more);

const fan = partOf('fan', 1, { kind: 'chain', tails: 3 });
const policy = policyOf({ headroom: { alone: factor(1.2), chained: factor(2), supply: factor(1.2) } });

/** One box is owned, of these banks; three-way chain leads are owned, too. */
function plugged(
  banks: readonly ReturnType<typeof bankOf>[],
  pedals: Board['pedals'],
  wiring: readonly WiredFeed[],
  more: { readonly total?: number; readonly fans?: number } = {},
): { readonly board: Board; readonly catalogue: Catalogue } {
  const total = more.total === undefined ? null : currentTotal(more.total);
  const box = supplyOf('box', 10, banks, { total });
  const owned = {
    supplies: new Map([[supplyId('box'), 1]]),
    parts: new Map([[partId('fan'), more.fans ?? 0]]),
  };
  return { board: boardOf(pedals, { policy, owned, wiring }), catalogue: catalogueOf([box], [fan]) };
}

const weak = pedalOf('weak', 10);
const gain = pedalOf('gain', 10, { highGain: true });
const both = pedalOf('both', 10, { accepts: listed(9, 18) });

const small = (outputs: number) => bankOf(outputs, [settingOf(9, 100)]);
const large = (outputs: number) => bankOf(outputs, [settingOf(9, 250)]);

const cases: readonly (readonly [string, ReturnType<typeof plugged>, Partial<Room>, Partial<Room>])[] = [
  [
    'a small output free, a large one in use',
    plugged([small(1), large(1)], [weak], [wired('weak', 2)]),
    { more: 0 },
    { more: 1 },
  ],
  [
    'nothing free',
    plugged([small(1)], [weak], [wired('weak', 1)]),
    { more: 0, largest: null },
    { more: 0, largest: null },
  ],
  [
    'a total that ends before the outputs do',
    plugged([large(3)], [weak], [wired('weak', 1)], { total: 140 }),
    { more: 1 },
    { more: 1 },
  ],
  [
    'a chain lead to spare',
    plugged([bankOf(1, [settingOf(9, 500)])], [weak], [wired('weak', 1)], { fans: 1 }),
    { more: 2 },
    { more: 2 },
  ],
  [
    'a common ground with a high-gain pedal',
    plugged([bankOf(2, [settingOf(9, 250)], { isolated: false })], [gain], [wired('gain', 1)]),
    { more: 1 },
    { more: 1 },
  ],
  [
    'a switch in the way',
    plugged(
      [bankOf(2, [settingOf(9, 250), settingOf(18, 100)], { switching: 'together' })],
      [both],
      [wired('both', 1, { millivolts: volts(18) })],
    ),
    { more: 0, largest: null },
    { more: 1 },
  ],
];

async function spareOf({ board, catalogue }: ReturnType<typeof plugged>): Promise<Spare> {
  const found = await spare(kitOf(board, catalogue));
  if (found.kind !== 'spare') throw new Error(`it is ${found.kind}`);
  expect(found.whole).toBe(true);
  return found;
}

/** Only what is owned can be had. */
const unsold = ({ supplies, parts }: Catalogue): Catalogue =>
  catalogueOf(
    supplies.map((supply) => ({ ...supply, price: null, stock: 0 })),
    parts.map((part) => ({ ...part, price: null, stock: 0 })),
  );

/** By brute force: whether all have power when these are added and anything may move. */
const fits = ({ board, catalogue }: ReturnType<typeof plugged>, added: Board['pedals']): boolean =>
  bruteForce(withPedals(board, added), unsold(catalogue), { aim: 'quiet', partial: false }).kind === 'plan';

/** By adding them to the board and re-plugging it: whether they fit while all others stay. */
async function fitsAsPlugged(
  { board, catalogue }: ReturnType<typeof plugged>,
  added: Board['pedals'],
): Promise<boolean> {
  const keep = board.pedals.map(({ id }) => id);
  const answer = await rewire(kitOf(withPedals(board, added), catalogue), { keep, buy: 'never' });
  expect(answer.kind).not.toBe('stopped');
  return answer.kind === 'plan';
}

const hundreds = (count: number) => Array.from({ length: count }, (_, at) => usualPedal(`more-${at}`, 100_000, false));
const digital = (milliamps: number) => [usualPedal('digital', milliamps * 1000, true)];

describe.each(cases)('%s', (_, given, asPlugged, replugged) => {
  it('is counted by hand', async () => {
    const found = await spareOf(given);
    expect(found.of).toBe('wiring');
    expect(found.asPlugged).toMatchObject(asPlugged);
    expect(found.replugged).toMatchObject(replugged);
  });

  it('leaves room for as many pedals as are counted, and for no more', async () => {
    const found = await spareOf(given);
    const [fixed, free] = [found.asPlugged.more ?? -1, found.replugged.more ?? -1];
    expect(fits(given, hundreds(free))).toBe(true);
    expect(fits(given, hundreds(free + 1))).toBe(false);
    expect(await fitsAsPlugged(given, hundreds(fixed))).toBe(true);
    expect(await fitsAsPlugged(given, hundreds(fixed + 1))).toBe(false);
  });

  it('claims no more where the time ends on the way', async () => {
    const whole = await spareOf(given);
    expect([whole.asPlugged.atLeast, whole.replugged.atLeast]).toEqual([whole.asPlugged.more, whole.replugged.more]);
    for (let looks = 1; looks < 2_000; looks *= 2) {
      let left = looks;
      const found = await spare(kitOf(given.board, given.catalogue), { remainingMs: () => (left -= 1) });
      if (found.kind !== 'spare') continue;
      for (const room of ['asPlugged', 'replugged'] as const) {
        const { more, atLeast } = found[room];
        expect(atLeast).toBeLessThanOrEqual(whole[room].more ?? -1);
        if (more !== null) expect([more, atLeast]).toEqual([whole[room].more, whole[room].more]);
      }
      expect(found.replugged.atLeast).toBeGreaterThanOrEqual(found.asPlugged.atLeast);
    }
  });

  it('takes the largest digital pedal that is named, and none of a milliamp more', async () => {
    const found = await spareOf(given);
    const milliampsOf = ({ largest }: Room): number =>
      largest === null || largest === 'unknown' ? 0 : largest.milliamps;
    const [fixed, free] = [milliampsOf(found.asPlugged), milliampsOf(found.replugged)];
    if (free > 0) expect(fits(given, digital(free))).toBe(true);
    expect(fits(given, digital(free + 1))).toBe(false);
    if (fixed > 0) expect(await fitsAsPlugged(given, digital(fixed))).toBe(true);
    expect(await fitsAsPlugged(given, digital(fixed + 1))).toBe(false);
  });
});

it('tells the largest digital pedal with its noise and without', async () => {
  const banks = [bankOf(2, [settingOf(9, 250)], { isolated: false }), small(1)];
  const { asPlugged } = await spareOf(plugged(banks, [gain], [wired('gain', 1)]));
  expect(asPlugged.largest).toMatchObject({ milliamps: 208, exposes: 1, feed: { outputs: [2] } });
  expect(asPlugged.quietest).toMatchObject({ milliamps: 83, exposes: 0, feed: { outputs: [3] } });
});

describe('a wiring that is no basis', () => {
  const given = plugged([small(1), large(1)], [pedalOf('strong', 150)], []);

  it('is replaced by the plan where it is not complete', async () => {
    const found = await spareOf(given);
    expect(found).toMatchObject({ of: 'plan', asPlugged: { more: 0 }, replugged: { more: 0 } });
    expect(found.installed.wiring.feeds).toMatchObject([{ outputs: [2] }]);
  });

  it('is told where it breaks a rule, or where there is no plan either', async () => {
    const { board, catalogue } = given;
    const unsafe = await spare(kitOf({ ...board, wiring: [wired('strong', 1)] }, catalogue));
    expect(unsafe).toMatchObject({ kind: 'unsafe', findings: [{ rule: 'current' }] });
    const hopeless = { ...board, pedals: [pedalOf('hopeless', 900)] };
    expect(await spare(kitOf(hopeless, catalogue))).toEqual({ kind: 'impossible' });
    expect(await spare(kitOf(board, catalogue), { remainingMs: () => 0 })).toEqual({ kind: 'stopped' });
  });
});

describe('one more pedal', () => {
  const given = plugged([small(1), large(1)], [weak], [wired('weak', 2)]);
  const added = (milliamps: number) =>
    addPedal(
      kitOf(given.board, given.catalogue),
      { ...usualPedal('new', 0, true), draw: { kind: 'flat', microamps: microamps(milliamps * 1000) } },
      {},
    );

  it('goes where there is room, with nothing moved', async () => {
    expect(await added(50)).toMatchObject({
      answer: { kind: 'plan', changes: { moves: [], added: ['new'] }, wiring: { score: { money: 0, moved: 0 } } },
      bought: null,
    });
  });

  it('takes the moves that it cannot do without', async () => {
    expect(await added(200)).toMatchObject({
      answer: { kind: 'plan', changes: { moves: [{ to: { pedal: 'weak', outputs: [1] } }] } },
      bought: null,
    });
  });

  it('moves only what is plugged in today, also where a plan has to find a place for another one', async () => {
    const late = pedalOf('late', 10, { accepts: listed(9, 18), prefers: volts(18) });
    const strong = bankOf(1, [settingOf(9, 250), settingOf(18, 100)]);
    const half = plugged([small(2), strong], [weak, late], [wired('weak', 1)]);
    const found = await addPedal(kitOf(half.board, half.catalogue), usualPedal('new', 200_000, true));
    expect(found).toMatchObject({
      of: 'plan',
      answer: { kind: 'plan', changes: { moves: [], added: ['late', 'new'] } },
    });
  });

  it('is bought for where nothing else helps', async () => {
    const full = plugged([large(1)], [pedalOf('strong', 150)], [wired('strong', 1)]);
    const found = await addPedal(kitOf(full.board, full.catalogue), usualPedal('new', 100_000, true));
    expect(found).toMatchObject({
      answer: { kind: 'impossible' },
      bought: {
        answer: { kind: 'plan', wiring: { buy: { supplies: [{ id: 'box', units: 1 }] }, score: { moved: 0 } } },
      },
    });
  });

  it('does not fit where nothing is strong enough', async () => {
    expect(await added(900)).toMatchObject({
      answer: { kind: 'impossible' },
      bought: { answer: { kind: 'impossible' } },
    });
  });
});
