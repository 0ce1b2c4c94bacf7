import { safeText } from '../words/safe-text.js';

/**
 * Text that is HTML or XML already. It can only come from the template tag below, which escapes all that is put into it, so
 * that no name from a file ever becomes an element, an attribute or an address.
 */
export type Markup = { readonly markup: string };

type Part = string | number | Markup | null | readonly Part[];

/** Markup with strings and numbers escaped, other markup as it is, lists joined, and nothing for null. */
export const markup = (pieces: TemplateStringsArray, ...parts: readonly Part[]): Markup => ({
  markup: pieces.map((piece, at) => piece + (at < parts.length ? textOf(parts[at] ?? null) : '')).join(''),
});

function textOf(part: Part): string {
  if (part === null) return '';
  if (typeof part === 'string') return escapeMarkup(part);
  if (typeof part === 'number') return String(part);
  return 'markup' in part ? part.markup : part.map(textOf).join('');
}

/** Characters that XML cannot hold in any spelling, besides those that no report shows. */
const forbidden = /[\ufffe\uffff]/gu;
const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text for an element or an attribute in double quotes, of HTML or XML; what cannot be shown is spelled out. */
export const escapeMarkup = (text: string): string =>
  safeText(text)
    .replace(forbidden, (character) => `\\u{${character.charCodeAt(0).toString(16)}}`)
    .replace(/[&<>"']/g, (character) => entities[character] ?? '');
