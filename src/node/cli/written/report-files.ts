import { resolve } from 'node:path';

import { listText } from '../../../report/words/words.js';
import type { Words } from '../../../domain/finding.js';
import { isSameFile } from '../../disk/same-file.js';
import type { ReportKinds } from '../../../report/formats.js';
import type { Kit } from '../../../domain/kit.js';
import type { WrittenFiles } from '../pipeline.js';
import { isWritable, writeAloud } from './aloud.js';

export type ReportFlags = {
  /** The files to write reports to. */
  readonly report: readonly string[];
  /** Whether files that are there already may be replaced. */
  readonly force?: boolean;
};

/**
 * What is wrong with the names of reports, as a message of wrong use; null when nothing is. `taken` are the names of other
 * files that the command writes.
 */
export function reportFault<Input>(
  paths: readonly string[],
  { endings, makerFor }: ReportKinds<Input>,
  taken: readonly string[] = [],
): string | null {
  const unknown = paths.find((path) => makerFor(path) === null);
  if (unknown !== undefined) {
    return `no report has a name like '${unknown}'; it must end in ${listText(endings, 'or')}`;
  }
  const all = [...taken, ...paths];
  const twice = all.find((path, at) => all.findIndex((other) => resolve(other) === resolve(path)) < at);
  return twice === undefined ? null : `'${twice}' is named twice; every file takes a name of its own`;
}

/**
 * Reports of an answer, made from what `inputOf` makes of it. No report ever replaces one of the files `inputs` that it is made
 * from.
 */
export const reportFiles = <Answer, Input>(
  { report: paths, force = false }: ReportFlags,
  kinds: ReportKinds<Input>,
  inputs: readonly string[],
  inputOf: (kit: Kit, answer: Answer) => Promise<Input> | Input,
): WrittenFiles<Kit, Answer> => ({
  areWritable: async () => areReportsWritable(paths, inputs, force),
  write: async (kit, answer) => writeReports(paths, kinds, await inputOf(kit, answer), force),
});

/** Whether every report can be written, as far as that can be told beforehand; what cannot is said on standard error. */
async function areReportsWritable(
  paths: readonly string[],
  inputs: readonly string[],
  force: boolean,
): Promise<boolean> {
  let all = true;
  for (const path of paths) if (!(await isWritable(path, force, await inputObstacle(path, inputs)))) all = false;
  return all;
}

async function inputObstacle(path: string, inputs: readonly string[]): Promise<Words | null> {
  for (const input of inputs)
    if (await isSameFile(path, input))
      return { message: 'this is a file that the report is made from.', remedy: 'Give another name.' };
  return null;
}

/**
 * Writes each report whole or not at all, in the format that its name ends with, and says so on standard error. All of them
 * are made before the first is written. False when the system refused one.
 */
async function writeReports<Input>(
  paths: readonly string[],
  { makerFor }: ReportKinds<Input>,
  input: Input,
  force: boolean,
): Promise<boolean> {
  const texts = paths.map((path) => {
    const make = makerFor(path);
    if (make === null) throw new Error(`no report has a name like ${path}`);
    return { path, text: make(input) };
  });
  let all = true;
  for (const { path, text } of texts) {
    const said = { done: `Report written to ${path}.`, lost: 'The report was not written.' };
    if (!(await writeAloud(path, text, force, said))) all = false;
  }
  return all;
}
