import type { ComparisonHandout } from '../words/comparison-handout.js';
import { optionFigures } from '../words/option-words.js';
import type { UnbeatenWords } from '../words/unbeaten-words.js';
import { paragraph, tableMarkup } from './elements.js';
import { markup, type Markup } from './markup.js';

/** A row an option; null where there is none. */
export const optionsBody = ({ options, legend }: ComparisonHandout): Markup | null =>
  options.length === 0
    ? null
    : markup`${tableMarkup({
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

/** What else nothing beats. */
export const unbeatenBody = ({ lead, rows }: UnbeatenWords): Markup =>
  markup`${paragraph(lead)}${tableMarkup({
    caption: 'The cheapest first',
    columns: [{ name: 'Price' }, { name: 'Exposed' }, { name: 'In use' }, { name: 'Buy', manner: 'head' }],
    rows: rows.map(({ price, exposed, supplies, purchase }) => [price, exposed, supplies, purchase]),
    cards: null,
  })}`;
