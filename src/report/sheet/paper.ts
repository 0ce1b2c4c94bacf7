import { sectionMarkup, type Section } from '../page/elements.js';
import { markup, type Markup } from '../page/markup.js';
import type { Occasion } from '../words/handout.js';
import { safeText } from '../words/safe-text.js';
import type { Speech } from '../words/speech.js';

// What every sheet has, whatever is on it.

/** What lies below one another on a side. */
export type Block =
  | { readonly kind: 'whole'; readonly body: Markup }
  /** Two columns. */
  | { readonly kind: 'pair'; readonly left: Markup; readonly right: Markup }
  /** Takes the room that all the others leave, and so much at least, in millimetres. */
  | { readonly kind: 'picture'; readonly body: Markup; readonly least: number };

/** What is on one side of the paper. */
export type Side = readonly Block[];

export const whole = (...sections: readonly (Section | null)[]): Block => ({ kind: 'whole', body: shown(sections) });

/** One of which one column has nothing to say takes the whole width. */
export function pair(left: readonly (Section | null)[], right: readonly (Section | null)[]): Block {
  const isEmpty = (sections: readonly (Section | null)[]): boolean => sections.every((section) => section === null);
  if (isEmpty(left) || isEmpty(right)) return whole(...left, ...right);
  return { kind: 'pair', left: shown(left), right: shown(right) };
}

export const picture = (section: Section | null, least: number): Block => ({
  kind: 'picture',
  body: shown([section]),
  least: section === null ? 0 : least,
});

const shown = (sections: readonly (Section | null)[]): Markup =>
  markup`${sections.map((section) => (section === null ? null : sectionMarkup(section)))}`;

export const sideMarkup = (side: Side): Markup => markup`<div class="side">
${side.map((block) =>
  block.kind === 'pair'
    ? markup`<div class="pair">
<div>${block.left}</div>
<div>${block.right}</div>
</div>
`
    : block.body,
)}</div>
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
export const notesBlock: Block = whole({ id: 'notes', title: 'Notes', body: markup`<p class="ruled"></p>` });

export const footBlock: Block = {
  kind: 'whole',
  body: markup`<footer>
<p>Made by boardfeed. A plan is only as good as the figures it was made from.</p>
</footer>
`,
};
