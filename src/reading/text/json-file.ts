import type { NamedFile } from './file-text.js';
import type { Path, Words } from '../../domain/finding.js';
import { escapedText } from '../../domain/shown-text.js';
import { keyText, type InputFault, type ReadResult } from '../faults/input-fault.js';
import { offsetInJson } from './json-places.js';

/** What a JSON file holds, and how to say that something about it is wrong. */
export type JsonFile = {
  readonly value: unknown;
  readonly faultAt: (path: Path, words: Words) => InputFault;
};

/** What a JSON file holds. What the file system refused is a fault, too. */
export function jsonIn({ file, text: read }: NamedFile): ReadResult<JsonFile> {
  if (read.kind === 'unreadable') {
    const { line, column, words } = read;
    return { kind: 'faulty', faults: [{ file, line, column, key: '', ...words }], more: 0 };
  }
  // A byte order mark is no part of the text.
  const text = read.text.replace(/^\uFEFF/, '');
  const place = (offset: number): Pick<InputFault, 'file' | 'line' | 'column'> => {
    const before = text.slice(0, offset);
    return { file, line: before.split('\n').length, column: offset - before.lastIndexOf('\n') };
  };
  try {
    const value: unknown = JSON.parse(text);
    const faultAt: JsonFile['faultAt'] = (path, words) => ({
      ...place(offsetInJson(text, path)),
      key: keyText(path),
      ...words,
    });
    return { kind: 'read', value: { value, faultAt } };
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    return { kind: 'faulty', faults: [{ ...place(offsetOf(error, text)), key: '', ...notJson(error) }], more: 0 };
  }
}

/** The parser names a position for most faults; an end that comes too soon stands at the end. */
function offsetOf({ message }: SyntaxError, text: string): number {
  const position = /position (\d+)/.exec(message)?.[1];
  if (position !== undefined) return Math.min(Number(position), text.length);
  return message.includes('end of JSON') ? text.length : 0;
}

const notJson = ({ message }: SyntaxError): Words => ({
  message: `not valid JSON: ${escapedText(message.slice(0, 200))}.`,
  remedy: 'Give the file as boardfeed wrote it.',
});
