import { sectionMarkup, type Section } from '../page/elements.js';
import { markup, type Markup } from '../page/markup.js';
import type { Occasion } from '../words/handout.js';
import { safeText } from '../words/safe-text.js';
import type { Speech } from '../words/speech.js';

// What every sheet has, whatever is on it.

/** What lies below one another on a side. */
export type Block =
  | { readonly kind: 'whole'; readonly body: Markup }
  /** In two columns, one flowing into the other where there is the width for both. */
  | { readonly kind: 'columns'; readonly body: Markup }
  /** Takes so much at least in print of so many points, in millimetres. */
  | { readonly kind: 'picture'; readonly body: Markup; readonly least: (points: number) => number };

/** What is on one side of the paper. */
export type Side = readonly Block[];

export const whole = (...sections: readonly (Section | null)[]): Block => ({ kind: 'whole', body: shown(sections) });

export const columns = (...sections: readonly (Section | null)[]): Block => ({
  kind: 'columns',
  body: shown(sections),
});

export const picture = (section: Section | null, least: number): Block => ({
  kind: 'picture',
  body: shown([section]),
  least: () => (section === null ? 0 : least),
});

const shown = (sections: readonly (Section | null)[]): Markup =>
  markup`${sections.map((section) => (section === null ? null : sectionMarkup(section)))}`;

export const sideMarkup = (side: Side): Markup => markup`<div class="side">
${side.map(({ kind, body }) => (kind === 'columns' && body.markup !== '' ? markup`<div class="columns">\n${body}</div>\n` : body))}</div>
`;

/** What it is and comes to, who hands it out and when. */
export function sheetHead(
  { title, speech }: { readonly title: string; readonly speech: Speech },
  { shop, date }: Occasion,
  lead: Markup,
): Block {
  const from = shop === null ? speech.shop : safeText(shop);
  const given = [
    ...(from === null ? [] : [markup`<b>${from}</b>`]),
    ...(date === null ? [] : [markup`<span>${safeText(date)}</span>`]),
  ];
  const body = markup`<header>
<h1>${title}</h1>
${given.length === 0 ? null : markup`<p class="from">${given}</p>\n`}${lead}</header>
`;
  return { kind: 'whole', body };
}

/** A line to write on. */
export const notesBlock: Block = picture({ id: 'notes', title: 'Notes', body: markup`<p class="ruled"></p>` }, 8.5);

export const footBlock: Block = {
  kind: 'whole',
  body: markup`<footer>
<p>Made by boardfeed. A plan is only as good as the figures it was made from.</p>
</footer>
`,
};
