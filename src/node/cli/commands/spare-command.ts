import { freeId } from '../../../planning/spare/extra-pedal.js';
import type { NoBasis } from '../../../planning/spare/spare.js';
import { typedPedal } from '../../../reading/typed/typed-pedal.js';
import { addedJson, spareJson } from '../../../report/json/spare-codec.js';
import { addedText, noBasisText, spareText } from '../../../report/screen/spare-screen.js';
import { spareReports } from '../../../report/page-formats.js';
import { addPedal, spare } from '../../threads/planning.js';
import { exitCodeOf, exitCodes, type ExitCode } from '../exit-codes.js';
import { patience } from '../patience.js';
import { carryOut, nothingAsked, refused } from '../pipeline.js';
import { searchAloud } from '../progress/aloud.js';
import { aboutBoard, pageFiles, type BoardFiles, type ReportedFlags } from './board-question.js';

export type SpareFlags = ReportedFlags & {
  /** One more pedal in words, such as "moth delay 9v 300" or "9 V, 300 mA, digital"; there are no reports of that. */
  readonly add?: string;
};

/** Works out what there is to spare, or whether one more pedal fits, and returns the exit code. */
export async function runSpare(files: BoardFiles, flags: SpareFlags): Promise<ExitCode> {
  const { add, time } = flags;
  const remainingMs = patience(time);
  if (add === undefined)
    return carryOut({
      ...aboutBoard(files, flags),
      ask: nothingAsked,
      files: pageFiles(files, flags, spareReports),
      call: async (kit) => searchAloud(kit.board, (aloud) => spare(kit, { remainingMs, ...aloud })),
      print: { json: spareJson, screen: spareText },
      code: (found) => {
        if (found.kind !== 'spare') return codeWithout(found);
        return found.whole ? exitCodes.plan : exitCodes.stopped;
      },
    });
  return carryOut({
    ...aboutBoard(files, flags),
    ask: ({ board }) => {
      const taken = new Set<string>(board.pedals.map(({ id }) => id));
      const typed = typedPedal(add, freeId(board, 'new-pedal'), taken);
      return typed.kind === 'unclear' ? refused('--add', typed.faults) : { kind: 'asked', value: typed.pedal };
    },
    call: async (kit, pedal) => searchAloud(kit.board, (aloud) => addPedal(kit, pedal, { remainingMs, ...aloud })),
    print: {
      json: addedJson,
      screen: (kit, found, options) =>
        found.kind === 'added' ? addedText(found, options) : noBasisText(kit, found, options),
    },
    code: (found) => (found.kind === 'added' ? exitCodeOf(found.answer) : codeWithout(found)),
  });
}

const codeWithout = ({ kind }: NoBasis): ExitCode => (kind === 'stopped' ? exitCodes.stopped : exitCodes.noPlan);
