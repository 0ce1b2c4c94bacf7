import { markup, type Markup } from './markup.js';
import { glued, noBreak } from '../words/glue.js';
import type { Remark } from '../words/remark.js';

/** A part of the page with a heading; it is named in the list of parts at its top. */
export type Section = { readonly id: string; readonly title: string; readonly body: Markup };

export const sectionMarkup = ({ id, title, body }: Section): Markup =>
  markup`<section id="${id}" aria-labelledby="${id}-title">
<h2 id="${id}-title">${title}</h2>
${body}
</section>
`;

/** No line ends between an amount and its currency either. */
const bound = (text: string): string => glued(text).replace(/(\d) (?=[A-Z]{3}\b)/g, `$1${noBreak}`);

export const paragraph = (text: string): Markup => markup`<p>${bound(text)}</p>\n`;

/** A plain list; nothing at all for no items. */
export const list = (items: readonly (string | Markup)[]): Markup | null =>
  items.length === 0
    ? null
    : markup`<ul>\n${items.map((item) => markup`<li>${typeof item === 'string' ? bound(item) : item}</li>\n`)}</ul>\n`;

/** What asks for care stands out by a word as well as by weight and colour. */
export const remarkList = (remarks: readonly Remark[]): Markup | null =>
  list(remarks.map(({ text, care }) => (care ? markup`<strong class="care">Mind:</strong> ${bound(text)}` : text)));

/** A column of a table, by the name that its head and, on narrow screens, each of its cells shows. */
export type TableColumn = { readonly name: string; readonly manner?: 'figures' | 'head' };

type PageTable = {
  readonly caption: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly (string | Markup)[])[];
  /** The last row, which sums up; its first cell spans all but the last column. */
  readonly total?: { readonly name: string; readonly value: string };
  /** A class for its columns' widths, where each row becomes a card on narrow screens; null where it stays a table. */
  readonly cards: string | null;
};

/**
 * A table for eyes and for screen readers. Where rows become cards they are no table to the style any more, so each element
 * keeps its role in so many words.
 */
export function tableMarkup({ caption, columns, rows, total, cards }: PageTable): Markup {
  const head = columns.map(
    ({ name, manner }) =>
      markup`<th scope="col" role="columnheader"${manner === 'figures' ? markup` class="figures"` : null}>${name}</th>`,
  );
  const foot =
    total === undefined
      ? null
      : markup`<tfoot role="rowgroup">
<tr role="row"><th scope="row" role="rowheader" colspan="${columns.length - 1}">${total.name}</th>\
<td role="cell" class="figures">${total.value}</td></tr>
</tfoot>
`;
  return markup`<table role="table"${cards === null ? null : markup` class="cards ${cards}"`}>
<caption>${caption}</caption>
<thead role="rowgroup"><tr role="row">${head}</tr></thead>
<tbody role="rowgroup">
${rows.map((row) => markup`<tr role="row">${row.map((cell, at) => cellMarkup(cell, columns[at]))}</tr>\n`)}</tbody>
${foot}</table>
`;
}

function cellMarkup(content: string | Markup, column: TableColumn | undefined): Markup {
  const { name, manner } = column ?? { name: '' };
  const cell = typeof content === 'string' ? bound(content) : content;
  if (manner === 'head') return markup`<th scope="row" role="rowheader" data-label="${name}"><span>${cell}</span></th>`;
  const named = content === '' ? 'empty' : manner === 'figures' ? 'figures' : null;
  return markup`<td role="cell" data-label="${name}"${named === null ? null : markup` class="${named}"`}><span>${cell}</span></td>`;
}

/** A box to tick, on the screen or on paper. `hidden` is said before the text to those who do not see where it stands. */
export const tick = (text: string, hidden = ''): Markup =>
  markup`<label class="tick"><input type="checkbox"/> <span>${
    hidden === '' ? null : markup`<span class="unseen">${hidden} </span>`
  }${bound(text)}</span></label>`;

/** A list of boxes to tick; nothing at all for no items. */
export const tickList = (items: readonly string[]): Markup | null =>
  items.length === 0
    ? null
    : markup`<ul class="ticks">\n${items.map((item) => markup`<li>${tick(item)}</li>\n`)}</ul>\n`;
