/** An element of a page or a drawing, in the order of their start tags. */
export type FoundElement = {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  /** The text right inside it, entities and all. */
  readonly text: string;
  /** How many elements it is in. */
  readonly depth: number;
};

const tag = /^<(\/?)([a-zA-Z][\w-]*)((?:\s+[a-zA-Z][\w:-]*="[^"<>]*")*)\s*(\/?)>/;
const prologue = /^(<\?xml version="1\.0" encoding="UTF-8"\?>|<!DOCTYPE html>)\n/;

/**
 * The elements of a text that must be well-formed XML with nothing but elements, attributes in double quotes, text and the five
 * entities that every reader knows. @throws Error at the first place where it is not.
 */
export function elementsOf(source: string): readonly FoundElement[] {
  const reading: Reading = { found: [], open: [], rest: source.replace(prologue, '') };
  while (reading.rest !== '') {
    readText(reading);
    if (reading.rest !== '') readTag(reading);
  }
  if (reading.open.length > 0) fail(reading, 'an element left open');
  return reading.found;
}

type Reading = {
  readonly found: { name: string; attributes: Map<string, string>; text: string; depth: number }[];
  /** The elements that are open, by their places among those found. */
  readonly open: number[];
  rest: string;
};

function fail({ rest }: Reading, why: string): never {
  throw new Error(`${why} at: ${rest.slice(0, 80)}`);
}

const strayAmpersand = /&(?!(amp|lt|gt|quot|#39);)/;

function readText(reading: Reading): void {
  const text = /^[^<]+/.exec(reading.rest)?.[0] ?? '';
  if (strayAmpersand.test(text)) fail(reading, 'a stray ampersand');
  if (/(?!\n)[\p{Cc}\p{Cs}\ufffe\uffff]/u.test(text)) fail(reading, 'a character that XML cannot hold');
  const holder = reading.found[reading.open.at(-1) ?? -1];
  if (holder !== undefined) holder.text += text;
  else if (text.trim() !== '') fail(reading, 'text outside of all elements');
  reading.rest = reading.rest.slice(text.length);
}

function readTag(reading: Reading): void {
  const { found, open, rest } = reading;
  const [whole, closing = '', name = '', attributes = '', empty = ''] =
    tag.exec(rest) ?? fail(reading, 'no proper tag');
  if (closing === '/') {
    if (found[open.pop() ?? -1]?.name !== name) fail(reading, 'a wrong end');
  } else {
    found.push({ name, attributes: attributesOf(attributes), text: '', depth: open.length });
    if (empty === '') open.push(found.length - 1);
  }
  reading.rest = rest.slice(whole.length);
}

function attributesOf(text: string): Map<string, string> {
  const attributes = new Map<string, string>();
  for (const [, name = '', value = ''] of text.matchAll(/([\w:-]+)="([^"]*)"/g)) {
    if (attributes.has(name)) throw new Error(`${name} is given twice`);
    if (strayAmpersand.test(value)) throw new Error(`a stray ampersand in ${name}`);
    attributes.set(name, value);
  }
  return attributes;
}
