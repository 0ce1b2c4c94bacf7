import type { ChoosingAim } from '../../../domain/aim.js';
import { answerJson } from '../../../report/json/plan-codec.js';
import { wantedJson } from '../../../report/json/wanted-codec.js';
import { answerText } from '../../../report/screen/terminal.js';
import { wantedText } from '../../../report/screen/wanted-screen.js';
import { chooseOrSeek } from '../../threads/planning.js';
import { exitCodeOf, type ExitCode } from '../exit-codes.js';
import { patience } from '../patience.js';
import { carryOut, nothingAsked } from '../pipeline.js';
import { searchAloud } from '../progress/aloud.js';
import { aboutBoard, type BoardFiles } from './board-question.js';
import { planFiles, type PlanFlags } from './plan-files.js';

type ChooseFlags = PlanFlags & { readonly aim: ChoosingAim };

/** Chooses, or says what to look for where there is no catalogue, and returns the exit code. */
export async function runChoose(files: BoardFiles, flags: ChooseFlags): Promise<ExitCode> {
  const remainingMs = patience(flags.time);
  const { aim, partial } = flags;
  const proof = flags.proof !== undefined;
  return carryOut({
    ...aboutBoard(files, flags),
    ask: nothingAsked,
    files: planFiles(files, flags, remainingMs),
    call: async (kit) =>
      searchAloud(kit.board, (aloud) => chooseOrSeek(kit, { aim, partial, proof, remainingMs, ...aloud })),
    print: {
      json: (kit, answer) => (answer.kind === 'wanted' ? wantedJson(answer) : answerJson(kit, answer)),
      screen: (kit, answer, options) =>
        answer.kind === 'wanted' ? wantedText(answer, options) : answerText(kit, answer, options),
    },
    code: exitCodeOf,
  });
}
