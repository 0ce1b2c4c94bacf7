import { choicesChart } from '../charts/choices-chart.js';
import { boardDrawing } from '../drawing/drawings.js';
import { list, paragraph, sectionMarkup, tableMarkup } from '../page/elements.js';
import { markup, type Markup } from '../page/markup.js';
import { passageSection } from '../page/passages.js';
import type { ChoosingAim } from '../../domain/aim.js';
import type { Kit } from '../../domain/kit.js';
import type { Option, PlannedOption } from '../../planning/compare/comparison.js';
import type { ComparisonHandout } from '../words/comparison-handout.js';
import { handoutOf, type Occasion } from '../words/handout.js';
import { failureStanding } from '../words/option-standings.js';
import { optionFigures, type OptionWords } from '../words/option-words.js';
import { footBlock, notesBlock, sheetHead, whole, type Side } from './paper.js';
import { paperText } from './sheet.js';

/** So many choices lie on one side, each with its drawing. */
const onOneSide = 6;

/** The choices side by side, each with what it costs, who may hum and its small drawing, on A4 or Letter. */
export const comparisonSheet = (handout: ComparisonHandout, occasion: Occasion): string =>
  paperText(handout.head.title, [sidesOf(handout, occasion)]);

function sidesOf(handout: ComparisonHandout, occasion: Occasion): readonly Side[] {
  const { head, impossible, speech, comparison, options } = handout;
  const top = sheetHead({ title: head.title, speech }, occasion, markup`<p>${head.lead} ${head.standing}</p>\n`);
  const reasons =
    impossible === null
      ? []
      : [
          whole({ id: 'impossible', title: 'Why nothing can power it', body: paragraph(impossible.lead) }),
          whole(...impossible.passages.map(passageSection)),
        ];
  const chart = choicesChart(speech, comparison);
  const pictured = chart === null ? [] : [whole({ id: 'chart', title: 'At a glance', body: chart })];
  const cards = options.map((words, at) => cardMarkup(handout, words, comparison.options[at], at));
  const groups = Array.from({ length: Math.ceil(cards.length / onOneSide) }, (_, at) =>
    choicesBlock(cards.slice(at * onOneSide, (at + 1) * onOneSide)),
  );
  const [first, ...others] = groups;
  return [
    [
      top,
      ...reasons,
      ...pictured,
      ...(first === undefined ? [] : [first]),
      ...(others.length === 0 ? [notesBlock, footBlock] : []),
    ],
    ...others.map((group, at) => [group, ...(at === others.length - 1 ? [notesBlock, footBlock] : [])]),
  ];
}

const leastHeight = 120;

const choicesBlock = (cards: readonly Markup[]) =>
  ({
    kind: 'picture',
    least: leastHeight,
    body: markup`<div class="choices of-${cards.length}">
${cards}</div>
`,
  }) as const;

function cardMarkup(
  { speech, comparison }: ComparisonHandout,
  words: OptionWords,
  option: Option | undefined,
  at: number,
): Markup {
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
  const drawing = option?.kind === 'plan' ? smallDrawing(speech.kit, comparison.aim, option, `choice-${at + 1}`) : null;
  return sectionMarkup({
    id: `option-${at + 1}`,
    title: `${mark} ${label}`,
    body: markup`${notes.length === 0 ? null : paragraph(notes.join(' '))}${table}${fails}${counts}${hum}${drawing}`,
  });
}

function smallDrawing(kit: Kit, aim: ChoosingAim, { wiring, gap }: PlannedOption, id: string): Markup | null {
  const plan = handoutOf({ kit, answer: { kind: 'plan', aim, wiring, gap, reasons: [] } });
  return plan.kind === 'plan' && plan.hookup.length > 0 ? boardDrawing(plan, 'small', id) : null;
}
