import { Option, type Command } from 'commander';

import type { ReportKinds } from '../../../report/formats.js';
import type { ProofFlags } from '../written/proof-file.js';
import type { SheetFlags } from '../written/sheet-beside.js';

/** Given again and again, a file each. `kinds` says which endings of a name mean what. */
export const reportOption = (kinds: string): Option =>
  new Option('--report <file>', `write a report to take home; its ending says which: ${kinds}; repeatable`)
    .argParser((path: string, before: readonly string[]) => [...before, path])
    .default([], 'none');

/** What a command makes reports of. */
export type Reported = 'answer' | 'check' | 'comparison' | 'labels' | 'spare';

type Judge = <Input>(kinds: ReportKinds<Input>) => string | null;

/** What is wrong with names by the reports that there are of something, which are loaded only then. */
const faultOf: Readonly<Record<Reported, (judge: Judge) => Promise<string | null>>> = {
  answer: async (judge) => judge((await import('../../../report/formats.js')).answerReports),
  check: async (judge) => judge((await import('../../../report/page-formats.js')).checkReports),
  comparison: async (judge) => judge((await import('../../../report/comparison-formats.js')).comparisonReports),
  labels: async (judge) => judge((await import('../../../report/page-formats.js')).labelsReports),
  spare: async (judge) => judge((await import('../../../report/page-formats.js')).spareReports),
};

/** Goes with a sheet of paper alone. */
export const shopOption = (): Option =>
  new Option('--shop <name>', "the shop's own name on a sheet, in place of the catalogue's");

/**
 * Ends in wrong use where a report cannot have the name that was given, or there is nothing to replace or for the shop. What
 * knows the endings is loaded only when there is a report.
 */
export async function refuseReports(command: Command, flags: SheetFlags & ProofFlags, of: Reported): Promise<void> {
  refuseForce(command, flags, of);
  const { report: paths, shop, proof } = flags;
  const taken = proof === undefined ? [] : [proof];
  if (paths.length > 0) await refuseNames(command, paths, of, taken);
  if (shop === undefined) return;
  const { isSheet } = await import('../../../report/formats.js');
  if (!paths.some(isSheet)) command.error('error: --shop goes with a sheet, such as --report plan.sheet.html');
}

/** Ends in wrong use where there is nothing to replace. */
export function refuseForce(command: Command, { report, proof, force = false }: SheetFlags & ProofFlags, of: Reported) {
  if (force && report.length === 0 && proof === undefined)
    command.error(`error: --force goes with ${of === 'answer' ? '--proof or --report' : '--report'} only`);
}

async function refuseNames(
  command: Command,
  paths: readonly string[],
  of: Reported,
  taken: readonly string[],
): Promise<void> {
  const { reportFault } = await import('../written/report-files.js');
  const fault = await faultOf[of]((kinds) => reportFault(paths, kinds, taken));
  if (fault !== null) command.error(`error: ${fault}`);
}
