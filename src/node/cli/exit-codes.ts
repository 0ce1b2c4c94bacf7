import type { Answer } from '../../planning/answer.js';
import type { Wanted } from '../../planning/wanted/wanted.js';
import type { Comparison } from '../../planning/compare/comparison.js';

/** What the process ends with. */
export const exitCodes = {
  plan: 0,
  internalError: 1,
  usage: 2,
  input: 3,
  noPlan: 4,
  stopped: 5,
} as const;

export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];

/** What an answer ends the process with. */
export function exitCodeOf(answer: Answer | Wanted): ExitCode {
  switch (answer.kind) {
    case 'wanted':
      return answer.isProven ? exitCodes.plan : exitCodes.stopped;
    case 'plan':
      return answer.gap === null ? exitCodes.plan : exitCodes.stopped;
    case 'impossible':
      return exitCodes.noPlan;
    case 'stopped':
      return exitCodes.stopped;
  }
}

/** What a comparison ends the process with: one option with a plan is enough, but all must be proven. */
export function comparisonCode({ options, isProven }: Comparison): ExitCode {
  if (!isProven) return exitCodes.stopped;
  return options.some(({ kind }) => kind === 'plan') ? exitCodes.plan : exitCodes.noPlan;
}
