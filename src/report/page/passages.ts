import { markup } from './markup.js';
import type { Passage } from '../words/reasons.js';
import { list, type Section } from './elements.js';

/** A passage as the part of a page at this place. */
export const passageSection = ({ title, entries }: Passage, at: number): Section => ({
  id: `part-${at + 1}`,
  title,
  body: markup`${list(
    entries.map(({ name, text, below }) => {
      const named = name === null ? null : markup`<b>${name}</b> `;
      return markup`${named}${text}${below.length === 0 ? null : list(below)}`;
    }),
  )}`,
});
