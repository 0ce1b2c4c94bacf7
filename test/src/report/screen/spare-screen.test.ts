import { kitOf } from '../../../../src/domain/kit.js';
import { describe, expect, it } from 'vitest';

import type { Board, Catalogue } from '../../../../src/domain/board.js';
import type { Pedal } from '../../../../src/domain/pedal.js';
import { supplyId } from '../../../../src/domain/quantities.js';
import { checkOutput } from '../../../../src/planning/check/check-output.js';
import { addPedal } from '../../../../src/planning/spare/add-pedal.js';
import { usualPedal } from '../../../../src/planning/spare/extra-pedal.js';
import { spare, type Spare } from '../../../../src/planning/spare/spare.js';
import { outputAnswerText } from '../../../../src/report/screen/output-screen.js';
import { spareJson } from '../../../../src/report/json/spare-codec.js';
import { addedText, spareText } from '../../../../src/report/screen/spare-screen.js';
import { roomTexts } from '../../../../src/report/words/output-room.js';
import { speechOf } from '../../../../src/report/words/speech.js';
import { unitUses } from '../../../../src/report/words/usage.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  currentTotal,
  factor,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
} from '../../../support/builders.js';
import { wiredOn } from '../../../support/wired.js';

const screen = { width: 100, colour: false } as const;
const box = supplyId('box');

/** Two boxes alike, each of two banks with a total; one pedal hangs on the second bank of the first box. */
function twoBoxes(): { readonly board: Board; readonly catalogue: Catalogue } {
  const bank = () => bankOf(1, [settingOf(9, 300)], { total: currentTotal(250) });
  const board = boardOf([pedalOf('weak', 10)], {
    policy: policyOf(),
    owned: { supplies: new Map([[box, 2]]), parts: new Map() },
    wiring: [wiredOn('box', 'weak', 2)],
  });
  return { board, catalogue: catalogueOf([supplyOf('box', 10, [bank(), bank()])], []) };
}

describe('what there is to spare on a screen', () => {
  it('names the unit of a place where two alike are owned and nothing hangs on the other', async () => {
    const { board, catalogue } = twoBoxes();
    const text = spareText(kitOf(board, catalogue), await spare(kitOf(board, catalogue)), screen);
    expect(text).toMatch(/as it is plugged: up to 250 mA, on box, unit [12], output [12]\./);
  });

  it('tells what is known of a count that was not settled in time', async () => {
    const { board, catalogue } = twoBoxes();
    const kit = kitOf(board, catalogue);
    const found = await spare(kit);
    if (found.kind !== 'spare') throw new Error('the board is whole');
    const told = (atLeast: number): string =>
      spareText(kit, { ...found, replugged: { ...found.replugged, more: null, atLeast } }, screen).replaceAll(
        /\s+/g,
        ' ',
      );
    expect(told(2)).toContain(' as it is plugged, at least 2, as far as was settled in time, when others may move.');
    expect(told(0)).toContain(' as it is plugged, not settled in time when others may move.');
  });

  it('says that the reserve is counted on top of what more pedals draw, where there is one', async () => {
    const { board, catalogue } = twoBoxes();
    const reserved = { ...board.policy.headroom, alone: factor(1.2) };
    const kit = kitOf({ ...board, policy: { ...board.policy, headroom: reserved } }, catalogue);
    const reserve = 'The reserve is counted on top: × 1.2 for a pedal alone.';
    expect(spareText(kit, await spare(kit), screen)).toContain(reserve);
    const bare = kitOf(board, catalogue);
    expect(spareText(bare, await spare(bare), screen)).not.toContain('on top');
  });

  it('speaks of a plan where not every pedal is plugged, and calls none of it plugged', async () => {
    const { board, catalogue } = twoBoxes();
    const kit = kitOf({ ...board, pedals: [...board.pedals, pedalOf('late', 20)] }, catalogue);
    const text = spareText(kit, await spare(kit), screen);
    expect(text).toContain('By the best plan, since not every pedal is plugged in today: 2 pedals');
    expect(text).toMatch(/as that plan has it, \d when others may move\./);
    expect(text).not.toContain('as it is plugged');
  });

  it('gives what is left of totals that nothing hangs on, in a unit that is in use', async () => {
    const { board, catalogue } = twoBoxes();
    const found = await spare(kitOf(board, catalogue));
    const text = spareText(kitOf(board, catalogue), found, screen);
    expect(text.match(/these outputs together/g)).toHaveLength(4);
    const { units } = JSON.parse(spareJson(kitOf(board, null), found)) as { units: { totals: { left: number }[] }[] };
    expect(units.map(({ totals }) => totals.map(({ left }) => left))).toEqual([
      [250, 240],
      [250, 250],
    ]);
  });
});

describe('a pedal of which nobody knows the ground', () => {
  /** It hangs on the first of three outputs, and on the ground of the first two where these share one; another pedal hangs on the third. */
  async function beside({ isolated, ground }: { readonly isolated: boolean; readonly ground: Pedal['ground'] }) {
    const banks = [bankOf(2, [settingOf(9, 100)], { isolated }), bankOf(1, [settingOf(9, 100)])];
    const kit = kitOf(
      boardOf([pedalOf('unread', 10, { ground }), pedalOf('known', 10)], {
        owned: { supplies: new Map([[box, 1]]), parts: new Map() },
        wiring: [wiredOn('box', 'unread', 1), wiredOn('box', 'known', 3)],
      }),
      catalogueOf([supplyOf('box', 10, banks)]),
    );
    const found = await spare(kit);
    const told = JSON.parse(spareJson(kit, found)) as {
      readonly asPlugged: { readonly more: number };
      readonly units: readonly { readonly free: { readonly output: number }[]; readonly used: { left: number }[] }[];
    };
    return {
      text: spareText(kit, found, screen),
      more: told.asPlugged.more,
      free: told.units.flatMap((unit) => unit.free.map(({ output }) => output)),
      left: told.units.flatMap((unit) => unit.used.map(({ left }) => left)),
      room: found.kind === 'spare' ? roomOf(found, 2) : [],
    };
  }

  function roomOf({ installed: { kit, wiring } }: Spare, output: number): readonly string[] {
    const speech = speechOf(kit);
    return unitUses(kit.board, speech.inventory, wiring).flatMap((unit) => roomTexts(speech, unit, output));
  }

  it('has a common ground to itself, of which no other output is free', async () => {
    const { text, ...told } = await beside({ isolated: false, ground: 'unknown' });
    const room = ['Nothing hangs on it, nor can it: unread has this ground to itself.'];
    expect(told).toEqual({ more: 0, free: [], left: [0, 90], room });
    expect(text).toMatch(/^ +2 +not free: unread has this ground to itself$/m);
    expect(text).toContain('left: nothing beside a pedal of unknown ground');
    expect(text).toContain('left: 90 mA');
  });

  it.each([
    ['is alone on its own output where outputs are isolated', { isolated: true, ground: 'unknown' }, [0, 90]],
    ['leaves them free once its ground is known', { isolated: false, ground: 'negative' }, [90, 90]],
  ] as const)('%s', async (_, given, left) => {
    const { text, ...told } = await beside(given);
    const room = ['It is free: one more pedal that draws up to 100 mA at 9 V.'];
    expect(told).toEqual({ more: 1, free: [2], left, room });
    expect(text).toMatch(/^ +2 +free: 9 V 100 mA$/m);
  });
});

describe('an answer about one output', () => {
  it('names the unit that was asked for where two alike are owned', () => {
    const { board, catalogue } = twoBoxes();
    const question = { pedal: pedalOf('weak', 10).id, supply: box, unit: 1, output: 1 };
    const text = outputAnswerText(kitOf(board, catalogue), checkOutput(kitOf(board, catalogue), question), screen);
    expect(text).toMatch(/can weak go on box, unit 1, output 1\?/);
  });
});

describe('one more pedal on a screen', () => {
  it('offers no plan without the pedal, and speaks of what was typed', async () => {
    const { board, catalogue } = twoBoxes();
    const added = await addPedal(kitOf(board, catalogue), usualPedal('new', 900_000, true));
    if (added.kind !== 'added') throw new Error(`it is ${added.kind}`);
    const text = addedText(added, screen);
    expect(text).toContain('One more pedal: no, not even when others move.');
    expect(text).toContain("Check that pedal's label against what you typed");
    expect(text).not.toContain('partial plan');
    expect(text).not.toContain('By the best plan');
  });

  it('says what counts as owned though it is only planned', async () => {
    const { board, catalogue } = twoBoxes();
    const bare = kitOf({ ...board, owned: { supplies: new Map(), parts: new Map() }, wiring: [] }, catalogue);
    const added = await addPedal(bare, usualPedal('new', 20_000, true));
    if (added.kind !== 'added') throw new Error(`it is ${added.kind}`);
    const text = addedText(added, screen);
    expect(text).toContain('By the best plan, once what it buys is there, since not every pedal is plugged in today.');
    expect(added.wiring.buy.supplies).toMatchObject([{ id: 'box', units: 1 }]);
  });
});
