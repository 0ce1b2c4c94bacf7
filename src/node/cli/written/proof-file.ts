import { obstacleTo, writeWhole } from '../../disk/write-file.js';
import type { Answer } from '../../../planning/answer.js';
import type { Wanted } from '../../../planning/wanted/wanted.js';
import type { WrittenFiles } from '../pipeline.js';
import { tell } from '../printed/tell.js';

export type ProofFlags = {
  /** The file to write the proof to; none is written when left out. */
  readonly proof?: string;
  /** Whether it may be replaced. */
  readonly force?: boolean;
};

type Target = { readonly path: string; readonly overwrite: boolean };

/** The file of the proof; null where none is to be written. */
export function proofFile({ proof: path, force = false }: ProofFlags): WrittenFiles<unknown, Answer | Wanted> | null {
  if (path === undefined) return null;
  const target: Target = { path, overwrite: force };
  return {
    areWritable: async () => isWritable(target),
    write: async (_, answer) => writeProof(answer, target),
  };
}

/** False when no proof could be written there, which is then said on standard error: before the search, not after it. */
async function isWritable(target: Target): Promise<boolean> {
  const obstacle = await obstacleTo(target.path, target);
  if (obstacle !== null) tell(`${target.path}: ${obstacle.message} ${obstacle.remedy}`);
  return obstacle === null;
}

/** Writes the answer's proof and says so on standard error, or why there is none. False when the system refused it. */
async function writeProof(answer: Answer | Wanted, target: Target): Promise<boolean> {
  if (answer.kind === 'stopped' || answer.kind === 'wanted' || answer.proof === undefined) {
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

function whyNone(answer: Answer | Wanted): string {
  if (answer.kind === 'wanted') return 'there is no plan to prove, only what to look for';
  const isUnproven = answer.kind === 'stopped' || (answer.kind === 'plan' && answer.gap !== null);
  return isUnproven
    ? 'the search stopped before there was one'
    : 'this answer was proven in a way that cannot be written down';
}
