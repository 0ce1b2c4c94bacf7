import type { Board } from '../../domain/board.js';
import { readInputs } from '../disk/read-inputs.js';
import type { Inputs } from '../../reading/inputs-from-text.js';
import { readPlan, type PlanFile } from '../disk/read-plan.js';
import { readJson } from '../disk/json-file.js';
import type { InputFault, ReadResult } from '../../reading/faults/input-fault.js';
import { auditWiring } from '../../audit/audit-wiring.js';
import type { Proof } from '../../domain/proof.js';
import { parseProof } from '../../proof/proof-schema.js';
import { verifyImpossible, verifyProof, type VerifyProgress } from '../../proof/verify-proof.js';
import { verdictJson, verdictText, type Verdict } from '../../report/screen/verdict.js';
import { exitCodes, type ExitCode } from './exit-codes.js';
import { printFaults } from './print-faults.js';
import { screenOf } from './screen-of.js';
import { statusLine } from './status-line.js';

export type VerifyFlags = {
  /** The file that holds the proof. */
  readonly proof: string;
  readonly json: boolean;
};

export type VerifyPaths = { readonly board: string; readonly catalogue: string; readonly plan: string };

/** Proofs of large boards are longer than what people write. */
const mostProofBytes = 200_000_000;
const mostFaults = 20;

/** Reads all files, checks the plan by the rules and the proof by arithmetic, prints, and returns the exit code. */
export async function runVerify(paths: VerifyPaths, flags: VerifyFlags): Promise<ExitCode> {
  const inputs = await readInputs(paths.board, paths.catalogue);
  const plan = await readPlan(paths.plan);
  const proof = await readProof(flags.proof);
  if (inputs.kind === 'faulty' || plan.kind === 'faulty' || proof.kind === 'faulty') {
    for (const read of [inputs, plan, proof]) if (read.kind === 'faulty') printFaults(read);
    return exitCodes.input;
  }
  const kit = inputs.value;
  const verdict = checkedAloud((onProgress) => verdictOn(kit, plan.value, proof.value, onProgress));
  process.stdout.write(
    flags.json ? verdictJson(kit.board, verdict) : verdictText(kit, verdict, screenOf(process.stdout, process.env)),
  );
  return verdict.kind === 'refused' ? exitCodes.noPlan : exitCodes.plan;
}

async function readProof(path: string): Promise<ReadResult<Proof>> {
  const read = await readJson(path, mostProofBytes);
  if (read.kind === 'faulty') return read;
  const { value, faultAt } = read.value;
  const parsed = parseProof(value);
  if (parsed.kind === 'proof') return { kind: 'read', value: parsed.proof };
  const faults: readonly InputFault[] = parsed.faults
    .slice(0, mostFaults)
    .map((fault) =>
      faultAt(fault.path, { message: `${fault.message}.`, remedy: 'Give the file as boardfeed wrote it.' }),
    );
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

function verdictOn({ board, catalogue }: Inputs, plan: PlanFile, proof: Proof, onProgress: VerifyProgress): Verdict {
  const misfits = misfitsOf(board, plan, proof);
  if (misfits.length > 0) return { kind: 'refused', what: 'proof', reasons: misfits };
  if (plan.status === 'impossible') {
    const shown = verifyImpossible(board, catalogue, proof, onProgress);
    return shown.kind === 'holds'
      ? { kind: 'impossible', unpowered: shown.unpowered, cases: shown.cases }
      : { kind: 'refused', what: 'proof', reasons: [shown.reason] };
  }
  const errors = auditWiring(board, catalogue, plan.wiring, { partial: proof.partial });
  if (errors.length > 0) return { kind: 'refused', what: 'plan', reasons: errors.map(({ message }) => message) };
  // The audit has found the score to be that of the feeds.
  const shown = verifyProof(board, catalogue, proof, plan.wiring.score, onProgress);
  return shown.kind === 'holds'
    ? { kind: 'proven', aim: proof.aim, tiers: shown.tiers, cases: shown.cases }
    : { kind: 'refused', what: 'proof', reasons: [shown.reason] };
}

/** What the files say of one another. */
function misfitsOf(board: Board, plan: PlanFile, proof: Proof): readonly string[] {
  const isImpossible = proof.impossible === true;
  const leavesOut = plan.status !== 'impossible' && plan.wiring.unpowered.length > 0;
  return [
    ...(leavesOut && !proof.partial
      ? ['the plan leaves pedals without power, and the proof is about plans that power them all']
      : []),
    ...(plan.board === board.name ? [] : [`the plan is for the board "${plan.board}", not "${board.name}"`]),
    ...(plan.currency.code === board.currency.code
      ? []
      : [`the plan counts in ${plan.currency.code}, the board in ${board.currency.code}`]),
    ...(plan.aim === proof.aim ? [] : [`the plan's aim is ${plan.aim}, the proof's ${proof.aim}`]),
    ...((plan.status === 'impossible') === isImpossible
      ? []
      : [
          isImpossible
            ? 'the proof says that no plan exists, and here is one'
            : 'the file says that no plan exists, and the proof is about a plan',
        ]),
  ];
}
