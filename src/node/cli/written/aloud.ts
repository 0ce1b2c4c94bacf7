import type { Words } from '../../../domain/finding.js';
import { obstacleTo, writeWhole } from '../../disk/write-file.js';
import { tell } from '../printed/tell.js';

/** What stands in the way, and what to do. */
export const wordsText = ({ message, remedy }: Words): string => `${message} ${remedy}`;

/** Whether a file can be written, as far as that can be told beforehand; what stands in the way is said on standard error. */
export async function isWritable(path: string, overwrite: boolean, known: Words | null = null): Promise<boolean> {
  const obstacle = known ?? (await obstacleTo(path, { overwrite }));
  if (obstacle !== null) tell(`${path}: ${wordsText(obstacle)}`);
  return obstacle === null;
}

/** What is said of a file that was written, and of one that was not, behind what stood in the way. */
type Said = { readonly done: string; readonly lost: string };

/** Writes a file whole or not at all, and says so on standard error. False when it was not written. */
export async function writeAloud(path: string, text: string, overwrite: boolean, { done, lost }: Said) {
  const obstacle = await writeWhole(path, text, { overwrite });
  tell(obstacle === null ? done : `${path}: ${wordsText(obstacle)} ${lost}`);
  return obstacle === null;
}
