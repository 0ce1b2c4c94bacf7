import type { ComparisonHandout } from '../words/comparison-handout.js';
import { markup, type Markup } from './markup.js';
import { optionFigures } from '../words/option-words.js';
import { plainly, withCare } from '../words/remark.js';
import { documentText } from './document.js';
import { paragraph, remarkList, sectionMarkup, tableMarkup, type Section } from './elements.js';
import { passageSection } from './passages.js';
import { pageStyle } from './style.js';

/** Purchases side by side as one HTML page that needs nothing else. */
export function comparisonPage(handout: ComparisonHandout): string {
  const { head, speech } = handout;
  return documentText(
    head.title,
    pageStyle,
    markup`<header>
<h1>${head.title}</h1>
<p>${head.lead}</p>
<p class="${head.tone === 'good' ? 'standing' : 'standing care'}">${head.standing}</p>
</header>
<main>
${sectionsOf(handout).map(sectionMarkup)}</main>
<footer>
<p>Made by boardfeed from the board file and the catalogue of ${speech.shop ?? 'the shop'}. A comparison is only as \
good as the figures it was made from.</p>
</footer>`,
  );
}

function sectionsOf(handout: ComparisonHandout): readonly Section[] {
  const { options, standings, tradeOffs, next, impossible } = handout;
  const took = standings.map(({ text, tone }) =>
    tone === 'good' || tone === 'plain' ? plainly(text) : withCare(text),
  );
  const parts: readonly (readonly [string, string, Markup | null])[] = [
    ['options', 'Side by side', options.length === 0 ? null : optionsBody(handout)],
    ['standings', 'What it would take to be the best', remarkList(took)],
    ...tradeOffs.map((tradeOff) => [tradeOff.against, tradeOff.title, tradeOffBody(tradeOff)] as const),
    ['next', 'Before you plug anything in', next === null ? null : paragraph(next)],
    ['impossible', 'Why nothing can power it', impossible === null ? null : paragraph(impossible.lead)],
  ];
  return [
    ...parts.flatMap(([id, title, body]) => (body === null ? [] : [{ id, title, body }])),
    ...(impossible?.passages ?? []).map(passageSection),
  ];
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
    rows: options.map(({ mark, purchase, notes, price, figures }) => [
      mark,
      [
        ...purchase.slice(0, -1).map((text) => `${text}, `),
        purchase.at(-1) ?? '',
        ...notes.map((note) => ` ${note}`),
      ].join(''),
      price,
      ...optionFigures.map((_, at) => figures?.[at] ?? '–'),
    ]),
    cards: 'options',
  })}${paragraph(legend)}`;

const tradeOffBody = ({ lead, rows, against }: ComparisonHandout['tradeOffs'][number]): Markup =>
  markup`${paragraph(lead)}${
    rows.length === 0
      ? null
      : tableMarkup({
          caption: 'The cheapest first',
          columns: [
            { name: 'Price' },
            { name: against === 'exposed' ? 'Exposed' : 'In use' },
            { name: 'Buy', manner: 'head' },
          ],
          rows: rows.map(({ price, amount, purchase }) => [price, amount, purchase]),
          cards: null,
        })
  }`;
