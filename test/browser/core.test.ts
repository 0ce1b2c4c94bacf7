import { gzipSync } from 'node:zlib';

import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Browser } from 'playwright-core';

import { share } from '../support/runs.js';
import { Tally } from '../support/tally.js';
import { answersTo, type Answers } from './answers.js';
import { noBrowser, startBrowser } from './chromium.js';

/** A module with all that it needs, for a browser: without anything in place of what Node has, and so not at all where that is asked for. */
async function bundled(module: string, more: { readonly footer?: string } = {}): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [new URL(module, import.meta.url).pathname],
    bundle: true,
    minify: true,
    write: false,
    platform: 'browser',
    target: 'es2023',
    format: 'iife',
    globalName: 'bundle',
    footer: { js: more.footer ?? '' },
    logLevel: 'silent',
  });
  return outputFiles[0]?.text ?? '';
}

const kilobytes = (size: number): number => Math.round(size / 1000);

test('the core is one file for a browser, of a size to be sent, and asks for nothing of Node', async ({ annotate }) => {
  const code = await bundled('../../src/core.ts');
  await annotate(`${kilobytes(code.length)} kB, ${kilobytes(gzipSync(code).length)} kB compressed`);
  expect(code.length).toBeGreaterThan(100_000);
  expect(code.length).toBeLessThan(900_000);
  expect(code).not.toMatch(/["'`]node:/);
});

test('what needs Node is no core', async () => {
  await expect(bundled('../../src/index.ts')).rejects.toThrow('node:');
});

describe.skipIf(noBrowser !== null)(`in a worker of a browser${noBrowser === null ? '' : ` (${noBrowser})`}`, () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(() => browser.close());

  test('random boards are answered as they are in Node', async () => {
    const footer = 'onmessage = async ({ data }) => postMessage(await bundle.answersTo(data));';
    const code = await bundled('answers.ts', { footer });
    const page = await browser.newPage();
    const seeds = Array.from({ length: share(60) }, (_, at) => at + 1);
    const there = await page.evaluate<Answers[]>(inWorker(code, seeds));
    const seen = new Tally();
    for (const [at, seed] of seeds.entries()) {
      const here = await answersTo(seed);
      expect(there[at], `board ${seed}`).toEqual(here);
      seen.add(here.kind);
      if (here.unsafe) seen.add('unsafe');
    }
    expect(seen.lacking(share(12), 'plan', 'impossible', 'unsafe')).toEqual([]);
  });
});

/** A script that starts a worker of the code, asks it each question, and comes to what it answers. */
const inWorker = (code: string, questions: readonly number[]): string => `(async () => {
  const worker = new Worker(URL.createObjectURL(new Blob([${JSON.stringify(code)}], { type: 'text/javascript' })));
  const answers = [];
  for (const question of ${JSON.stringify(questions)}) {
    answers.push(await new Promise((resolve, reject) => {
      worker.onmessage = ({ data }) => resolve(data);
      worker.onerror = ({ message }) => reject(new Error(message));
      worker.postMessage(question);
    }));
  }
  worker.terminate();
  return answers;
})()`;
