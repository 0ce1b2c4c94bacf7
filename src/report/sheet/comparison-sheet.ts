import { choicesChart } from '../charts/choices-chart.js';
import { sizedDrawing, type Sized } from '../drawing/drawings.js';
import { list, paragraph, sectionMarkup, tableMarkup } from '../page/elements.js';
import { markup, type Markup } from '../page/markup.js';
import { passageSection } from '../page/passages.js';
import type { ChoosingAim } from '../../domain/aim.js';
import type { Kit } from '../../domain/kit.js';
import type { PlannedOption } from '../../planning/compare/comparison.js';
import type { ComparisonHandout } from '../words/comparison-handout.js';
import { handoutOf, type Occasion, type PlanHandout } from '../words/handout.js';
import { failureStanding } from '../words/option-standings.js';
import { optionFigures, type OptionWords } from '../words/option-words.js';
import { footBlock, notesBlock, picture, sheetHead, whole, type Block, type Side } from './paper.js';
import { heightOfBlocks, leastHeight, leastWidth, millimetres, usualHeight } from './print-size.js';
import { paperText } from './sheet.js';

/** The choices side by side, each with what it costs, who may hum and its small drawing, on A4 or Letter. */
export const comparisonSheet = (handout: ComparisonHandout, occasion: Occasion): string =>
  paperText(handout.head.title, layoutsOf(handout, occasion));

/** So many choices lie on one side at the most, two in a row. */
const mostOnOneSide = [6, 4] as const;

/**
 * All choices on one side, or four at the most; else one below the other with drawings as wide as the paper, on as many sides as
 * it takes for these to be read.
 */
function layoutsOf(handout: ComparisonHandout, occasion: Occasion): readonly (readonly Side[])[] {
  const cards = handout.options.map((words, at) => cardOf(handout, words, at));
  const head = headBlocks(handout, occasion);
  const inRows = mostOnOneSide.map((most) => sidesOf(head, grouped(cards, most), rowsBlock));
  return [...inRows, sidesOf(head, packed(cards, leastHeight - footHeight - heightOfBlocks(head)), flatBlock)];
}

function headBlocks({ head, impossible, speech, comparison }: ComparisonHandout, occasion: Occasion): Side {
  const top = sheetHead({ title: head.title, speech }, occasion, markup`<p>${head.lead} ${head.standing}</p>\n`);
  const reasons =
    impossible === null
      ? []
      : [
          whole({ id: 'impossible', title: 'Why nothing can power it', body: paragraph(impossible.lead) }),
          whole(...impossible.passages.map(passageSection)),
        ];
  const chart = choicesChart(speech, comparison);
  const glance = chart === null ? null : { id: 'chart', title: 'At a glance', body: chart };
  return [top, ...reasons, picture(glance, chartHeight)];
}

/** Of the chart with its heading, and of what ends the last side, in millimetres. */
const [chartHeight, footHeight] = [69, 14];

const sidesOf = (
  head: Side,
  groups: readonly (readonly Card[])[],
  block: (cards: readonly Card[]) => Block,
): readonly Side[] =>
  (groups.length === 0 ? [[]] : groups).map((group, at, all) => [
    ...(at === 0 ? head : []),
    ...(group.length === 0 ? [] : [block(group)]),
    ...(at === all.length - 1 ? [notesBlock, footBlock] : []),
  ]);

const grouped = (cards: readonly Card[], most: number): readonly (readonly Card[])[] =>
  Array.from({ length: Math.ceil(cards.length / most) }, (_, at) => cards.slice(at * most, (at + 1) * most));

/** One below the other, as many on a side as there is room for; the first side has less. */
function packed(cards: readonly Card[], room: number): readonly (readonly Card[])[] {
  const groups: Card[][] = [[]];
  let left = room;
  for (const card of cards) {
    if (card.flat.height > left && (groups.length === 1 || left < leastHeight - footHeight)) {
      groups.push([]);
      left = leastHeight - footHeight;
    }
    groups.at(-1)?.push(card);
    left -= card.flat.height;
  }
  return groups;
}

/** A choice in either form, and how high it is at least for its drawing to be read, in millimetres. */
type Card = Readonly<Record<'small' | 'flat', { readonly body: Markup; readonly height: number }>>;

/** Two in a row, which are all of one height. */
const rowsBlock = (cards: readonly Card[]): Block => ({
  kind: 'picture',
  least: Math.ceil(cards.length / 2) * Math.max(...cards.map(({ small }) => small.height)),
  body: choicesMarkup(
    `of-${cards.length}`,
    cards.map(({ small }) => small.body),
  ),
});

const flatBlock = (cards: readonly Card[]): Block => ({
  kind: 'picture',
  least: cards.reduce((sum, { flat }) => sum + flat.height, 0),
  body: choicesMarkup(
    'flat',
    cards.map(({ flat }) => flat.body),
  ),
});

const choicesMarkup = (manner: string, cards: readonly Markup[]): Markup => markup`<div class="choices ${manner}">
${cards}</div>
`;

function cardOf(handout: ComparisonHandout, words: OptionWords, at: number): Card {
  const { speech, comparison } = handout;
  const option = comparison.options[at];
  const plan = option?.kind === 'plan' ? planOf(speech.kit, comparison.aim, option) : null;
  const card = (drawings: readonly Sized[], width: number, height: number) => {
    const bare = cardMarkup(handout, words, at, []);
    return { body: cardMarkup(handout, words, at, drawings), height: usualHeight(bare, width) + height };
  };
  if (plan === null) return { small: card([], halfWidth, 0), flat: card([], leastWidth, 0) };
  const small = sizedDrawing(plan, 'small', `choice-${at + 1}`);
  const flat = sizedDrawing(plan, 'sheet', `choice-${at + 1}`);
  const narrow = sizedDrawing(plan, 'narrow', `choice-${at + 1}-narrow`);
  return {
    small: card([small], halfWidth, small.height * leastScale),
    flat: card([flat, narrow], leastWidth, (leastWidth * flat.height) / flat.width),
  };
}

/** What there is for one of two in a row, in millimetres. */
const halfWidth = 92;
/** Millimetres for a unit of a small drawing, of which the smallest print is 8.5 units, to be printed in 7 points and a little. */
const leastScale = (7.1 / 8.5) * millimetres;

/** Null where nothing is hooked up. */
function planOf(kit: Kit, aim: ChoosingAim, { wiring, gap }: PlannedOption): PlanHandout | null {
  const plan = handoutOf({ kit, answer: { kind: 'plan', aim, wiring, gap, reasons: [] } });
  return plan.kind === 'plan' && plan.hookup.length > 0 ? plan : null;
}

function cardMarkup(
  { speech, comparison }: ComparisonHandout,
  words: OptionWords,
  at: number,
  drawings: readonly Sized[],
): Markup {
  const option = comparison.options[at];
  const { mark, label, bill, notes, price, figures, noise } = words;
  const table = tableMarkup({
    caption: `What ${label.toLowerCase()} buys`,
    columns: [
      { name: 'Item', manner: 'head' },
      { name: 'Price', manner: 'figures' },
    ],
    rows: bill.map((line) => [line.text, line.price]),
    total: { name: 'Total', value: price },
    cards: null,
  });
  const counts =
    figures === null
      ? null
      : paragraph(`${optionFigures.map(({ title }, index) => `${title} ${figures[index] ?? ''}`).join(', ')}.`);
  const fails = option?.kind === 'fails' ? paragraph(failureStanding(speech, option).text) : null;
  const hum = noise.length === 0 ? null : list(noise.map((text) => `May hum: ${text}.`));
  return sectionMarkup({
    id: `option-${at + 1}`,
    title: `${mark} ${label}`,
    body: markup`${notes.length === 0 ? null : paragraph(notes.join(' '))}${table}${fails}${counts}${hum}${drawings.map((one) => one.markup)}`,
  });
}
