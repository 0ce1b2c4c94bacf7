import type { Line } from './answer.js';
import { isDeepStrictEqual } from 'node:util';

/** What two recordings say differently of one question. */
export type Difference = {
  readonly case: string;
  readonly question: string;
  /** Each place where they differ, with what either says; null where one has no such line. */
  readonly places: readonly string[] | null;
};

export type Compared = {
  readonly differences: readonly Difference[];
  readonly same: number;
  /** Of those that are the same: what was printed is not. */
  readonly wordedOtherwise: readonly Difference[];
  /** Where either ran out of time, there is nothing to compare. */
  readonly stopped: number;
};

/** Compares the cases that both recordings have. */
export function compared(one: readonly Line[], other: readonly Line[]): Compared {
  const [ones, others] = [byQuestion(one), byQuestion(other)];
  const shared = sharedCases(one, other);
  const differences: Difference[] = [];
  const wordedOtherwise: Difference[] = [];
  let [same, stopped] = [0, 0];
  for (const key of new Set([...ones.keys(), ...others.keys()])) {
    const [before, after] = [ones.get(key), others.get(key)];
    const { case: name, question } = (before ?? after) as Line;
    if (!shared.has(name)) continue;
    const places = before && after ? placesOf(before.facts, after.facts, '') : null;
    if (isStopped(before) || isStopped(after)) stopped += 1;
    else if (places === null || places.length > 0) differences.push({ case: name, question, places });
    else {
      same += 1;
      if (before?.printed !== after?.printed) wordedOtherwise.push({ case: name, question, places });
    }
  }
  return { differences, same, wordedOtherwise, stopped };
}

const byQuestion = (lines: readonly Line[]): ReadonlyMap<string, Line> =>
  new Map(lines.map((line) => [`${line.case} ${line.question}`, line]));

function sharedCases(one: readonly Line[], other: readonly Line[]): ReadonlySet<string> {
  const others = new Set(other.map((line) => line.case));
  return new Set(one.map((line) => line.case).filter((name) => others.has(name)));
}

const isStopped = (line: Line | undefined): boolean => line?.facts['stopped'] === true;

/** The innermost places where two pieces of data differ, such as `score.money: "1.00" → "2.00"`. */
function placesOf(one: unknown, other: unknown, at: string): readonly string[] {
  if (isDeepStrictEqual(one, other)) return [];
  if (!isNested(one) || !isNested(other)) return [`${at.slice(1)}: ${shown(one)} → ${shown(other)}`];
  const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...keys].flatMap((key) => placesOf(one[key], other[key], `${at}.${key}`));
}

const isNested = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

const shown = (value: unknown): string => (value === undefined ? 'nothing' : JSON.stringify(value));
