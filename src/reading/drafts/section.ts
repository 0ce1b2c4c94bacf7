import { isMap, parseDocument } from 'yaml';

import type { Data } from '../text/data.js';
import { says } from '../text/text-edits.js';

/** A key of a file that is to be written, as lines of YAML and as data. */
export type Section = { readonly key: string; readonly lines: readonly string[]; readonly value: unknown };

/**
 * A YAML or JSON file with one more key at its end; all else stays letter by letter. Null where the key is there already, or
 * the file is no map.
 */
export function withSection(text: string, { key, lines, value }: Section): string | null {
  const document = parseDocument(text);
  const root = document.contents;
  if (document.errors.length > 0 || !isMap(root) || root.has(key)) return null;
  const edited =
    root.flow === true ? inFlow(text, root.items.at(-1)?.value?.range[1], { key, value }) : atEnd(text, lines);
  if (edited === null) return null;
  return says(edited, { ...(document.toJS() as Data), [key]: value }) ? edited : null;
}

function inFlow(text: string, end: number | undefined, { key, value }: Omit<Section, 'lines'>): string | null {
  if (end === undefined) return null;
  return `${text.slice(0, end)}, ${JSON.stringify(key)}: ${JSON.stringify(value)}${text.slice(end)}`;
}

function atEnd(text: string, lines: readonly string[]): string {
  const lineEnd = text.includes('\r\n') ? '\r\n' : '\n';
  return `${text}${text.endsWith('\n') ? '' : lineEnd}${lines.map((line) => `${line}${lineEnd}`).join('')}`;
}
