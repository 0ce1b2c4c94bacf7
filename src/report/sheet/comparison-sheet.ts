import { choicesChart } from '../charts/choices-chart.js';
import { sizedDrawing, type DrawingSize, type Sized } from '../drawing/drawings.js';
import { list, paragraph, sectionMarkup, tableMarkup } from '../page/elements.js';
import { markup, type Markup } from '../page/markup.js';
import { passageSection } from '../page/passages.js';
import type { ChoosingAim } from '../../domain/aim.js';
import type { Kit } from '../../domain/kit.js';
import type { PlannedOption } from '../../planning/compare/comparison.js';
import type { ComparisonHandout } from '../words/comparison-handout.js';
import { handoutOf, type Occasion, type PlanHandout } from '../words/handout.js';
import { failureStanding } from '../words/option-standings.js';
import { figuresText, type OptionWords } from '../words/option-words.js';
import { footBlock, notesBlock, picture, sheetHead, whole, type Block, type Side } from './paper.js';
import { columnWidth, heightOf, heightOfWords, leastHeight, leastWidth, type Arrangement } from './print-size.js';
import { paperText } from './sheet.js';

/** The choices side by side, each with what it costs, who may hum and its small drawing, on A4 or Letter. */
export const comparisonSheet = (handout: ComparisonHandout, occasion: Occasion): string =>
  paperText(handout.head.title, arrangementsOf(handout, occasion));

/**
 * Two choices in a row with their small drawings, the chart before or after all of them; or all choices in words, and then their
 * drawings as wide as the paper. Where all but the chart has room on one side, or on the two of a sheet, the chart goes, which the
 * words say too.
 */
function arrangementsOf(handout: ComparisonHandout, occasion: Occasion): readonly Arrangement[] {
  const cards = handout.options.map((words, at) => cardOf(handout, words, at));
  const [head, chart] = [headBlocks(handout, occasion), chartBlock(handout)];
  const end = [notesBlock, footBlock];
  const [small, bare] = [inPairs(cards.map((card) => card.small)), inPairs(cards.map((card) => card.bare))];
  const drawn = (size: 'sheet' | 'dense') =>
    cards.flatMap((card) => card[size] ?? []).map((one) => [rowBlock(' flat', [one])]);
  const charted = [
    [[...head, chart], ...small, end],
    [head, ...small, [chart, ...end]],
    [[...head, chart], ...bare, ...drawn('sheet'), end],
    [[...head, chart], ...bare, ...drawn('dense'), end],
  ];
  const laidOut =
    (ways: readonly (readonly Side[])[], most: number): Arrangement =>
    (points) =>
      ways.map((groups) => sidesOf(groups, points)).filter((sides) => sides.length <= most);
  const uncharted = [[head, ...small, end]];
  return [...[1, 2].flatMap((most) => [laidOut(charted, most), laidOut(uncharted, most)]), laidOut(charted, Infinity)];
}

const inPairs = (cards: readonly Shown[]): readonly Side[] =>
  Array.from({ length: Math.ceil(cards.length / 2) }, (_, at) => [rowBlock('', cards.slice(2 * at, 2 * at + 2))]);

function headBlocks({ head, impossible, speech }: ComparisonHandout, occasion: Occasion): Side {
  const top = sheetHead({ title: head.title, speech }, occasion, markup`<p>${head.lead} ${head.standing}</p>\n`);
  if (impossible === null) return [top];
  const reasons = { id: 'impossible', title: 'Why nothing can power it', body: paragraph(impossible.lead) };
  return [top, whole(reasons, ...impossible.passages.map(passageSection))];
}

function chartBlock({ speech, comparison }: ComparisonHandout): Block {
  const chart = choicesChart(speech, comparison);
  return picture(chart === null ? null : { id: 'chart', title: 'At a glance', body: chart }, chartHeight);
}

/** With its heading, in millimetres. */
const chartHeight = 69;

/** What stays together one after the other, each on the side of the one before where there is room. */
function sidesOf(groups: readonly Side[], points: number): readonly Side[] {
  const sides: Block[][] = [];
  let left = 0;
  for (const group of groups) {
    const height = heightOf(group, points);
    if (sides.length === 0 || height > left) {
      sides.push([]);
      left = leastHeight;
    }
    sides.at(-1)?.push(...group);
    left -= height;
  }
  return sides;
}

/** A choice with its small drawing, in words alone, and its drawing alone; null where nothing is hooked up. */
type Card = Readonly<Record<'small' | 'bare', Shown> & Record<'sheet' | 'dense', Shown | null>>;
/** How high it is in print of so many points, in millimetres. */
type Shown = { readonly body: Markup; readonly height: (points: number) => number };

/** As high as the highest in it. */
const rowBlock = (manner: string, cards: readonly Shown[]): Block => ({
  kind: 'picture',
  least: (points) => Math.max(...cards.map(({ height }) => height(points))),
  body: markup`<div class="choices${manner}">
${cards.map(({ body }) => body)}</div>
`,
});

function cardOf(handout: ComparisonHandout, words: OptionWords, at: number): Card {
  const { speech, comparison } = handout;
  const option = comparison.options[at];
  const plan = option?.kind === 'plan' ? planOf(speech.kit, comparison.aim, option) : null;
  const [id, title] = [`option-${at + 1}`, `${words.mark} ${words.label}`];
  const body = wordsMarkup(handout, words, at);
  const inWords = (drawings: Markup | null) => sectionMarkup({ id, title, body: markup`${body}${drawings}` });
  const bare = shown(inWords, columnWidth, []);
  if (plan === null) return { small: bare, bare, sheet: null, dense: null };
  const drawn = (size: DrawingSize): Sized => sizedDrawing(plan, size, `${id}-${size}`);
  const narrow = drawn('narrow');
  const alone = (drawings: Markup | null) =>
    sectionMarkup({ id: `${id}-wiring`, title: `${title}: wiring`, body: markup`${drawings}` });
  return {
    small: shown(inWords, columnWidth, [drawn('small')]),
    bare,
    sheet: shown(alone, leastWidth, [drawn('sheet'), narrow]),
    dense: shown(alone, leastWidth, [drawn('dense'), narrow]),
  };
}

/** Words with drawings below them, the first of which is shown on paper. */
function shown(inWords: (drawings: Markup | null) => Markup, width: number, drawings: readonly Sized[]): Shown {
  const [first] = drawings;
  const words = inWords(null);
  const ofDrawing = first === undefined ? 0 : (width * first.height) / first.width;
  return {
    body: inWords(markup`${drawings.map((one) => markup`${one.markup}\n`)}`),
    height: (points) => heightOfWords(words, width, points) + ofDrawing,
  };
}

/** Null where nothing is hooked up. */
function planOf(kit: Kit, aim: ChoosingAim, { wiring, gap }: PlannedOption): PlanHandout | null {
  const plan = handoutOf({ kit, answer: { kind: 'plan', aim, wiring, gap, reasons: [] } });
  return plan.kind === 'plan' && plan.hookup.length > 0 ? plan : null;
}

function wordsMarkup({ speech, comparison }: ComparisonHandout, words: OptionWords, at: number): Markup {
  const option = comparison.options[at];
  const { label, bill, notes, price, noise } = words;
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
  const counts = option?.kind === 'plan' ? paragraph(figuresText(option)) : null;
  const fails = option?.kind === 'fails' ? paragraph(failureStanding(speech, option).text) : null;
  const hum = noise.length === 0 ? null : list(noise.map((text) => `May hum: ${text}.`));
  return markup`${notes.length === 0 ? null : paragraph(notes.join(' '))}${table}${fails}${counts}${hum}`;
}
