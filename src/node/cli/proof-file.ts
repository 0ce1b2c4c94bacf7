import { obstacleTo, writeWhole } from '../disk/write-file.js';
import type { Answer } from '../../planning/answer.js';
import { tell } from './tell.js';

/** Where the proof goes, and whether a file that is there may be replaced. */
export type ProofTarget = { readonly path: string; readonly overwrite: boolean };

/** False when no proof could be written there, which is then said on standard error: before the search, not after it. */
export async function isWritable(target: ProofTarget): Promise<boolean> {
  const obstacle = await obstacleTo(target.path, target);
  if (obstacle !== null) tell(`${target.path}: ${obstacle.message} ${obstacle.remedy}`);
  return obstacle === null;
}

/** Writes the answer's proof and says so on standard error, or why there is none. False when the system refused it. */
export async function writeProof(answer: Answer, target: ProofTarget): Promise<boolean> {
  if (answer.kind === 'stopped' || answer.proof === undefined) {
    tell(`No proof written: ${whyNone(answer)}.`);
    return true;
  }
  const obstacle = await writeWhole(target.path, `${JSON.stringify(answer.proof)}\n`, target);
  tell(
    obstacle === null
      ? `Proof written to ${target.path}.`
      : `${target.path}: ${obstacle.message} ${obstacle.remedy} The proof was not written.`,
  );
  return obstacle === null;
}

function whyNone(answer: Answer): string {
  const isUnproven = answer.kind === 'stopped' || (answer.kind === 'plan' && answer.gap !== null);
  return isUnproven
    ? 'the search stopped before there was one'
    : 'this answer was proven in a way that cannot be written down';
}
