import type { Comparison } from '../../planning/compare/comparison.js';
import { exitCodes, type ExitCode } from './exit-codes.js';

/** What a comparison ends the process with: one option with a plan is enough, but all must be proven. */
export function comparisonCode({ options, isProven }: Comparison): ExitCode {
  if (!isProven) return exitCodes.stopped;
  return options.some(({ kind }) => kind === 'plan') ? exitCodes.plan : exitCodes.noPlan;
}
