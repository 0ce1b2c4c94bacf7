import type { Kit } from '../../domain/kit.js';
import { documentText } from './document.js';
import { sectionMarkup, type Section } from './elements.js';
import { markup, type Markup } from './markup.js';
import { pageStyle } from './style.js';
import { safeText } from '../words/safe-text.js';

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
