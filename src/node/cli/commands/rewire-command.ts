import { resolveWishes } from '../../../planning/rewire/rewire-request.js';
import { answerJson } from '../../../report/json/plan-codec.js';
import { answerText } from '../../../report/screen/terminal.js';
import { rewire } from '../../threads/planning.js';
import { exitCodeOf, type ExitCode } from '../exit-codes.js';
import { patience } from '../patience.js';
import { carryOut, refused } from '../pipeline.js';
import { searchAloud } from '../progress/aloud.js';
import { aboutBoard, type BoardFiles } from './board-question.js';
import { planFiles, type PlanFlags } from './plan-files.js';

type RewireFlags = PlanFlags & {
  /** Ids of pedals that must stay where they are. */
  readonly keep: readonly string[];
  readonly buy: 'allow' | 'never';
  /** In the major units of the board's currency; the board's own budget when left out. */
  readonly budget?: number;
};

/** Plans how to re-plug the board, and returns the exit code. */
export async function runRewire(files: BoardFiles, flags: RewireFlags): Promise<ExitCode> {
  const remainingMs = patience(flags.time);
  const { partial, record: recorded } = flags;
  const proof = flags.proof !== undefined;
  return carryOut({
    ...aboutBoard(files, flags),
    ask: ({ board }) => {
      const resolved = resolveWishes(board, flags);
      return resolved.kind === 'faulty'
        ? refused(files[0], resolved.faults)
        : { kind: 'asked', value: resolved.wishes };
    },
    files: planFiles(files, flags, remainingMs),
    call: async (kit, wishes) =>
      searchAloud(kit.board, (aloud) => rewire(kit, { ...wishes, partial, proof, remainingMs, ...aloud })),
    print: { json: answerJson, screen: (kit, answer, options) => answerText(kit, answer, { ...options, recorded }) },
    code: exitCodeOf,
  });
}
