import { freeId } from '../../../planning/spare/extra-pedal.js';
import type { NoBasis } from '../../../planning/spare/spare.js';
import { typedPedal } from '../../../reading/typed/typed-pedal.js';
import { addedJson, spareJson } from '../../../report/json/spare-codec.js';
import { addedText, noBasisText, spareText } from '../../../report/screen/spare-screen.js';
import { spareReports } from '../../../report/spare-formats.js';
import type { ReadingOptions } from '../../../reading/sheet/without-bad-rows.js';
import { readInputs } from '../../disk/read-inputs.js';
import { addPedal, spare } from '../../threads/planning.js';
import { exitCodeOf, exitCodes, type ExitCode } from '../exit-codes.js';
import { patience } from '../patience.js';
import { carryOut, nothingAsked, readOne, refused } from '../pipeline.js';
import { searchAloud } from '../progress/aloud.js';
import { filesOf } from '../written/report-files.js';

export type SpareFlags = ReadingOptions & {
  readonly json: boolean;
  /** One more pedal in words, such as "9 V, 300 mA, digital". */
  readonly add?: string;
  /** In seconds; no limit when left out. */
  readonly time?: number;
  /** The files to write reports to; none beside `add`. */
  readonly report: readonly string[];
  /** Whether files of reports may be replaced. */
  readonly force?: boolean;
};

/** Works out what there is to spare, or whether one more pedal fits, and returns the exit code. */
export async function runSpare(
  boardPath: string,
  cataloguePath: string | undefined,
  flags: SpareFlags,
): Promise<ExitCode> {
  const { json, add, time } = flags;
  const remainingMs = patience(time);
  const inputs = cataloguePath === undefined ? [boardPath] : [boardPath, cataloguePath];
  const read = async () => readOne(readInputs(boardPath, cataloguePath ?? null, flags));
  if (add === undefined)
    return carryOut({
      read,
      ask: nothingAsked,
      files: filesOf(flags.report, spareReports, inputs, { force: flags.force ?? false }),
      call: async (kit) => searchAloud(kit.board, (aloud) => spare(kit, { remainingMs, ...aloud })),
      json,
      print: {
        json: spareJson,
        screen: (kit, found, _, options) => spareText(kit, found, options),
      },
      code: (found) => {
        if (found.kind !== 'spare') return codeWithout(found);
        return found.whole ? exitCodes.plan : exitCodes.stopped;
      },
    });
  return carryOut({
    read,
    ask: ({ board }) => {
      const typed = typedPedal(add, freeId(board, 'new-pedal'));
      return typed.kind === 'unclear' ? refused('--add', typed.faults) : { kind: 'asked', value: typed.pedal };
    },
    call: async (kit, pedal) => searchAloud(kit.board, (aloud) => addPedal(kit, pedal, { remainingMs, ...aloud })),
    json,
    print: {
      json: addedJson,
      screen: (kit, found, _, options) =>
        found.kind === 'added' ? addedText(found, options) : noBasisText(kit, found, options),
    },
    code: (found) => (found.kind === 'added' ? exitCodeOf(found.answer) : codeWithout(found)),
  });
}

const codeWithout = ({ kind }: NoBasis): ExitCode => (kind === 'stopped' ? exitCodes.stopped : exitCodes.noPlan);
