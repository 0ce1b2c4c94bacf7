import { labelsJson } from '../../../report/json/labels-codec.js';
import { labelsReports } from '../../../report/page-formats.js';
import { labelsText } from '../../../report/screen/labels-screen.js';
import { decisiveLabels } from '../../threads/planning.js';
import { exitCodes, type ExitCode } from '../exit-codes.js';
import { patience } from '../patience.js';
import { carryOut, nothingAsked } from '../pipeline.js';
import { searchAloud } from '../progress/aloud.js';
import { aboutBoard, pageFiles, type BoardFiles, type ReportedFlags } from './board-question.js';

/** Says which labels decide, and returns the exit code. */
export async function runAsk(files: BoardFiles, flags: ReportedFlags): Promise<ExitCode> {
  const remainingMs = patience(flags.time);
  return carryOut({
    ...aboutBoard(files, flags),
    ask: nothingAsked,
    files: pageFiles(files, flags, labelsReports),
    call: async (kit) => searchAloud(kit.board, (aloud) => decisiveLabels(kit, { remainingMs, ...aloud })),
    print: { json: labelsJson, screen: labelsText },
    code: (found) => {
      if (found.kind === 'labels') return found.whole ? exitCodes.plan : exitCodes.stopped;
      return found.kind === 'stopped' ? exitCodes.stopped : exitCodes.noPlan;
    },
  });
}
