import { readFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';

import { list, textAt, valueAt } from './data.js';

/** The compiled module beside the command's entry that makes its command line. */
const programModule = 'program.js';

/**
 * The compiled command line of a checkout, given as its folder or as its compiled entry: wherever the layout has it.
 * @throws Error when the package names no command.
 */
export async function programOf(path: string): Promise<string> {
  const entry = path.endsWith('.js') ? resolve(path) : await entryOf(resolve(path));
  return join(dirname(entry), programModule);
}

async function entryOf(folder: string): Promise<string> {
  const named: unknown = JSON.parse(await readFile(join(folder, 'package.json'), 'utf8'));
  const bin = valueAt(named, 'bin');
  const entry = typeof bin === 'string' ? bin : (textAt(bin, 'boardfeed') ?? list(Object.values(bin ?? {}))[0]);
  if (typeof entry !== 'string') throw new Error(`${folder} is no package with a command`);
  return join(folder, entry);
}
