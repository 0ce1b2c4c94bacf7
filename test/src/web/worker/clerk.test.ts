import { readFile } from 'node:fs/promises';
import { basename, resolve } from 'node:path';

import { beforeAll, expect, test } from 'vitest';

import { supplyLine } from '../../../../src/reading/typed/supply-line.js';
import { labelAgrees } from '../../../../src/web/document/change-supplies.js';
import { owningTyped } from '../../../../src/web/document/own-typed.js';
import { emptyDocument, type HeldFile } from '../../../../src/web/document/page-document.js';
import { supplyId, type PedalId } from '../../../../src/domain/quantities.js';
import { askedAs, letGo, pinnedAt } from '../../../../src/web/document/pins.js';
import { takingWayOut } from '../../../../src/web/document/way-out.js';
import { createClerk } from '../../../../src/web/worker/clerk.js';
import type { Inquiry, News, SheetOrder, Question } from '../../../../src/web/worker/messages.js';

const fixtures = resolve(import.meta.dirname, '../../../../fixtures');
const held = async (path: string): Promise<HeldFile> => ({
  file: basename(path),
  text: await readFile(resolve(fixtures, path), 'utf8'),
});
const gigBoard = await held('boards/gig-board.yaml');
const [tideway, quayside] = [await held('boards/tideway.yaml'), await held('shops/quayside.yaml')];
const marramStreet = await held('shops/marram-street.yaml');

/** A clerk whose news are sent as to another thread: what cannot be sent fails. It is told to stop once it has said enough. */
function listening(enough: 'answer' | 'choices' | 'done' = 'done') {
  const news: News[] = [];
  let now = 0;
  const post = (one: News): void => {
    news.push(structuredClone(one));
    if (one.kind === enough && (one.kind !== 'answer' || one.isFinal)) void take({ kind: 'stop' });
  };
  const take = createClerk({ post, now: () => (now += 1) });
  const ask = async (question: Partial<Question>): Promise<void> =>
    take({ kind: 'ask', question: { ...emptyDocument, about: 1, ...question } });
  const inquire = async (about: number, pedal: string, what: Inquiry['asked'] = 'places'): Promise<void> =>
    take({ kind: 'inquire', inquiry: { about, asked: what, pedal: pedal as PedalId } });
  const order = async (about: number, chosen: string | null = null, of: SheetOrder['of'] = 'plan'): Promise<void> =>
    take({ kind: 'order', order: { about, chosen, of, date: '1 May 2031' } });
  return { news, ask, inquire, order, stop: async () => take({ kind: 'stop' }) };
}

/** The clerk who was asked for a board and for purchases. */
const whole = listening('choices');
const asked = [[{ id: 'staithe-10', units: 1 }], [{ id: 'shingle-9', units: 1 }], [{ id: 'gone-since', units: 1 }]];
beforeAll(() => whole.ask({ about: 7, board: gigBoard, shop: marramStreet, asked }));

test('a board is answered to its proof, with the words and the drawings of the reports', () => {
  const last = whole.news.findLast((one) => one.kind === 'answer');
  expect(last?.answer).toMatchObject({ kind: 'plan', proven: true, figures: [{ size: 'wide' }, { size: 'narrow' }] });
  expect(last?.answer.kind === 'plan' && last.answer.headline.cost).toBe('Spend 36.50 EUR at Marram Street shop.');
});

test('a sheet is made of the answer or of a choice, for the latest question only', async () => {
  const unasked = listening();
  await unasked.order(7);
  expect(unasked.news).toEqual([]);
  const { news, order } = whole;
  await order(6);
  expect(news.some(({ kind }) => kind === 'sheet')).toBe(false);
  const choice = news.find((one) => one.kind === 'choices')?.choices.choices.find(({ isAnswer }) => !isAnswer);
  if (choice === undefined) throw new Error('there is but one choice');
  await order(7);
  await order(7, choice.key);
  await order(7, 'a choice that is gone');
  const [answer, other, gone] = news.flatMap((one) => (one.kind === 'sheet' ? one.page : []));
  expect(answer).toContain('<span>1 May 2031</span>');
  expect(answer).toContain('Spend 36.50 EUR at Marram Street shop.');
  expect(answer).toContain('Proven: no plan costs less');
  // A choice is no worse for not being the answer; it must not say that it is.
  expect(other).toContain(`Spend ${choice.words.price} at Marram Street shop.`);
  expect(other).toContain(choice.words.label);
  expect(other).not.toContain('Proven');
  expect(gone).toBe(answer);
  await order(7, choice.key, 'choices');
  const all = news.findLast((one) => one.kind === 'sheet')?.page ?? '';
  expect(all).toContain('<span>1 May 2031</span>');
  for (const price of ['36.50 EUR', choice.words.price]) expect(all).toContain(price);
});

test('a purchase that is asked for is judged whole beside the choices; one that cannot do says why', () => {
  const told = whole.news.find((one) => one.kind === 'choices')?.choices;
  const staithe = told?.choices.find(({ words: { label, notes } }) => /asked for/i.test([label, ...notes].join(' ')));
  expect(staithe?.words.bill.map(({ text }) => text)).toContain('1 × Staithe 10');
  expect(staithe?.plan.rows).toHaveLength(11);
  expect(told?.ofAsked).toEqual([expect.stringMatching(/^1 × Shingle 9 cannot power the board: /)]);
});

test('what was taken of a typed supply is to be confirmed before plugging in, until its label was read', async () => {
  const { news, ask } = listening();
  const read = supplyLine('Old box 6 isolated 9v 150, regulated');
  if (read.kind === 'unclear') throw new Error(read.faults.join(' '));
  const text = `${emptyDocument.board.text}  - {name: A, volts: 9, milliamps: 9, polarity: centre-negative}\n`;
  const typed = owningTyped(read)({ ...emptyDocument, board: { file: 'b.yaml', text } });
  const confirmed = () => {
    const last = news.findLast((one) => one.kind === 'answer')?.answer;
    return last?.kind === 'plan' ? last.confirm.map((remark) => remark.text).join(' ') : '';
  };
  const owned = () => news.findLast((one) => one.kind === 'read')?.things.map(({ taken }) => taken);
  // What is saved is the board's text alone, which says so by itself.
  await ask({ ...emptyDocument, board: typed.board });
  expect(confirmed()).toContain('Assumed: centre-negative (minus on the pin), plug 2.1 mm barrel. Look at Old box.');
  expect(owned()).toEqual(['centre-negative (minus on the pin), plug 2.1 mm barrel']);
  await ask(labelAgrees('supply', 'old-box')(typed));
  expect(confirmed()).not.toContain('Old box');
  expect(owned()).toEqual(['']);
});

test('which labels decide is told once the plan is proven, what is to be read before buying first', async () => {
  const { news, ask } = listening();
  const unread = '  - {name: Plover reverb, volts: unknown, milliamps: 300, digital: true}\n';
  const text = tideway.text
    .replace('volts: 9, milliamps: 4,', 'volts: 9, polarity: unknown, milliamps: 4,')
    .replace('assume: {', 'assume: {volts: 9, ')
    .replace('pedals:\n', `pedals:\n${unread}`);
  await ask({ about: 7, board: { ...tideway, text }, shop: quayside });
  expect(news.every(({ about }) => about === 7)).toBe(true);
  expect(news.map(({ kind }) => kind).filter((kind, at, all) => all[at - 1] !== kind)).toEqual([
    ...['begun', 'columns', 'read', 'answer', 'choices', 'labels', 'done'],
  ]);
  const told = news.find((one) => one.kind === 'labels')?.labels;
  expect(told?.deciding.map((one) => one.text)).toContainEqual(expect.stringMatching(/^Tarn fuzz: the polarity/));
  expect(told?.first).toMatch(/^Read this before you buy: the volts of Plover reverb \(label unread\)\. /);
  expect(told?.deciding[0]?.text).toMatch(
    /^Plover reverb \(label unread\): the volts, .* no plan powers everything then/,
  );
  const order = told?.deciding.map(({ weight }) => weight) ?? [];
  expect(order).toEqual([...order].sort((one, other) => ranks.indexOf(one) - ranks.indexOf(other)));
});
const ranks = ['first', 'purchase', 'unknown', 'wiring'];

test('without a shop it says what to look for', async () => {
  const { news, ask } = listening();
  await ask({ board: { file: 'b.yaml', text: `${emptyDocument.board.text}  - {name: A, volts: 9, milliamps: 9}\n` } });
  expect(news.find((one) => one.kind === 'faulty')).toMatchObject({ faults: [{ of: 'board' }] });
  const typed = `${emptyDocument.board.text}  - {name: A, volts: 9, milliamps: 9, polarity: unknown}\n`;
  await ask({ board: { file: 'b.yaml', text: typed } });
  expect(news.findLast((one) => one.kind === 'answer')?.answer).toMatchObject({ kind: 'none', proven: true });
});

test('files that cannot be read are told with what to do, each by whose it is', async () => {
  const { news, ask } = listening();
  await ask({ board: { file: 'x', text: 'pedals: 3' }, shop: { file: 'y', text: '[' } });
  const faulty = news.find((one) => one.kind === 'faulty');
  expect(new Set(faulty?.faults.map((fault) => fault.of))).toEqual(new Set(['board', 'shop']));
  expect(news.at(-1)).toEqual({ about: 1, kind: 'done' });
});

test('rows of a table that nobody could use are told, and the rest is used', async () => {
  const { news, ask } = listening();
  const text = 'name,price,outputs,isolated,volts,milliamps,power,plug,polarity,regulated\n';
  const good = 'Good,9 €,1,yes,9,500,DC,barrel-2.1,centre-negative,yes\n';
  const board = {
    file: 'b.yaml',
    text: `${emptyDocument.board.text}  - {name: A, volts: 9, milliamps: 9, polarity: unknown}\n`,
  };
  await ask({ board, shop: { file: 's.csv', text: `${text}${good}Bad,9 €,1,yes,nine,500,DC,x,y,yes\n` } });
  const read = news.find((one) => one.kind === 'read');
  expect(read?.notes.join()).toContain('left out "Bad"');
});

test('a newer question ends the older one, of which nothing is said any more', async () => {
  const { news, ask } = listening();
  const older = ask({ about: 1, board: gigBoard, shop: marramStreet });
  await ask({ about: 2, board: { file: 'x', text: '' } });
  await older;
  expect(news.filter(({ about }) => about === 1)).toEqual([{ about: 1, kind: 'begun' }]);
  expect(news.at(-1)).toEqual({ about: 2, kind: 'done' });
});

test('who is told to stop says nothing more', async () => {
  const { news, ask, stop } = listening();
  const asked = ask({ board: gigBoard, shop: marramStreet });
  await stop();
  await asked;
  expect(news).toEqual([{ about: 1, kind: 'begun' }]);
});

test('where a pedal could go is told of the plan for the same question only', async () => {
  const { news, ask, inquire } = listening('answer');
  await ask({ about: 7, board: gigBoard, shop: marramStreet });
  await inquire(6, 'bogbean-drive');
  await inquire(7, 'nobody');
  expect(news.at(-1)?.kind).toBe('answer');
  await inquire(7, 'bogbean-drive');
  const told = news.at(-1);
  if (told?.kind !== 'places') throw new Error('no places were told');
  expect(told.places.filter(({ isHere }) => isHere)).toHaveLength(1);
  expect(told.places.find(({ output }) => output === 'staithe-5 1 2')).toMatchObject({
    name: 'Staithe 5 output 2',
    text: 'Now 2 of 200 mA, with it alone 11 of 200 mA, at 9 V.',
  });
});

test('all is planned around what is pinned, and where that cannot be it is said', async () => {
  const { news, ask, inquire } = listening('answer');
  await ask({ about: 1, board: gigBoard, shop: marramStreet });
  await inquire(1, 'bogbean-drive');
  await inquire(1, 'peat-smoke-fuzz');
  const told = news.filter((one) => one.kind === 'places');
  const at = (at: number) => {
    const berth = told[at]?.places.find(({ output }) => output === 'staithe-5 1 2')?.berth;
    if (berth === undefined || berth === null) throw new Error('it cannot go there');
    return berth;
  };
  const drive = { ...at(0), pedal: 'bogbean-drive' as PedalId };
  const fuzz = { ...at(1), pedal: 'peat-smoke-fuzz' as PedalId };
  await ask({ about: 2, board: gigBoard, shop: marramStreet, pins: [drive] });
  const plan = news.findLast((one) => one.kind === 'answer')?.answer;
  if (plan?.kind !== 'plan') throw new Error('there is a plan around it');
  expect(plan.rows.find(({ feed }) => feed.pedal === drive.pedal)).toMatchObject({ unit: 'Staithe 5', outputs: '2' });
  expect(plan.pinned).toEqual([{ ...drive, asked: drive.pedal }]);
  expect(plan.headline.standing).toMatch(/^With Bogbean drive where you put it: Proven/);
  await inquire(2, drive.pedal, 'why');
  expect(news.at(-1)).toMatchObject({ kind: 'why', texts: [expect.stringContaining('with no pedal pinned')] });
  // A positive ground and a negative one on one output: a short.
  await ask({ about: 3, board: gigBoard, shop: marramStreet, pins: [drive, fuzz] });
  expect(news.findLast((one) => one.kind === 'answer')?.answer).toMatchObject({
    kind: 'none',
    lead: 'No plan keeps every pedal where you put it.',
    letGo: [{ name: 'Bogbean drive' }, { name: 'Peat-smoke fuzz' }],
    passages: [{ title: 'What is in the way', entries: [{ text: expect.stringMatching(/ground/) as string }] }],
  });
  // What is pinned and not there any more is no matter.
  await ask({ about: 4, board: gigBoard, shop: marramStreet, pins: [{ ...drive, pedal: 'gone' as PedalId }] });
  expect(news.findLast((one) => one.kind === 'answer')?.answer.kind).toBe('plan');
});

test('what feeds a supply is pinned as a pedal is, by the number that its unit has in the plan', async () => {
  const { news, ask, inquire } = listening('answer');
  const files = { board: await held('boards/bandstand.yaml'), shop: await held('shops/pontoon.yaml') };
  const inlet = 'inlet of step-9 1' as PedalId;
  await ask({ ...files, about: 1 });
  await inquire(1, inlet);
  const told = news.find((one) => one.kind === 'places')?.places ?? [];
  expect(told.map(({ name, isHere, berth }) => [name, isHere, berth !== null])).toEqual([
    ['Nine-volt step output 1', false, false],
    ['Lighter 74 output 1', true, true],
    ['Lighter 74 output 2', false, true],
  ]);
  const berth = told.at(-1)?.berth;
  if (berth === undefined || berth === null) throw new Error('it could go there');
  const pinned = { ...emptyDocument, ...files, pins: [{ pedal: 'inlet of step-9 4' as PedalId, ...berth, unit: 3 }] };
  await ask({ ...pinned, about: 2 });
  const plan = news.findLast((one) => one.kind === 'answer')?.answer;
  if (plan?.kind !== 'plan') throw new Error('there is a plan around it');
  expect(plan.wiring.inlets).toMatchObject([{ pedal: inlet, supply: 'lighter-74', unit: 1, outputs: [2] }]);
  expect(plan.pinned).toEqual([{ ...berth, pedal: inlet, asked: 'inlet of step-9 4' }]);
  expect(plan.headline.standing).toMatch(/^With Nine-volt step inlet where you put it: Proven/);
  // In the numbers of the plan it is the same pin.
  const after = pinnedAt('grebe-drive' as PedalId, { ...berth, supply: supplyId('step-9') }, plan.pinned)(pinned);
  expect(after.pins.map(({ pedal, unit }) => [pedal, unit])).toEqual([
    [inlet, 1],
    ['grebe-drive', 1],
  ]);
  expect(letGo(askedAs(inlet, plan.pinned))(pinned).pins).toEqual([]);
  // Whoever is to share an output is pinned there, too, and nowhere else.
  const [one, other] = ['grebe-drive', 'ruff-tuner'] as PedalId[];
  if (one === undefined || other === undefined) throw new Error('two pedals');
  const together = pinnedAt(one, berth, [], [other])(pinnedAt(other, { ...berth, outputs: [1] })(emptyDocument));
  expect(together.pins).toEqual([
    { pedal: other, ...berth },
    { pedal: one, ...berth },
  ]);
});

test('an output says what it carries or what more fits, a pedal why it hangs there', async () => {
  const { news, ask, inquire } = listening('answer');
  await ask({ about: 1, board: tideway, shop: quayside });
  const plan = news.findLast((one) => one.kind === 'answer')?.answer;
  if (plan?.kind !== 'plan') throw new Error('the example has a plan');
  const textsOf = (output: string) => plan.rooms.find((room) => room.output === output)?.texts;
  const left = 'The whole supply has 1561 mA left of its total.';
  expect(textsOf('quay-6 1 1')).toEqual(['It feeds Tarn fuzz: 5 of 100 mA with the reserve.', left]);
  // 100 mA with the reserve of a fifth.
  expect(textsOf('quay-6 1 2')).toEqual(['It is free: one more pedal that draws up to 83 mA at 9 V.', left]);
  await ask({ about: 2, board: gigBoard, shop: marramStreet });
  await inquire(2, 'pignut-tuner', 'why');
  const told = news.at(-1);
  expect(told?.kind === 'why' && told.texts[0]).toBe(
    'It sits on Staithe 5 output 1 at 9 V. Outputs 2-5 of the same bank would do as well.',
  );
});

test('where there is no plan it says why, and each way out that changes the board leads to one', async () => {
  const { news, ask } = listening();
  const board = { ...gigBoard, text: gigBoard.text.replace(/^ {2}budget: \d+.*$/m, '  budget: 20') };
  await ask({ board, shop: marramStreet });
  const told = news.findLast((one) => one.kind === 'ways')?.ways;
  if (told === undefined) throw new Error('no ways were told');
  expect(told.conflicts.length).toBeGreaterThan(0);
  const carriedOut = told.ways.filter(({ edits }) => edits.length > 0);
  expect(carriedOut.map(({ change }) => change).join(' ')).toContain('Raise the budget from 20.00 EUR to 25.00 EUR');
  const after = listening('answer');
  for (const { change, edits } of carriedOut.slice(0, 3)) {
    const changed = takingWayOut(edits)({ ...emptyDocument, board });
    expect(changed.board.text, change).not.toBe(board.text);
    await after.ask({ board: changed.board, shop: marramStreet });
    expect(after.news.findLast((one) => one.kind === 'answer')?.answer.kind, change).toBe('plan');
  }
});

test('a pedal on a battery is answered, drawn and compared like any other', async () => {
  const { news, ask } = listening();
  const text = `board: Quiet
currency: EUR
assume: {power: DC, polarity: centre-negative, inlet: barrel-2.1, ground: negative}
policy:
  headroom: {alone: 1.2, chained: 2, supply: 1.2}
  chains: allow
  batteries: {change: 8, pay: 100}
pedals:
  - {name: Sedge wah, volts: 9, milliamps: 1.5, battery: {type: 9V-block, count: 1}}
`;
  const shop = `catalogue: Small
currency: EUR
supplies: []
parts: []
batteries:
  - {id: block, name: Block, type: 9V-block, price: 3, volts: 9, milliampHours: 500}
`;
  await ask({ board: { file: 'b.yaml', text }, shop: { file: 's.yaml', text: shop } });
  const { answer } = news.findLast((one) => one.kind === 'answer') ?? {};
  expect(answer).toMatchObject({ kind: 'plan', proven: true, headline: { cost: 'Spend 3.00 EUR at Small.' } });
  const drawings = answer?.kind === 'plan' ? JSON.stringify(answer.figures) : '';
  expect(drawings).toContain('Sedge wah runs on 1 × Block in it.');
  expect(drawings).toContain('its own battery');
  expect(drawings).not.toMatch(/its own adapter|yours|to buy/);
  expect(news.map(({ kind }) => kind)).toContain('choices');
});
