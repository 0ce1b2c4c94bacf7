import { resolve } from 'node:path';

import { listText } from '../../../report/words/words.js';
import type { Words } from '../../../domain/finding.js';
import { isSameFile } from '../../disk/same-file.js';
import { obstacleTo, writeWhole } from '../../disk/write-file.js';
import type { ReportKinds } from '../../../report/formats.js';
import type { Kit } from '../../../domain/kit.js';
import type { Answer } from '../../../planning/answer.js';
import type { Wanted } from '../../../planning/wanted/wanted.js';
import type { Comparison } from '../../../planning/compare/comparison.js';
import type { ComparisonInput } from '../../../report/words/comparison-handout.js';
import type { Occasion, ReportInput } from '../../../report/words/handout.js';
import type { WrittenFiles } from '../pipeline.js';
import { tell } from '../printed/tell.js';

export type ReportOptions = {
  /** Whether files that are there already may be replaced. */
  readonly force: boolean;
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
 * The reports of an answer. No report ever replaces one of the files `inputs` that it is made from. `beside` is what they say
 * besides.
 */
export const reportFiles = (
  paths: readonly string[],
  kinds: ReportKinds<ReportInput>,
  inputs: readonly string[],
  options: ReportOptions,
  beside: (kit: Kit, answer: Answer | Wanted) => Promise<Pick<ReportInput, 'labels' | 'occasion'>>,
): WrittenFiles<Kit, Answer | Wanted> => ({
  areWritable: async () => areReportsWritable(paths, inputs, options),
  write: async (kit, answer) => writeReports(paths, kinds, { kit, answer, ...(await beside(kit, answer)) }, options),
});

/** The same of a comparison. */
export const comparisonFiles = (
  paths: readonly string[],
  kinds: ReportKinds<ComparisonInput>,
  inputs: readonly string[],
  options: ReportOptions,
  occasion: Occasion,
): WrittenFiles<Kit, Comparison> => ({
  areWritable: async () => areReportsWritable(paths, inputs, options),
  write: async (kit, comparison) => writeReports(paths, kinds, { kit, comparison, occasion }, options),
});

/** The same of any other answer. */
export const filesOf = <Answer>(
  paths: readonly string[],
  kinds: ReportKinds<{ readonly kit: Kit; readonly answer: Answer }>,
  inputs: readonly string[],
  options: ReportOptions,
): WrittenFiles<Kit, Answer> => ({
  areWritable: async () => areReportsWritable(paths, inputs, options),
  write: async (kit, answer) => writeReports(paths, kinds, { kit, answer }, options),
});

/**
 * Whether every report can be written, as far as that can be told beforehand; what cannot is said on standard error. No report
 * ever replaces one of the files `inputs` that it is made from.
 */
export async function areReportsWritable(
  paths: readonly string[],
  inputs: readonly string[],
  { force }: ReportOptions,
): Promise<boolean> {
  let writable = true;
  for (const path of paths) {
    const obstacle = (await inputObstacle(path, inputs)) ?? (await obstacleTo(path, { overwrite: force }));
    if (obstacle === null) continue;
    tell(`${path}: ${obstacle.message} ${obstacle.remedy}`);
    writable = false;
  }
  return writable;
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
export async function writeReports<Input>(
  paths: readonly string[],
  { makerFor }: ReportKinds<Input>,
  input: Input,
  { force }: ReportOptions,
): Promise<boolean> {
  const texts = paths.map((path) => {
    const make = makerFor(path);
    if (make === null) throw new Error(`no report has a name like ${path}`);
    return { path, text: make(input) };
  });
  let written = true;
  for (const { path, text } of texts) {
    const obstacle = await writeWhole(path, text, { overwrite: force });
    tell(
      obstacle === null
        ? `Report written to ${path}.`
        : `${path}: ${obstacle.message} ${obstacle.remedy} The report was not written.`,
    );
    if (obstacle !== null) written = false;
  }
  return written;
}
