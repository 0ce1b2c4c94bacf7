import { readFile } from 'node:fs/promises';
import { basename, resolve } from 'node:path';

import { expect, test } from 'vitest';

import type { PedalId } from '../../../../src/domain/quantities.js';
import { rewire } from '../../../../src/planning/rewire/rewire.js';
import { inputsFromText } from '../../../../src/reading/inputs-from-text.js';
import { emptyDocument, type HeldFile } from '../../../../src/web/document/page-document.js';
import { createClerk } from '../../../../src/web/worker/clerk.js';
import type { News, Question } from '../../../../src/web/worker/messages.js';
import { toldAnswer } from '../../../../src/web/worker/told-answer.js';

const fixtures = resolve(import.meta.dirname, '../../../../fixtures');
const held = async (path: string): Promise<HeldFile> => ({
  file: basename(path),
  text: await readFile(resolve(fixtures, path), 'utf8'),
});
const newPedal = await held('boards/new-pedal.yaml');
const [delay, reverb] = ['skerry-delay' as PedalId, 'undertow-reverb' as PedalId];

/** What a clerk says of a question, and what it writes when the answer is how the board is plugged. */
async function asking(question: Partial<Question>) {
  const news: News[] = [];
  const take = createClerk({ post: (one) => news.push(structuredClone(one)), now: () => 0 });
  await take({ kind: 'ask', question: { ...emptyDocument, about: 1, ...question } });
  const last = news.findLast((one) => one.kind === 'answer')?.answer;
  const start = news.find((one) => one.kind === 'read')?.start;
  return {
    news,
    start,
    answer: last,
    plan: last?.kind === 'plan' ? last : null,
    written: async (chosen: string | null = null, about = 1): Promise<string | null | undefined> => {
      await take({ kind: 'record', shown: { about, chosen } });
      const told = news.at(-1);
      return told?.kind === 'recorded' ? told.text : undefined;
    },
  };
}

const kitIn = (text: string) => {
  const read = inputsFromText({ file: 'b.yaml', text }, null);
  if (read.kind === 'faulty') throw new Error(JSON.stringify(read.faults));
  return read.value;
};

test('a board that is plugged is re-plugged, word by word as the command does, and what starting over saves is told', async () => {
  const { news, start, answer } = await asking({ board: newPedal });
  expect(start?.approach).toBe('as plugged');
  const kit = kitIn(newPedal.text);
  expect(answer).toEqual(toldAnswer(kit, await rewire(kit), []));
  expect(news.find((one) => one.kind === 'over')?.text).toMatch(/^Planned from nothing: .* That saves nothing\.$/);
  expect(news.filter(({ kind }) => kind === 'choices' || kind === 'labels')).toEqual([]);
});

test('what is plugged is written into the board, comments and all, and nothing is left to do', async () => {
  const { written } = await asking({ board: newPedal });
  expect(await written(null, 2)).toBeUndefined();
  const text = (await written()) ?? '';
  expect(text.match(/#.*$/gm)).toEqual(newPedal.text.match(/#.*$/gm));
  const leads = kitIn(text).board.wiring.map(({ pedal, outputs, lead }) => [pedal, outputs[0], lead]);
  expect(leads).toContainEqual([delay, 4, 4]);
  expect(leads).toContainEqual([reverb, 6, 6]);
  const again = await asking({ board: { ...newPedal, text } });
  expect(again.plan).toMatchObject({ steps: [], changes: { moves: [], added: [] } });
});

test('leads keep their numbers for life when another pedal comes', async () => {
  const first = await asking({ board: newPedal });
  const text = ((await first.written()) ?? '').replace(
    /^gear:/m,
    '  - {name: Gannet wah, volts: 9, milliamps: 5}\ngear:',
  );
  const without = text.replace(/^ {2}- \{name: Cockle fuzz.*\n/m, '').replace(/^ {2}- \{pedal: cockle-fuzz.*\n/m, '');
  const second = await asking({ board: { ...newPedal, text: without } });
  const rows = second.plan?.rows.map(({ feed, mark }) => [feed.pedal, mark]);
  expect(rows).toContainEqual([delay, '4']);
  expect(rows).toContainEqual(['gannet-wah', '7']);
});

test('a pedal is kept where it is plugged, and where that cannot be, letting go is the way out', async () => {
  const { start } = await asking({ board: newPedal });
  const pinOf = (pedal: string) => {
    const pin = start?.plugged.find((one) => one.pedal === pedal);
    if (pin === undefined) throw new Error(`${pedal} is not plugged`);
    return pin;
  };
  const drive = await asking({ board: newPedal, pins: [pinOf('sandbar-drive')] });
  expect(drive.plan?.headline.standing).toMatch(/^With Sandbar drive where you put it: Proven/);
  // Both of the two strong outputs are taken, and the new one needs one of them.
  const both = await asking({ board: newPedal, pins: [pinOf('sandbar-drive'), pinOf('skerry-delay')] });
  expect(both.answer).toMatchObject({ kind: 'none', letGo: [{ name: 'Sandbar drive' }, { name: 'Skerry delay' }] });
  expect(both.news.some(({ kind }) => kind === 'ways')).toBe(false);
  // Another place than today's says nothing of what is to stay.
  const elsewhere = await asking({ board: newPedal, pins: [{ ...pinOf('skerry-delay'), outputs: [4] }] });
  expect(elsewhere.plan?.headline.standing).toMatch(/^Proven/);
});

test('it is planned from nothing where that is asked, or few pedals are plugged', async () => {
  const asked = await asking({ board: newPedal, approach: 'from nothing' });
  expect([asked.start?.approach, asked.plan?.changes]).toEqual(['from nothing', null]);
  const few = newPedal.text.replaceAll(/^ {2}- \{pedal: (?:cockle|eelgrass).*\n/gm, '');
  const begun = await asking({ board: { ...newPedal, text: few } });
  expect(begun.start?.approach).toBe('from nothing');
  const none = await asking({ board: { ...newPedal, text: few.replace(/^wiring:[^]*/m, '') }, approach: 'as plugged' });
  expect([none.start?.approach, none.plan?.changes]).toEqual([null, null]);
});

test('without a shop, what is owned is plugged and written with nothing bought; where it is not enough, it says what to look for', async () => {
  const text = newPedal.text.replace(/^wiring:[^]*/m, '');
  const owned = await asking({ board: { ...newPedal, text } });
  expect(owned.plan?.bill.lines).toEqual([]);
  const after = (await owned.written()) ?? '';
  expect(after.startsWith(text.trimEnd())).toBe(true);
  expect(kitIn(after).board.wiring).toHaveLength(6);
  const more = after.replace(/^gear:/m, '  - {name: Gannet loop, volts: 9, milliamps: 390}\ngear:');
  const lacking = await asking({ board: { ...newPedal, text: more } });
  expect(lacking.start?.approach).toBe('as plugged');
  expect(lacking.answer).toMatchObject({
    kind: 'none',
    proven: true,
    lead: expect.stringContaining('Look for') as string,
  });
});

test('what is owned is held to how it is plugged today where something has to be found, and the steps are told', async () => {
  const pedals = [
    'Gorse drive, volts: 9, milliamps: 8, polarity: centre-negative',
    'Linnet chorus, volts: 9, milliamps: 40, polarity: centre-negative',
    'Teal boost, volts: 9, milliamps: 5, polarity: centre-negative',
    'Wigeon octave, volts: 9, milliamps: 30, polarity: centre-negative',
    'Ouzel delay, volts: 9, milliamps: 100, polarity: centre-negative, digital: true',
    'Plover reverb, volts: 9, milliamps: 110, polarity: unknown, digital: true',
  ].map((stated) => `  - {name: ${stated}}`);
  const on = (pedal: string, output: number, lead: number, more = '') =>
    `  - {pedal: ${pedal}, supply: big-box, output: ${output}, volts: 9, lead: ${lead}${more}}`;
  const text = [
    emptyDocument.board.text.trimEnd(),
    ...pedals,
    'gear:',
    '  supplies:',
    '    - {id: big-box, name: Big box, mains: {from: 100, to: 240}, regulated: true, banks: [{outputs: 6, isolated: true,',
    '       power: DC, plug: barrel-2.1, polarity: centre-negative, settings: [{volts: 9, milliamps: 150}]}]}',
    '  parts: [{id: chain, name: Chain of five, fits: barrel-2.1, gives: barrel-2.1, tails: 5}]',
    'owned: {supplies: [big-box], parts: {chain: 1}}',
    'wiring:',
    on('gorse-drive', 2, 1),
    on('linnet-chorus', 1, 2),
    on('teal-boost', 3, 3, ', chain: chain, tail: a'),
    on('wigeon-octave', 3, 3, ', chain: chain, tail: b'),
    on('ouzel-delay', 5, 4),
    '',
  ].join('\n');
  const { start, answer } = await asking({ board: { file: 'b.yaml', text } });
  expect(start?.approach).toBe('as plugged');
  expect(answer).toMatchObject({
    kind: 'none',
    proven: true,
    lead: expect.stringContaining('Look for 1 lead') as string,
  });
  if (answer?.kind !== 'none') throw new Error('there is a plan');
  const told = (title: string) => answer.passages.find((one) => one.title === title)?.entries ?? [];
  expect(told('What you own feeds').map((entry) => entry.text)).toEqual([
    'Gorse drive: Big box output 2, 9 V, own lead.',
    'Linnet chorus: Big box output 1, 9 V, own lead.',
    'Teal boost: Big box output 3, 9 V, own lead → Chain of five.',
    'Wigeon octave: Big box output 3, 9 V, own lead → Chain of five.',
    'Ouzel delay: Big box output 5, 9 V, own lead.',
    expect.stringMatching(/^Plover reverb: Big box output [46], 9 V, /),
  ]);
  expect(told('What changes from today').map((entry) => entry.text)).toEqual([
    '5 pedals stay, none moves, 1 is new.',
    expect.stringMatching(/^Plover reverb is new: Big box output [46], 9 V\.$/),
  ]);
  const steps = told('Re-plug what you own, step by step');
  expect(steps[0]?.name).toBe('1. Mains off.');
  expect(JSON.stringify(steps)).toMatch(
    /Lead 5, for Plover reverb, if its label says centre-negative: DC volts, .* It must read \+9 V\./,
  );
  expect(JSON.stringify(steps)).not.toMatch(/Gorse|Wigeon|Teal/);
});

test('the plan of a choice is written as that of the answer is', async () => {
  const pedals = ['Gorse, volts: 9, milliamps: 8', 'Ouzel, volts: 9, milliamps: 250'].map(
    (stated) => `  - {name: ${stated}, polarity: centre-negative}`,
  );
  const board = { file: 'b.yaml', text: `${emptyDocument.board.text}${pedals.join('\n')}\n` };
  const head = 'name,price,outputs,isolated,volts,milliamps,power,plug,polarity,regulated\n';
  const of = (name: string, price: number, outputs: number) =>
    `${name},${price} €,${outputs},yes,9,500,DC,barrel-2.1,centre-negative,yes\n`;
  const shop = { file: 's.csv', text: `${head}${of('Erle', 9, 1)}${of('Eibe', 39, 4)}` };
  const { news, written } = await asking({ board, shop });
  const told = news.find((one) => one.kind === 'choices')?.choices.choices ?? [];
  const other = told.find(({ isAnswer }) => !isAnswer);
  if (other === undefined) throw new Error('there is one choice only');
  const feeds = (text: string | null | undefined) => {
    const read = inputsFromText({ file: 'b.yaml', text: text ?? '' }, shop);
    return read.kind === 'read'
      ? read.value.board.wiring.map(({ pedal, supply, outputs }) => [pedal, supply, outputs])
      : [];
  };
  const asPlanned = other.plan.wiring.feeds.map(({ pedal, supply, outputs }) => [pedal, supply, outputs]);
  expect(feeds(await written(other.key))).toEqual(expect.arrayContaining(asPlanned));
  expect(feeds(await written())).not.toEqual(feeds(await written(other.key)));
});
