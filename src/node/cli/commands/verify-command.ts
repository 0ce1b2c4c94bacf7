import type { Proof } from '../../../domain/proof.js';
import { verify, type Verdict } from '../../../planning/verify/verify.js';
import { parseProof } from '../../../proof/proof-schema.js';
import type { VerifyProgress } from '../../../proof/verify-proof.js';
import type { InputFault, ReadResult } from '../../../reading/faults/input-fault.js';
import { jsonIn } from '../../../reading/text/json-file.js';
import { planIn } from '../../../report/json/read-plan.js';
import { verdictJson } from '../../../report/json/verdict-codec.js';
import { verdictText } from '../../../report/screen/verdict.js';
import { namedFile } from '../../disk/file-text.js';
import type { ReadingOptions } from '../../../reading/sheet/without-bad-rows.js';
import { readInputs } from '../../disk/read-inputs.js';
import { exitCodes, type ExitCode } from '../exit-codes.js';
import { carryOut, nothingAsked, type Read } from '../pipeline.js';
import { statusLine } from '../progress/status-line.js';

export type VerifyFlags = ReadingOptions & {
  /** The file that holds the proof. */
  readonly proof: string;
  readonly json: boolean;
};

type VerifyPaths = { readonly board: string; readonly catalogue: string; readonly plan: string };

/** Proofs of large boards are longer than what people write. */
const mostProofBytes = 200_000_000;
const mostFaults = 20;

/** Checks the plan by the rules and the proof by arithmetic, and returns the exit code. */
export const runVerify = async (paths: VerifyPaths, flags: VerifyFlags): Promise<ExitCode> =>
  carryOut({
    read: async () => readAll(paths, flags),
    ask: nothingAsked,
    call: ({ kit, claim }) => checkedAloud((onProgress) => verify(kit, claim, onProgress)),
    json: flags.json,
    print: {
      json: ({ kit }, verdict) => verdictJson(kit, verdict),
      screen: ({ kit }, verdict, options) => verdictText(kit, verdict, options),
    },
    code: ({ kind }) => (kind === 'refused' ? exitCodes.noPlan : exitCodes.plan),
  });

async function readAll(paths: VerifyPaths, flags: VerifyFlags) {
  const inputs = await readInputs(paths.board, paths.catalogue, flags);
  const plan = planIn(await namedFile(paths.plan));
  const proof = await readProof(flags.proof);
  if (inputs.kind === 'read' && plan.kind === 'read' && proof.kind === 'read')
    return read({ kit: inputs.value, claim: { plan: plan.value, proof: proof.value } }, inputs.notes ?? []);
  return { kind: 'faulty', files: [inputs, plan, proof].filter((each) => each.kind === 'faulty') } as const;
}

const read = <Input>(value: Input, notes: readonly string[]): Extract<Read<Input>, { kind: 'read' }> => ({
  kind: 'read',
  value,
  notes,
});

async function readProof(path: string): Promise<ReadResult<Proof>> {
  const read = jsonIn(await namedFile(path, mostProofBytes));
  if (read.kind === 'faulty') return read;
  const { value, faultAt } = read.value;
  const parsed = parseProof(value);
  if (parsed.kind === 'proof') return { kind: 'read', value: parsed.proof };
  const faults: readonly InputFault[] = parsed.faults
    .slice(0, mostFaults)
    .map(({ path: at, ...words }) => faultAt(at, words));
  return { kind: 'faulty', faults, more: parsed.faults.length - faults.length };
}

/** A check that lasts says how far it has come. */
function checkedAloud(check: (onProgress: VerifyProgress) => Verdict): Verdict {
  let [at, of] = [0, 0];
  const line = statusLine((seconds) => `Checking the proof, ${seconds} s: case ${at} of ${of} at the most.`);
  try {
    return check((looked, all) => {
      [at, of] = [looked, all];
      line.tick();
    });
  } finally {
    line.end();
  }
}
