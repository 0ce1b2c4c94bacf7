import type { ComparisonHandout, NoiseWords } from '../words/comparison-handout.js';
import type { UnbeatenWords } from '../words/unbeaten-words.js';
import { choicesChart } from '../charts/choices-chart.js';
import { markup, type Markup } from './markup.js';
import { optionFigures } from '../words/option-words.js';
import { plainly, withCare } from '../words/remark.js';
import { paragraph, remarkList, tableMarkup, type Section } from './elements.js';
import { passageSection } from './passages.js';
import { sectionsOfParts, standingMarkup, wholePage, type Part } from './whole-page.js';

/** Purchases side by side as one HTML page that needs nothing else. */
export function comparisonPage(handout: ComparisonHandout): string {
  const { head, speech } = handout;
  return wholePage(head.title, {
    head: markup`<p>${head.lead}</p>\n${standingMarkup(head.standing, head.tone === 'good')}`,
    sections: sectionsOf(handout),
    foot: `Made by boardfeed with what ${speech.shop ?? 'the shop'} sells. A comparison is only as good as the figures it was made from.`,
  });
}

function sectionsOf(handout: ComparisonHandout): readonly Section[] {
  const { options, standings, noise, unbeaten, next, impossible } = handout;
  const took = standings.map(({ text, tone }) =>
    tone === 'good' || tone === 'plain' ? plainly(text) : withCare(text),
  );
  const parts: readonly Part[] = [
    ['options', 'Side by side', options.length === 0 ? null : optionsBody(handout)],
    ['chart', 'At a glance', choicesChart(handout.speech, handout.comparison)],
    ['noise', 'Who may hum', noise === null ? null : noiseBody(noise)],
    ['standings', 'What it would take to be the best', remarkList(took)],
    ['unbeaten', unbeaten?.title ?? '', unbeaten === null ? null : unbeatenBody(unbeaten)],
    ['next', 'Before you plug anything in', next === null ? null : paragraph(next)],
    ['impossible', 'Why nothing can power it', impossible === null ? null : paragraph(impossible.lead)],
  ];
  return [...sectionsOfParts(parts), ...(impossible?.passages ?? []).map(passageSection)];
}

const optionsBody = ({ options, legend }: ComparisonHandout): Markup =>
  markup`${tableMarkup({
    caption: 'Purchases, the best first',
    columns: [
      { name: 'Rank' },
      { name: 'Buy', manner: 'head' },
      { name: 'Price', manner: 'figures' },
      ...optionFigures.map(({ title }) => ({ name: title, manner: 'figures' as const })),
    ],
    rows: options.map(({ mark, label, bill, notes, price, figures }) => [
      mark,
      [
        `${label}: `,
        bill.map(({ text, price: at }) => `${text} ${at}`).join(', '),
        ...notes.map((note) => ` ${note}`),
      ].join(''),
      price,
      ...optionFigures.map((_, at) => figures?.[at] ?? '–'),
    ]),
    cards: 'options',
  })}${paragraph(legend)}`;

const noiseBody = ({ lead, lines }: NoiseWords): Markup => markup`${paragraph(lead)}${remarkList(lines.map(withCare))}`;

const unbeatenBody = ({ lead, rows }: UnbeatenWords): Markup =>
  markup`${paragraph(lead)}${tableMarkup({
    caption: 'The cheapest first',
    columns: [{ name: 'Price' }, { name: 'Exposed' }, { name: 'In use' }, { name: 'Buy', manner: 'head' }],
    rows: rows.map(({ price, exposed, supplies, purchase }) => [price, exposed, supplies, purchase]),
    cards: null,
  })}`;
