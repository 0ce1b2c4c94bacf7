import { join } from 'node:path';

import fc from 'fast-check';

import { subjects } from './arbitrary-subjects.js';
import { caseFiles, writeCase } from './case-files.js';
import { parsedJson } from './data.js';
import { plugged } from './plugged.js';
import { Runner } from './runner.js';
import { say } from './say.js';

/** Any number will do: it only has to be the same in every run. */
const seed = 20_231;

/** Writes so many cases below a folder; the program plans the boards that are to be plugged by a plan. */
export async function writeCases(folder: string, count: number, program: string): Promise<void> {
  const runner = new Runner(program);
  try {
    for (const [at, { case: drawn, plugging }] of fc.sample(subjects, { seed, numRuns: count }).entries()) {
      const own = join(folder, String(at).padStart(4, '0'));
      await writeCase(own, drawn);
      if (plugging === 'none') continue;
      const { board, catalogue } = caseFiles;
      const planned = await runner.run(['choose', board, catalogue, '--partial', '--json', '--time', '60'], own);
      const plan = parsedJson(planned?.output ?? '');
      await writeCase(own, { ...drawn, board: plugged(drawn.board, plan, plugging) });
    }
  } finally {
    runner.close();
  }
  say(`${count} cases in ${folder}`);
}
