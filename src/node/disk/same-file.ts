import { resolve } from 'node:path';

import { fileAt } from './file-at.js';

/** Whether two paths lead to one file, by whatever names and links. Paths that lead nowhere are the same when spelled so. */
export async function isSameFile(first: string, second: string): Promise<boolean> {
  if (resolve(first) === resolve(second)) return true;
  const one = await fileAt(first);
  const other = await fileAt(second);
  return one !== null && other !== null && one.dev === other.dev && one.ino === other.ino;
}
