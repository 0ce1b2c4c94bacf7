import { constants } from 'node:fs';
import { open, type FileHandle } from 'node:fs/promises';

import type { Words } from '../../domain/finding.js';
import { escapedText } from '../../domain/shown-text.js';
import { decode } from '../../reading/text/decode.js';
import type { FileText, NamedFile } from '../../reading/text/file-text.js';
import { nearFile } from './near-file.js';

/** The most bytes in an input file. */
export const mostBytes = 5_000_000;

/** Reads a file of UTF-8 text of at most so many bytes. A file that is too large is refused before it is read. */
export async function readText(path: string, most = mostBytes): Promise<FileText> {
  let handle: FileHandle | null = null;
  try {
    handle = await open(path, constants.O_RDONLY);
    const { size } = await handle.stat();
    if (size > most) return wholeFile(tooLarge(most));
    const bytes = await firstBytes(handle, most + 1);
    return bytes.length > most ? wholeFile(tooLarge(most)) : decode(bytes);
  } catch (error) {
    const words = wordsOfSystemError(error);
    const near = words === systemErrors['ENOENT'] ? await nearFile(path) : null;
    return wholeFile(near === null ? words : { ...words, remedy: `Did you mean ${escapedText(near)}?` });
  } finally {
    await handle?.close();
  }
}

/** The same with its name. */
export const namedFile = async (file: string, most = mostBytes): Promise<NamedFile> => ({
  file,
  text: await readText(file, most),
});

/** Reads up to a limit: what is no ordinary file, such as a pipe, does not tell its size beforehand. */
async function firstBytes(handle: FileHandle, limit: number): Promise<Buffer> {
  const chunks: Buffer[] = [];
  let length = 0;
  while (length < limit) {
    const { bytesRead, buffer } = await handle.read(Buffer.alloc(Math.min(65_536, limit - length)));
    if (bytesRead === 0) break;
    chunks.push(buffer.subarray(0, bytesRead));
    length += bytesRead;
  }
  return Buffer.concat(chunks);
}

const wholeFile = (words: Words): FileText => ({ kind: 'unreadable', line: 1, column: 1, words });

const tooLarge = (most: number): Words => ({
  message: `the file is larger than ${most / 1e6} MB, the most that is read.`,
  remedy: 'Leave out what is not needed.',
});

const systemErrors: Readonly<Record<string, Words>> = {
  ENOENT: { message: 'there is no such file.', remedy: 'Check the path and the spelling of the name.' },
  ENOTDIR: { message: 'there is no such file.', remedy: 'Check the path: a part of it is a file, not a folder.' },
  EISDIR: { message: 'this is a folder, not a file.', remedy: 'Name a file in it.' },
  EACCES: { message: 'there is no permission to read the file.', remedy: 'Change its permissions, or copy it.' },
  EPERM: { message: 'there is no permission to read the file.', remedy: 'Change its permissions, or copy it.' },
  ELOOP: { message: 'its symbolic links go round in a circle.', remedy: 'Name the file itself.' },
  ENAMETOOLONG: { message: 'the name is too long to be that of a file.', remedy: 'Check the path.' },
  ERR_INVALID_ARG_VALUE: { message: 'the path holds a NUL, which no path can.', remedy: 'Check the path.' },
};

function wordsOfSystemError(error: unknown): Words {
  if (!(error instanceof Error) || !('code' in error)) throw error;
  const known = systemErrors[String(error.code)];
  return known ?? { message: `cannot be read (${String(error.code)}).`, remedy: 'Check the path and the disk.' };
}
