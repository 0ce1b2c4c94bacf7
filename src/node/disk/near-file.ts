import { readdir } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

import { nearSpelling } from '../../domain/near-spelling.js';

/**
 * The path of the file that one that is not there was most likely meant to be: in the same folder the same name with another
 * ending, or a near spelling; the same in the folder of a near spelling. Null when there is none.
 */
export async function nearFile(path: string): Promise<string | null> {
  const folder = dirname(path);
  const names = await namesIn(folder, 'files');
  if (names !== null) return placed(path, folder, nearName(basename(path), names));
  const folders = (await namesIn(dirname(folder), 'folders')) ?? [];
  const near = nearName(basename(folder), folders);
  if (near === null) return null;
  const beside = join(dirname(folder), near);
  return placed(path, beside, nearName(basename(path), (await namesIn(beside, 'files')) ?? []));
}

/** As it was written where the folder is the same one. */
function placed(path: string, folder: string, name: string | null): string | null {
  if (name === null) return null;
  return dirname(path) === folder ? `${path.slice(0, path.length - basename(path).length)}${name}` : join(folder, name);
}

function nearName(name: string, names: readonly string[]): string | null {
  if (names.includes(name)) return name;
  // Endings are left aside: that two files have the same one makes their names no nearer.
  const stem = (text: string): string => text.replace(/\.[^.]*$/, '').toLowerCase();
  const stems = names.map(stem);
  const near = stems.includes(stem(name)) ? stem(name) : nearSpelling(stem(name), stems);
  return near === null ? null : (names[stems.indexOf(near)] ?? null);
}

/** Names in the order of their letters, hidden ones left out; null when the folder cannot be read. */
export async function namesIn(folder: string, kind: 'files' | 'folders'): Promise<readonly string[] | null> {
  try {
    const entries = await readdir(folder, { withFileTypes: true });
    return entries
      .filter((entry) => entry.isDirectory() === (kind === 'folders') && !entry.name.startsWith('.'))
      .map(({ name }) => name)
      .sort((first, second) => (first < second ? -1 : 1));
  } catch (error) {
    if (error instanceof Error && 'code' in error) return null;
    throw error;
  }
}
