import { readdir } from 'node:fs/promises';

import type { Words } from '../../domain/finding.js';

type BoardFolder =
  /** The names of the files, in the order of their letters; at least one. */
  { readonly kind: 'files'; readonly names: readonly string[] } | { readonly kind: 'none'; readonly words: Words };

/** How the names of board files end. */
const boardEnding = /\.(?:ya?ml|json)$/i;

/** The board files that stand in a folder itself; hidden ones are passed over. */
export async function boardFolder(folder: string): Promise<BoardFolder> {
  try {
    const entries = await readdir(folder, { withFileTypes: true });
    const names = entries
      .filter((entry) => !entry.isDirectory() && !entry.name.startsWith('.') && boardEnding.test(entry.name))
      .map(({ name }) => name)
      .sort((first, second) => (first < second ? -1 : 1));
    return names.length === 0 ? { kind: 'none', words: empty } : { kind: 'files', names };
  } catch (error) {
    if (!(error instanceof Error) || !('code' in error)) throw error;
    return { kind: 'none', words: wordsFor(String(error.code)) };
  }
}

const empty: Words = {
  message: 'there is no board file in this folder.',
  remedy: 'Board files end in .yaml, .yml or .json.',
};

function wordsFor(code: string): Words {
  switch (code) {
    case 'ENOENT':
      return { message: 'there is no such folder.', remedy: 'Check the path and the spelling of the name.' };
    case 'ENOTDIR':
      return { message: 'this is a file, not a folder.', remedy: 'Name the folder that holds the board files.' };
    case 'EACCES':
    case 'EPERM':
      return { message: 'there is no permission to read the folder.', remedy: 'Change its permissions, or copy it.' };
    default:
      return { message: `cannot be read (${code}).`, remedy: 'Check the path and the disk.' };
  }
}
