import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';

import fc from 'fast-check';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import type { Kit } from '../../src/domain/kit.js';
import { choose } from '../../src/planning/choose/choose.js';
import { rewire } from '../../src/planning/rewire/rewire.js';
import { chooseOrSeek } from '../../src/planning/wanted/wanted.js';
import { withPlanRecorded } from '../../src/reading/drafts/record-plan.js';
import { inputsFromText } from '../../src/reading/inputs-from-text.js';
import { documentOf } from '../../src/web/document/page-document.js';
import type { News, Question } from '../../src/web/worker/messages.js';
import { toldAnswer } from '../../src/web/worker/told-answer.js';
import { caseOf } from '../support/arbitraries.js';
import { boardFileOf, catalogueFileOf } from '../support/as-files.js';
import { share } from '../support/runs.js';
import { Tally } from '../support/tally.js';
import { noBrowser, startBrowser } from './chromium.js';

const built = resolve(import.meta.dirname, '../../dist/page/boardfeed.html');
const cases = caseOf({ min: 1, max: 6 }, { min: 1, max: 3 }, 4);

/** A random board and shop as files; every third board without a shop, of which it owns nothing then. */
function questionOf(seed: number): Question {
  const [given] = fc.sample(cases, { seed, numRuns: 1 });
  if (given === undefined) throw new Error('no case');
  const isAlone = seed % 3 === 0;
  const owned = isAlone ? { supplies: new Map(), parts: new Map() } : given.board.owned;
  const board = { file: 'board.json', text: JSON.stringify(boardFileOf({ ...given.board, owned })) };
  const shop = { file: 'shop.json', text: JSON.stringify(catalogueFileOf(given.catalogue)) };
  return { ...documentOf({ board, shop: isAlone ? null : shop }), about: seed };
}

function kitOf({ board, shop }: Pick<Question, 'board' | 'shop'>): Kit {
  const read = inputsFromText(board, shop, { skipBadRows: true });
  if (read.kind === 'faulty') throw new Error(JSON.stringify(read.faults));
  return read.value;
}

/** What the command answers, in the words of the page. */
async function answerOf(question: Question): Promise<string> {
  const kit = kitOf(question);
  return plain(toldAnswer(kit, await chooseOrSeek(kit, { aim: question.aim }), []));
}

/** The board with its best plan as its wiring, but for one pedal on every other; null where there is no plan to plug. */
async function pluggedAs({ board, shop, ...question }: Question): Promise<Question | null> {
  const kit = kitOf({ board, shop });
  const answer = await choose(kit);
  if (answer.kind !== 'plan') return null;
  const read = (changed: string) => inputsFromText({ ...board, text: changed }, shop);
  const text = withPlanRecorded({ kit, text: board.text, read }, answer.wiring);
  if (text === null) throw new Error(`board ${question.about} has no room for its plan`);
  const file = JSON.parse(text) as { readonly wiring?: readonly unknown[] };
  const wiring = (file.wiring ?? []).slice(question.about % 2);
  if (wiring.length === 0) return null;
  const plugged = { ...board, text: JSON.stringify({ ...file, wiring }) };
  return { ...question, board: plugged, shop, approach: 'as plugged' };
}

async function rewireAnswerOf(question: Question): Promise<string> {
  const kit = kitOf(question);
  return plain(toldAnswer(kit, await rewire(kit), []));
}

const plain = (value: unknown): string => JSON.stringify(value, spelled);
/** What is told beside the answer. */
const beside = new Set<News['kind']>(['labels', 'choices', 'columns', 'ways', 'over']);

/** Maps, sets and whole numbers of any size as JSON. The page runs this, too. */
const spelled = (_: string, value: unknown): unknown => {
  if (typeof value === 'bigint') return String(value);
  return value instanceof Map || value instanceof Set ? [...(value as Iterable<unknown>)] : value;
};

describe.skipIf(noBrowser !== null)(`in a browser${noBrowser === null ? '' : ` (${noBrowser})`}`, () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(() => browser.close());

  test('the worker of the page answers random boards as the command does, word by word', async () => {
    const page = await browser.newPage();
    await page.goto(`file://${built}`);
    const worker = /id="script">([^]*?)<\/script>/.exec(await readFile(built, 'utf8'))?.[1] ?? '';
    const questions = Array.from({ length: share(80) }, (_, at) => questionOf(at + 1));
    const there = await page.evaluate<readonly string[]>(asking(worker, questions));
    const seen = new Tally();
    for (const [at, question] of questions.entries()) {
      const news = JSON.parse(there[at] ?? '') as readonly News[];
      const kinds = new Set(news.map(({ kind }) => kind).filter((kind) => !beside.has(kind)));
      expect([...kinds].sort(), `board ${question.about}`).toEqual(['answer', 'begun', 'done', 'read']);
      const last = news.findLast((one) => one.kind === 'answer');
      expect(plain(last?.answer), `board ${question.about}`).toBe(plain(JSON.parse(await answerOf(question))));
      seen.add(last?.answer.kind ?? '');
      if (question.shop === null) seen.add('alone');
    }
    expect(seen.lacking(share(8), 'plan', 'none', 'alone')).toEqual([]);
  });

  test('it re-plugs random boards that are plugged as the command does, and what is plugged as planned is left alone', async () => {
    const page = await browser.newPage();
    await page.goto(`file://${built}`);
    const worker = /id="script">([^]*?)<\/script>/.exec(await readFile(built, 'utf8'))?.[1] ?? '';
    const boards = Array.from({ length: share(80) }, (_, at) => questionOf(at + 1001));
    const questions = (await Promise.all(boards.map(pluggedAs))).filter((one) => one !== null);
    const there = await page.evaluate<readonly string[]>(asking(worker, questions));
    const seen = new Tally();
    for (const [at, question] of questions.entries()) {
      const last = (JSON.parse(there[at] ?? '') as readonly News[]).findLast((one) => one.kind === 'answer')?.answer;
      expect(plain(last), `board ${question.about}`).toBe(plain(JSON.parse(await rewireAnswerOf(question))));
      if (last?.kind !== 'plan') throw new Error(`board ${question.about} has a plan that is plugged`);
      const isWhole = question.about % 2 === 0;
      if (isWhole) expect(last.steps, `board ${question.about}`).toEqual([]);
      seen.add(isWhole ? 'whole' : 'one pedal more');
    }
    expect(seen.lacking(share(8), 'whole', 'one pedal more')).toEqual([]);
  });
});

/** A script that asks a worker of the code each question, and comes to all its news of each. */
const asking = (code: string, questions: readonly Question[]): string => `(async () => {
  const worker = new Worker(URL.createObjectURL(new Blob([${JSON.stringify(code)}], { type: 'text/javascript' })));
  const spelled = (_, value) => typeof value === 'bigint' ? String(value)
    : value instanceof Map || value instanceof Set ? [...value] : value;
  const told = [];
  for (const question of ${JSON.stringify(questions)}) {
    told.push(await new Promise((resolve, reject) => {
      const news = [];
      worker.onmessage = ({ data }) => {
        news.push(data);
        if (data.kind === 'failed') reject(new Error(data.message));
        if (data.kind === 'done') resolve(JSON.stringify(news, spelled));
      };
      worker.postMessage({ kind: 'ask', question });
    }));
  }
  worker.terminate();
  return told;
})()`;
