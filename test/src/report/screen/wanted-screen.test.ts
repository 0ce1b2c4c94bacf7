import { describe, expect, it } from 'vitest';

import type { Board } from '../../../../src/domain/board.js';
import { kitOf } from '../../../../src/domain/kit.js';
import { supplyId } from '../../../../src/domain/quantities.js';
import { chooseOrSeek, type Wanted } from '../../../../src/planning/wanted/wanted.js';
import { reportText } from '../../../../src/report/formats.js';
import { noBreak } from '../../../../src/report/words/glue.js';
import { wantedJson } from '../../../../src/report/json/wanted-codec.js';
import { answerText } from '../../../../src/report/screen/terminal.js';
import { wantedText } from '../../../../src/report/screen/wanted-screen.js';
import {
  bankOf,
  boardOf,
  factor,
  partOf,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
  volts,
} from '../../../support/builders.js';
import { wiredOn } from '../../../support/wired.js';

const policy = policyOf({
  headroom: { alone: factor(1.2), chained: factor(2), supply: factor(1.2) },
  mains: [volts(230)],
});

/** One output is owned; three pedals, one of which may read either way and one of which is unread, need two more. */
const box = { ...supplyOf('box', 1, [bankOf(1, [settingOf(9, 400)])]), price: null, stock: 0 };
const board: Board = boardOf(
  [
    pedalOf('delay', 300),
    pedalOf('mole', 30, { polarity: 'unknown', unknown: ['polarity'] }),
    pedalOf('odd', 100, { unknown: ['volts'], kept: 'unread' }),
  ],
  {
    policy: { ...policy, mains: [], sockets: 3 },
    gear: { supplies: [box], parts: [] },
    owned: { supplies: new Map([[supplyId('box'), 1]]), parts: new Map() },
  },
);

async function sought(of: Board): Promise<Wanted> {
  const answer = await chooseOrSeek(kitOf(of, null));
  if (answer.kind !== 'wanted') throw new Error(`nothing to look for: ${answer.kind}`);
  return answer;
}

/** Without its line breaks. */
const said = (wanted: Wanted): string => wantedText(wanted, { width: 132, colour: false }).replace(/\s+/g, ' ');

describe('what to look for, on a screen', () => {
  it('begins with leads that are plugged today and not owned, where with them there is a plan', async () => {
    const fan = partOf('fan', 0, { kind: 'chain', tails: 2 }, { name: 'Chain of two', price: null, stock: 0 });
    const onChain = ['drive', 'chorus'].map((pedal) => wiredOn('box', pedal, 1, { chain: fan.id }));
    const plugged = {
      ...board,
      pedals: [pedalOf('drive', 10), pedalOf('chorus', 20)],
      gear: { supplies: [box], parts: [fan] },
      wiring: onChain,
    };
    const wanted = await sought(plugged);
    expect(said(wanted)).toContain(
      'Not among what you own ' +
        `${'─'.repeat(22)} • Plugged today, but not all there: 1 × Chain of two (0 owned, 0 for sale). ` +
        'With all that is plugged there is a plan. Look for',
    );
    expect(said(wanted)).toContain('• If you have it: add Chain of two to what you own, as often as it is plugged.');
    expect(JSON.parse(wantedJson(wanted))).toMatchObject({ unowned: { kind: 'unowned', parts: ['fan'] } });
    expect((await sought({ ...plugged, wiring: [] })).unowned).toBeNull();
  });

  it('is told to be unproven where the search stopped early', async () => {
    const found = await chooseOrSeek(kitOf(board, null), { remainingMs: () => 0 });
    if (found.kind !== 'wanted') throw new Error(`nothing to look for: ${found.kind}`);
    expect(said(found)).toContain(
      'Best found, not proven: the search stopped early. With this list every pedal has power; perhaps fewer outputs or ' +
        'milliamps do. Look for',
    );
    expect(said(found)).not.toContain('Proven');
    expect(JSON.parse(wantedJson(found))).toMatchObject({ status: 'best found' });
  });

  it('says that the milliamps have the reserve in them, where there is one', async () => {
    const reserve = '• The reserve is in these milliamps: at least the draw of what hangs there × 1.2.';
    expect(said(await sought(board))).toContain(reserve);
    const headroom = { ...policy.headroom, alone: factor(1) };
    expect(said(await sought({ ...board, policy: { ...policy, headroom } }))).not.toContain('The reserve is in');
  });

  it('is of a power bank where no socket is left, and asks for hours where nobody has said how long', async () => {
    const street = { ...board, gear: { supplies: [], parts: [] }, owned: { supplies: new Map(), parts: new Map() } };
    const pedals = [pedalOf('delay', 300)];
    const runtime = { hours: factor(3), usable: factor(0.8) };
    const wanted = await sought({ ...street, pedals, policy: { ...policy, sockets: 0, runtime } });
    const text = said(wanted);
    expect(text).toContain('Look for 1 isolated output with 360 mA in all, of a power bank.');
    // 3 h × 9 V × 300 mA ÷ 0.8 = 10.125 Wh.
    expect(text).toContain(
      'No mains socket is left for them: power banks have to hold 10.2 Wh or more in all, so that they last 3 h by 80 % of',
    );
    expect(text).not.toMatch(/mains volts|accept mains|mains socket in all/);
    expect(JSON.parse(wantedJson(wanted))).toMatchObject({ wattHours: 10.2, sockets: { least: 0, most: 0 } });
    const kit = kitOf({ ...street, pedals, policy: { ...policy, sockets: 0 } }, null);
    const none = await chooseOrSeek(kit);
    if (none.kind === 'wanted') throw new Error('nobody has said how long a power bank must last');
    const why = answerText(kit, none, { width: 132, colour: false }).replace(/\s+/g, ' ');
    expect(why).toContain('say for how many hours a power bank has to last, and what to look for is told.');
    expect(why).not.toContain('wait for stock');
  });

  it('is a list with what each thing is for, every pedal counted', async () => {
    const text = said(await sought(board));
    expect(text).toContain('Look for 2 isolated outputs with 156 mA in all and 1 lead.');
    expect(text).toContain(
      '3 pedals: 1 powered, 1 right for either reading, 1 place kept, from what you own (1 of them) and what to look for.',
    );
    expect(text).toContain('2 isolated outputs, 9 V DC, centre-negative, plug 2.1 mm barrel:');
    expect(text).toContain('1 of 120 mA or more: for odd (label unread).');
    expect(text).toContain('1 of 36 mA or more: for mole.');
    expect(text).toContain('1 reversing lead, from 2.1 mm barrel to 2.1 mm barrel: for mole.');
    expect(text).toContain('labelled centre-positive: own lead → reversing lead (to find).');
    expect(text).toContain(
      'Mains sockets in all: 2 where one supply has all these outputs, 3 at the most, 1 of them for what you own.',
    );
    expect(text).toContain('delay: box output 1, 9 V, own lead.');
    expect(text).toContain('states a total for its outputs: 156 mA or more.');
  });

  it('speaks of no money', async () => {
    const text = said(await sought(boardOf([pedalOf('a', 10)], { policy })));
    expect(text).not.toMatch(/EUR|price of|spend/i);
    expect(text).toContain('1 isolated output, 9 V DC, 12 mA or more, centre-negative, plug 2.1 mm barrel: for a.');
    expect(text).toContain('The supply must accept mains of 230 V.');
    expect(text).toContain('It takes 1 mains socket in all.');
  });

  it.each([60, 80, 120])('keeps within %d columns', async (width) => {
    const lines = wantedText(await sought(board), { width, colour: false }).split('\n');
    expect(lines.filter((line) => line.length > width)).toEqual([]);
  });
});

describe('what to look for, to take home', () => {
  it('is a page, Markdown, JSON and a list without prices', async () => {
    const answer = await sought(board);
    const input = { kit: kitOf(board, null), answer };
    const page = reportText('page', input).replaceAll(noBreak, ' ');
    for (const words of [
      'Test board: what to look for',
      '1 of 120 mA or more: for odd',
      '1 of 36 mA or more: for mole',
    ])
      expect(page).toContain(words);
    expect(page).toContain('<p class="standing">Look for 2 isolated outputs');
    const unproven = reportText('page', { ...input, answer: { ...answer, isProven: false } });
    expect(unproven).toContain('<p class="standing care">Look for 2 isolated outputs');
    expect(reportText('drawing', input)).not.toContain('Without power');
    expect(reportText('markdown', input)).toContain('1 of 120 mA or more: for odd');
    expect(JSON.parse(reportText('json', input))).toMatchObject({
      format: 'boardfeed/wanted/1',
      count: 2,
      milliamps: 156,
    });
    expect(reportText('shopping list', input)).toContain(
      'output,"isolated output, 9 V DC, 120 mA or more, centre-negative, plug 2.1 mm barrel",,1,,,',
    );
  });
});
