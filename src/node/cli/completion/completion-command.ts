import type { Command } from 'commander';

import { escapedText } from '../../../domain/shown-text.js';
import { knownIds } from '../../../reading/known-ids.js';
import { namedFile } from '../../disk/file-text.js';
import { exitCodes, type ExitCode } from '../exit-codes.js';
import { complete, type Candidate, type IdsIn } from './complete.js';
import { completionScripts, type Shell } from './scripts.js';
import { typedIn, type TypedWords } from './words.js';

/** What the scripts give: a line with the place of the cursor, or the number of the word that it is in. */
export type CompletionFlags = { readonly line?: string; readonly point?: number; readonly at?: number };

/** Prints the script for a shell; or, when that script asks, what may stand at the cursor. */
export async function runCompletion(
  root: Command,
  shell: Shell,
  words: readonly string[],
  { line, point, at }: CompletionFlags,
): Promise<ExitCode> {
  const typed: TypedWords | null =
    line !== undefined ? typedIn(line, point ?? line.length) : at === undefined ? null : { words, at };
  process.stdout.write(typed === null ? completionScripts[shell] : await answerTo(root, shell, typed));
  return exitCodes.plan;
}

const idsInFiles: IdsIn = async (paths) => knownIds(await Promise.all(paths.map((path) => namedFile(path))));

/** The first line says whether the shell is to complete the names of files, too; then come words. */
async function answerTo(root: Command, shell: Shell, typed: TypedWords): Promise<string> {
  const completion = await complete(root, typed, idsInFiles);
  const current = typed.words[typed.at] ?? '';
  // What a terminal could act on is no word that anybody would type.
  const safe = completion.candidates.filter(({ word }) => escapedText(word) === word && !/\s/.test(word));
  return [completion.kind, ...safe.map((candidate) => inForm(shell, candidate, current))]
    .map((text) => `${text}\n`)
    .join('');
}

function inForm(shell: Shell, { word, help }: Candidate, current: string): string {
  const remark = escapedText(help);
  switch (shell) {
    // bash takes a colon or an equals sign for the end of a word: what is before it stays as it is.
    case 'bash':
      return word.slice(Math.max(current.lastIndexOf(':'), current.lastIndexOf('=')) + 1);
    case 'zsh':
      return remark === '' ? word.replaceAll(':', '\\:') : `${word.replaceAll(':', '\\:')}:${remark}`;
    case 'fish':
      return remark === '' ? word : `${word}\t${remark}`;
  }
}
