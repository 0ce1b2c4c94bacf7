import type { Answer } from '../../../planning/answer.js';
import type { Wanted } from '../../../planning/wanted/wanted.js';
import type { WrittenFiles } from '../pipeline.js';
import { tell } from '../printed/tell.js';
import { isWritable, writeAloud } from './aloud.js';

export type ProofFlags = {
  /** The file to write the proof to; none is written when left out. */
  readonly proof?: string;
  /** Whether it may be replaced. */
  readonly force?: boolean;
};

/** The file of the proof; null where none is to be written. */
export function proofFile({ proof: path, force = false }: ProofFlags): WrittenFiles<unknown, Answer | Wanted> | null {
  if (path === undefined) return null;
  return {
    areWritable: async () => isWritable(path, force),
    write: async (_, answer) => writeProof(answer, path, force),
  };
}

/** Writes the answer's proof and says so on standard error, or why there is none. False when the system refused it. */
async function writeProof(answer: Answer | Wanted, path: string, force: boolean): Promise<boolean> {
  if (answer.kind === 'stopped' || answer.kind === 'wanted' || answer.proof === undefined) {
    tell(`No proof written: ${whyNone(answer)}.`);
    return true;
  }
  const said = { done: `Proof written to ${path}.`, lost: 'The proof was not written.' };
  return writeAloud(path, `${JSON.stringify(answer.proof)}\n`, force, said);
}

function whyNone(answer: Answer | Wanted): string {
  if (answer.kind === 'wanted') return 'there is no plan to prove, only what to look for';
  const isUnproven = answer.kind === 'stopped' || (answer.kind === 'plan' && answer.gap !== null);
  return isUnproven
    ? 'the search stopped before there was one'
    : 'this answer was proven in a way that cannot be written down';
}
