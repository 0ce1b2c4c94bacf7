import { readFile } from 'node:fs/promises';
import { join } from 'node:path';

import { checkout, filesBelow } from '../support/pack.js';

/** A Markdown file of the checkout, by its path in it. */
export type Document = { readonly path: string; readonly text: string };

/** The two that a reader may begin with. */
export const frontDoors = ['README.md', 'DEVELOPERS.md'];

const below = (await filesBelow(join(checkout, 'docs'))).map((path) => `docs/${path}`);
const paths = [...frontDoors, 'CHANGELOG.md', ...below.filter((path) => path.endsWith('.md'))];

/** Every document that people read, and the other files in `docs`. */
export const documents: readonly Document[] = await Promise.all(
  paths.map(async (path) => ({ path, text: await readFile(join(checkout, path), 'utf8') })),
);

/** A fenced block: its language, and what stands in it. */
export type Block = { readonly language: string; readonly body: string };

/** The fenced blocks of a text, in order. */
export const blocksOf = (text: string): readonly Block[] =>
  [...text.matchAll(fence)].map(([, language = '', body = '']) => ({ language, body }));

/** The text without what stands in fenced blocks. */
export const proseOf = (text: string): string => text.replace(fence, '');

const fence = /^```(\w*)\n([^]*?)^```$/gm;

/** What a text sets in backticks, fenced blocks left out. */
export const codeWordsOf = (text: string): readonly string[] =>
  [...proseOf(text).matchAll(/`([^`\n]+)`/g)].map(([, word = '']) => word);

/** Where the links and pictures of a text lead to. */
export const linksOf = (text: string): readonly string[] =>
  [...proseOf(text).matchAll(/\]\(([^)\s]+)\)/g)].map(([, target = '']) => target);
