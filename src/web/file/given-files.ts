import type { PageDocument } from '../document/page-document.js';

type Files = Pick<PageDocument, 'board' | 'shop'>;

/** What a page was made with. */
export type Given = {
  /** By which what is kept of this page is told from what is kept of others. */
  readonly origin: string;
  /** Null where it begins empty. */
  readonly files: Files | null;
};

/** How an element of the page holds what it was given: as JSON in which nothing can end the element. */
export const givenText = (given: Given): string => JSON.stringify(given).replaceAll('<', String.raw`\u003c`);

/** What the element of a page holds. */
export const givenFiles = (text: string): Given => JSON.parse(text) as Given;
