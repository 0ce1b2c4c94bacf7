import type { Path } from '../../domain/finding.js';

/** Where the value at a path stands in a valid JSON text, or what is nearest around it; an offset in UTF-16 units. */
export function offsetInJson(text: string, path: Path): number {
  let offset = skipSpace(text, 0);
  for (const step of path) {
    const inner = typeof step === 'number' ? itemAt(text, offset, step) : entryAt(text, offset, step);
    if (inner === null) return offset;
    offset = inner;
  }
  return offset;
}

function itemAt(text: string, list: number, index: number): number | null {
  if (text[list] !== '[') return null;
  let offset = skipSpace(text, list + 1);
  for (let item = 0; text[offset] !== ']' && offset < text.length; item += 1) {
    if (item === index) return offset;
    offset = pastComma(text, endOfValue(text, offset));
  }
  return null;
}

/** Of a repeated key the last value counts, as it does for whoever parses the text. */
function entryAt(text: string, map: number, key: string): number | null {
  if (text[map] !== '{') return null;
  let found: number | null = null;
  let offset = skipSpace(text, map + 1);
  while (text[offset] !== '}' && offset < text.length) {
    const end = endOfText(text, offset);
    const value = skipSpace(text, skipSpace(text, end) + 1);
    if (JSON.parse(text.slice(offset, end)) === key) found = value;
    offset = pastComma(text, endOfValue(text, value));
  }
  return found;
}

function pastComma(text: string, end: number): number {
  const offset = skipSpace(text, end);
  return text[offset] === ',' ? skipSpace(text, offset + 1) : offset;
}

/** Goes past brackets by counting them, so that no depth is too deep. */
function endOfValue(text: string, start: number): number {
  let depth = 0;
  for (let offset = start; offset < text.length;) {
    const character = text[offset] ?? '';
    if (depth === 0 && offset > start && ',]} \t\r\n'.includes(character)) return offset;
    if (character === '"') offset = endOfText(text, offset);
    else {
      if ('[{'.includes(character)) depth += 1;
      if (']}'.includes(character)) depth -= 1;
      offset += 1;
    }
    if (depth === 0 && '"]}'.includes(text[offset - 1] ?? '')) return offset;
  }
  return text.length;
}

/** Past the closing quote of a text that begins here. */
function endOfText(text: string, start: number): number {
  let offset = start + 1;
  while (offset < text.length && text[offset] !== '"') offset += text[offset] === '\\' ? 2 : 1;
  return offset + 1;
}

function skipSpace(text: string, start: number): number {
  let offset = start;
  while (' \t\r\n'.includes(text[offset] ?? '.')) offset += 1;
  return offset;
}
