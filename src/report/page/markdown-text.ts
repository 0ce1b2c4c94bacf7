import { safeText } from '../words/safe-text.js';

/**
 * Text from a file as Markdown that shows exactly that text, anywhere in a line, in a list or in a table: no emphasis, link,
 * heading, element, mathematics or entity comes of it. Runs of blanks become one, as they do when Markdown is shown.
 */
export function escapeMarkdown(text: string): string {
  return safeText(text)
    .replace(/\s+/gu, ' ')
    .trim()
    .replace(/[\\`*_{}[\]|~#!$^@]/g, '\\$&')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replace(/^[-+=:]/, '\\$&')
    .replace(/^(\d+)([.)])(?=\s|$)/, '$1\\$2')
    .replace(/:(?=\/\/)/g, '\\:')
    .replace(/www\./gi, (found) => `${found.slice(0, -1)}\\.`);
}
