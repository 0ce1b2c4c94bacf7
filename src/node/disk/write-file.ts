import { randomUUID } from 'node:crypto';
import { access, constants, link, open, rename, rm, stat } from 'node:fs/promises';
import { dirname } from 'node:path';

import type { Words } from '../../domain/finding.js';

type WriteOptions = {
  /** Whether a file of that name may be replaced. */
  readonly overwrite: boolean;
};

/** Why a file cannot be written at a path, as far as that can be told beforehand; null when nothing speaks against it. */
export async function obstacleTo(path: string, { overwrite }: WriteOptions): Promise<Words | null> {
  try {
    const found = await stat(path).catch(unlessMissing);
    if (found?.isDirectory() === true) return wordsFor('EISDIR');
    if (found !== null && !found.isFile()) return wordsFor('not a file');
    if (found !== null && !overwrite) return wordsFor('EEXIST');
    await access(dirname(path), constants.W_OK);
    return null;
  } catch (error) {
    return wordsOf(error);
  }
}

/**
 * Writes a file whole or not at all: beside its place first, and put there when all of it is on the disk. Returns why it
 * was not written; null when it was.
 */
export async function writeWhole(path: string, text: string, options: WriteOptions): Promise<Words | null> {
  const obstacle = await obstacleTo(path, options);
  if (obstacle !== null) return obstacle;
  const beside = `${path}.${randomUUID()}.part`;
  try {
    await writeNew(beside, text);
    // A link is refused where a file has come to be meanwhile; to rename would replace that one.
    await (options.overwrite ? rename(beside, path) : link(beside, path));
    return null;
  } catch (error) {
    return wordsOf(error);
  } finally {
    await rm(beside, { force: true }).catch(() => undefined);
  }
}

async function writeNew(path: string, text: string): Promise<void> {
  const handle = await open(path, 'wx');
  try {
    await handle.writeFile(text);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** For what looks at a path: null where there is nothing. @throws what else the system says. */
export function unlessMissing(error: unknown): null {
  if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
  throw error;
}

const obstacles: Readonly<Record<string, Words>> = {
  EEXIST: {
    message: 'there is a file of that name already.',
    remedy: 'Give another name, or add --force to replace it.',
  },
  EISDIR: { message: 'this is a folder, not a file.', remedy: 'Name a file in it.' },
  'not a file': { message: 'this is no ordinary file.', remedy: 'Give the name of a new file.' },
  ENOENT: { message: 'there is no such folder.', remedy: 'Make the folder first, or check the path.' },
  ENOTDIR: { message: 'there is no such folder.', remedy: 'Check the path: a part of it is a file.' },
  EACCES: { message: 'there is no permission to write here.', remedy: 'Name a file in another folder.' },
  EPERM: { message: 'there is no permission to write here.', remedy: 'Name a file in another folder.' },
  EROFS: { message: 'nothing can be written on this disk.', remedy: 'Name a file on another one.' },
  EFBIG: { message: 'the disk takes no file of this size.', remedy: 'Name a file on another one.' },
  EDQUOT: { message: 'your share of the disk is full.', remedy: 'Make room, or name a file on another disk.' },
  ENOSPC: { message: 'the disk is full.', remedy: 'Make room, or name a file on another disk.' },
  ENAMETOOLONG: { message: 'the name is too long to be that of a file.', remedy: 'Give a shorter one.' },
  ERR_INVALID_ARG_VALUE: { message: 'the path holds a NUL, which no path can.', remedy: 'Check the path.' },
};

const wordsFor = (code: string): Words =>
  obstacles[code] ?? { message: `cannot be written (${code}).`, remedy: 'Check the path and the disk.' };

/** What a refusal of the system means. @throws whatever is none. */
export function wordsOf(error: unknown): Words {
  if (!(error instanceof Error) || !('code' in error)) throw error;
  return wordsFor(String(error.code));
}
