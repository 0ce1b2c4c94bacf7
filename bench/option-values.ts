import type { Size } from './sizes.js';

/** The items of a list with commas, each once. */
export const listOf = (text: string): readonly string[] => [...new Set(text.split(','))];

/** A size such as `12x40`. @throws RangeError when it is none. */
export function sizeOf(text: string): Size {
  const [pedals, supplies, ...rest] = text.split(/[x×]/);
  if (pedals === undefined || supplies === undefined || rest.length > 0) {
    throw new RangeError(`--sizes takes sizes such as 12x40, not "${text}"`);
  }
  // The smallest shop of `instance` has six models: a wall adapter for each kind of power.
  return { pedals: wholeOf('--sizes', pedals, 1, 200), supplies: wholeOf('--sizes', supplies, 6, 5000) };
}

/** `5` is seeds 1 to 5, `3..4` those two. @throws RangeError when it is neither. */
export function seedsOf(text: string): readonly number[] {
  const [first, last] = text.includes('..') ? text.split('..', 2) : ['1', text];
  const from = wholeOf('--seeds', first ?? '', 1, 1_000_000);
  const to = wholeOf('--seeds', last ?? '', from, 1_000_000);
  return Array.from({ length: to - from + 1 }, (_, index) => from + index);
}

/** A whole number between both bounds, both included. @throws RangeError when it is none. */
export function wholeOf(flag: string, text: string, least: number, most: number): number {
  const value = /^\d+$/.test(text) ? Number(text) : NaN;
  if (value >= least && value <= most) return value;
  throw new RangeError(`${flag} takes whole numbers from ${least} to ${most}, not "${text}"`);
}

/** The name as one of those that are known. @throws RangeError when it is not among them. */
export function oneOf<Name extends string>(flag: string, names: readonly Name[], text: string): Name {
  const found = names.find((name) => name === text);
  if (found === undefined) throw new RangeError(`${flag} takes ${names.join(', ')}, not "${text}"`);
  return found;
}
