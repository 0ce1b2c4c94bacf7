import type { Kit } from '../../domain/kit.js';
import { documentText } from './document.js';
import { paragraph, remarkList, sectionMarkup, type Section } from './elements.js';
import { markup, type Markup } from './markup.js';
import { pageStyle } from './style.js';
import type { Remark } from '../words/remark.js';
import { confirmAtHome } from '../words/remarks.js';
import { safeText } from '../words/safe-text.js';

/** A part of a page before it is known whether it has anything to say; null where it has not. */
export type Part = readonly [id: string, title: string, body: Markup | null];

/** Those that have something to say. */
export const sectionsOfParts = (parts: readonly Part[]): readonly Section[] =>
  parts.flatMap(([id, title, body]) => (body === null ? [] : [{ id, title, body }]));

/** What is still to be read off labels; null where that is nothing. */
export const confirmBody = (remarks: readonly Remark[]): Markup | null =>
  remarks.length === 0 ? null : markup`${paragraph(confirmAtHome)}${remarkList(remarks)}`;

/** What is told first of all, with a word of care where it is no good news. */
export const standingMarkup = (text: string, isGood: boolean): Markup =>
  markup`<p class="standing${isGood ? '' : ' care'}">${text}</p>\n`;

type WholePage = {
  /** Below the title. */
  readonly head: Markup;
  /** Where to find what. */
  readonly contents?: Markup | null;
  readonly sections: readonly Section[];
  /** Who made it of what, and how far to trust it. */
  readonly foot?: string;
};

/** One HTML page that needs nothing else: its title and head, its sections, and what it is made of. */
export const wholePage = (title: string, { head, contents = null, sections, foot = usualFoot }: WholePage): string =>
  documentText(
    title,
    pageStyle,
    markup`<header>
<h1>${title}</h1>
${head}</header>
${contents}<main>
${sections.map(sectionMarkup)}</main>
<footer>
<p>${foot}</p>
</footer>`,
  );

/** The page of what was asked of a board. */
export const answerPage = ({ board }: Kit, asked: string, page: WholePage): string =>
  wholePage(`${safeText(board.name)}: ${asked}`, page);

const usualFoot = 'Made by boardfeed. It is only as good as the figures it was made from.';
