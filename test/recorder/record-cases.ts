import { appendFile, cp, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { parse } from 'yaml';

import { lineOf, type Line } from './answer.js';
import { caseFiles } from './case-files.js';
import { questionsOf, type Question } from './questions.js';
import { Runner } from './runner.js';
import { say } from './say.js';

export type Recording = {
  readonly cases: string;
  /** The compiled module that makes the command line. */
  readonly program: string;
  readonly to: string;
  /** How many processes run commands at once. */
  readonly jobs: number;
  /** Which cases are asked about: each of so many. */
  readonly every: number;
};

/** Cases that are recorded already are passed over, so a run that was broken off goes on. */
export async function recordCases({ cases, program, to, jobs, every }: Recording): Promise<void> {
  const done = await recordedIn(to);
  const names = (await readdir(cases)).sort().filter((name, at) => at % every === 0 && !done.has(name));
  const started = performance.now();
  let count = 0;
  const queue = names.values();
  const work = async (): Promise<void> => {
    const runner = new Runner(program);
    try {
      for (const name of queue) {
        const lines = await linesOf(name, join(cases, name), runner);
        await appendFile(to, lines.map((line) => `${JSON.stringify(line)}\n`).join(''));
        count += 1;
        if (count % 25 === 0) say(`${count} of ${names.length} cases, ${secondsSince(started)} s`);
      }
    } finally {
      runner.close();
    }
  };
  await Promise.all(Array.from({ length: jobs }, work));
  say(`${count} cases in ${secondsSince(started)} s, ${done.size} were there`);
}

const secondsSince = (started: number): number => Math.round((performance.now() - started) / 1000);

async function recordedIn(file: string): Promise<ReadonlySet<string>> {
  const text = await readFile(file, 'utf8').catch(() => '');
  return new Set(linesIn(text).map((line) => line.case));
}

/** The lines of a recording. */
export const linesIn = (text: string): readonly Line[] =>
  text
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as Line);

/** Runs in a copy, since commands write files and the cases are there for other runs. */
async function linesOf(name: string, files: string, runner: Runner): Promise<readonly Line[]> {
  const folder = await mkdtemp(join(tmpdir(), 'boardfeed-record-'));
  try {
    await cp(files, folder, { recursive: true });
    const read = async (file: string): Promise<unknown> => parse(await readFile(join(files, file), 'utf8'));
    const questions = questionsOf(Number(name), await read(caseFiles.board), await read(caseFiles.catalogue));
    const lines: Line[] = [];
    for (const question of questions) lines.push(await answered(name, question, folder, runner));
    return lines;
  } finally {
    await rm(folder, { recursive: true });
  }
}

async function answered(name: string, question: Question, folder: string, runner: Runner): Promise<Line> {
  const { parameters, keep, spoil } = question;
  if (spoil !== undefined) {
    const text = await readFile(join(folder, spoil.file), 'utf8');
    await writeFile(join(folder, spoil.as), text.replace(spoil.from, spoil.to));
  }
  const ran = await runner.run(parameters, folder);
  if (keep !== undefined) await writeFile(join(folder, keep), ran?.output ?? '');
  return lineOf(name, question, ran);
}
