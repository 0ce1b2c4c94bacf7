import { existsSync } from 'node:fs';
import { join, posix } from 'node:path';

import { describe, expect, test } from 'vitest';

import { checkout, filesBelow } from '../support/pack.js';
import { codeWordsOf, documents, frontDoors, linksOf, proseOf } from './documents.js';

const mostColumns = 120;
const mostLinesOfADoor = 250;

/** The folders whose files and folders a document may name. */
const rooms = ['src', 'solver', 'test', 'bench', 'fixtures', 'schemas', 'docs', '.ci'];
const files = (
  await Promise.all(
    rooms.map(async (room) => (await filesBelow(join(checkout, room))).map((file) => `${room}/${file}`)),
  )
).flat();

describe.each(documents)('$path', ({ path, text }) => {
  test('has no line that is too long; a row of a table cannot be broken', () => {
    const lines = proseOf(text).split('\n');
    expect(lines.filter((line) => !line.startsWith('|') && Array.from(line).length > mostColumns)).toEqual([]);
  });

  test('links to what is there', () => {
    const missing = relativeLinks(path, text).filter((target) => !existsSync(join(checkout, target)));
    expect(missing).toEqual([]);
  });

  test('names sources that are there', () => {
    expect(codeWordsOf(text).filter((word) => isSource(word) && !isThere(word))).toEqual([]);
  });
});

describe.each(frontDoors)('%s', (door) => {
  test('is a front door: it is read at a sitting', () => {
    const text = documents.find(({ path }) => path === door)?.text ?? '';
    expect(text.split('\n').length - 1).toBeLessThanOrEqual(mostLinesOfADoor);
  });
});

test('a front door leads to every document', () => {
  const reached = new Set(frontDoors);
  for (const door of reached) {
    const text = documents.find(({ path }) => path === door)?.text ?? '';
    for (const target of relativeLinks(door, text)) reached.add(target);
  }
  expect(reached.size).toBeGreaterThan(20);
  expect(files.filter((file) => file.startsWith('docs/') && !reached.has(file))).toEqual([]);
});

/** The files of the checkout that a document links to. */
const relativeLinks = (path: string, text: string): readonly string[] =>
  linksOf(text)
    .filter((target) => !/^(https?:|#)/.test(target))
    .map((target) => posix.join(posix.dirname(path), target.replace(/#.*$/, '')));

/** Whether a word is the name of a module, or a path below one of the rooms. */
const isSource = (word: string): boolean =>
  /^[\w./-]+$/.test(word) && (/\.(ts|mjs|cjs)$/.test(word) || rooms.some((room) => word.startsWith(`${room}/`)));

/** A name may be cut off at the front. */
const isThere = (word: string): boolean =>
  files.some((file) => file.endsWith(`/${word}`)) || existsSync(join(checkout, word));
