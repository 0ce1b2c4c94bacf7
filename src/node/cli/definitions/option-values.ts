import { InvalidArgumentError } from 'commander';

import { readPurchase, type AskedSupply } from '../../../planning/compare/read-purchase.js';
import type { CheckFlags } from '../commands/check-command.js';
import type { CompareFlags } from '../commands/compare-command.js';

/** Seconds above 0. */
export function positiveSeconds(text: string): number {
  const seconds = /^(\d+\.?\d*|\.\d+)$/.test(text) ? Number(text) : 0;
  if (seconds > 0 && Number.isFinite(seconds)) return seconds;
  throw new InvalidArgumentError('It takes a number of seconds above 0, such as 10 or 0.5.');
}

/** Money in the major unit, not below 0. */
export function amount(text: string): number {
  const value = /^(\d+\.?\d*|\.\d+)$/.test(text) ? Number(text) : NaN;
  if (Number.isFinite(value)) return value;
  throw new InvalidArgumentError('It takes an amount of money, such as 120 or 99.50.');
}

/** "quay-6:5", or "quay-6/2:5" for the second unit. */
export function outputAsked(text: string): CheckFlags['output'] {
  const [, supply, unit = '1', output] = /^([^/:]+)(?:\/([1-9]\d{0,4}))?:([1-9]\d{0,4})$/.exec(text) ?? [];
  if (supply !== undefined && output !== undefined) return { supply, unit: Number(unit), output: Number(output) };
  throw new InvalidArgumentError(
    "It takes a supply's id and the number of an output, such as quay-6:5, or quay-6/2:5 for the second unit.",
  );
}

/** A whole number from 1 to so many. */
export const wholeUpTo =
  (most: number) =>
  (text: string): number => {
    const value = /^\d{1,6}$/.test(text) ? Number(text) : 0;
    if (value >= 1 && value <= most) return value;
    throw new InvalidArgumentError(`It takes a whole number from 1 to ${most}.`);
  };

/** One more purchase beside those given before. */
export function purchase(text: string, before: readonly (readonly AskedSupply[])[]): CompareFlags['option'] {
  const read = readPurchase(text);
  if (read.kind === 'unreadable') throw new InvalidArgumentError(read.message);
  return [...before, read.supplies];
}
