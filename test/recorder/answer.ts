import { createHash } from 'node:crypto';

import { parse } from 'yaml';

import { parsedJson, type Data } from './data.js';
import { factsOf } from './facts/facts.js';
import type { Ran } from './host.js';
import type { Question } from './questions.js';

/** One line of a recording. */
export type Line = {
  readonly case: string;
  readonly question: string;
  /** What came of it; where time ran out, that and nothing else. */
  readonly facts: Data;
  /** Tells whether everything was printed alike, words and free choices too. */
  readonly printed: string;
};

/** The exit code of a command that stopped before it was done. */
const stoppedCode = 5;

export function lineOf(name: string, question: Question, ran: Ran | null): Line {
  const head = { case: name, question: question.name };
  if (ran === null || ran.code === stoppedCode) return { ...head, facts: { stopped: true }, printed: '' };
  const { code, crash, output } = ran;
  const facts = question.parameters[0] === 'convert' ? { data: digest(dataOf(output)) } : factsOf(parsedJson(output));
  if (facts['complete'] === false) return { ...head, facts: { stopped: true }, printed: '' };
  return { ...head, facts: { code, ...(crash === null ? {} : { crash }), ...facts }, printed: digest(output) };
}

const digest = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 16);

/** What a YAML text says, however it is laid out. */
function dataOf(text: string): string {
  try {
    return JSON.stringify(parse(text));
  } catch {
    return text;
  }
}
