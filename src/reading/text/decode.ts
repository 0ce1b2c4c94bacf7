import type { Words } from '../../domain/finding.js';
import type { FileText } from './file-text.js';

/** Bytes as the UTF-8 text that they must be, a byte order mark included; or where they are none. */
export function decode(bytes: Uint8Array): FileText {
  const text = utf8In(bytes);
  if (text !== null) return { kind: 'text', text };
  let line = 1;
  for (let start = 0; start < bytes.length; line += 1) {
    const newline = bytes.indexOf(0x0a, start);
    const end = newline < 0 ? bytes.length : newline;
    const inLine = bytes.subarray(start, end);
    if (utf8In(inLine) === null) return { kind: 'unreadable', line, column: firstBadColumn(inLine), words: notText };
    start = end + 1;
  }
  return { kind: 'unreadable', line: 1, column: 1, words: notText };
}

function utf8In(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch (error) {
    if (error instanceof TypeError) return null;
    throw error;
  }
}

/** The decoder puts U+FFFD for the first bad byte; it is found by what encodes back to the same bytes before it. */
function firstBadColumn(line: Uint8Array): number {
  const text = new TextDecoder('utf-8', { ignoreBOM: true }).decode(line);
  const encoder = new TextEncoder();
  let at = 0;
  let column = 1;
  for (const sign of text) {
    const bytes = encoder.encode(sign);
    if (bytes.some((byte, index) => line[at + index] !== byte)) return column;
    at += bytes.length;
    column += sign.length;
  }
  return 1;
}

const notText: Words = {
  message: 'not UTF-8 text from here on; it may be a binary file or in another encoding.',
  remedy: 'Save it as UTF-8 text.',
};
