import type { Kit } from '../../domain/kit.js';
import { escapedText } from '../../domain/shown-text.js';
import { typedPedal } from '../../reading/typed/pedal-words.js';
import { readInputs } from '../disk/read-inputs.js';
import { freeId } from '../../planning/spare/extra-pedal.js';
import type { SearchOptions } from '../../planning/asking/search-options.js';
import type { NoBasis } from '../../planning/spare/spare.js';
import { addedJson, spareJson } from '../../report/json/spare-json.js';
import { addedText, noBasisText, spareText } from '../../report/screen/spare-screen.js';
import { addPedal, spare } from '../threads/planning.js';
import { exitCodeOf, exitCodes, type ExitCode } from './exit-codes.js';
import { patience } from './patience.js';
import { printFaults } from './print-faults.js';
import { screenOf } from './screen-of.js';
import { searchAloud, type Aloud } from './search-aloud.js';

export type SpareFlags = {
  readonly json: boolean;
  /** One more pedal in words, such as "9 V, 300 mA, digital". */
  readonly add?: string;
  /** In seconds; no limit when left out. */
  readonly time?: number;
};

type Search = (aloud: Aloud) => SearchOptions;

/** Reads the files, works out what there is to spare or whether one more pedal fits, prints, and returns the exit code. */
export async function runSpare(
  boardPath: string,
  cataloguePath: string | undefined,
  flags: SpareFlags,
): Promise<ExitCode> {
  const remainingMs = patience(flags.time);
  const read = await readInputs(boardPath, cataloguePath ?? null);
  if (read.kind === 'faulty') {
    printFaults(read);
    return exitCodes.input;
  }
  const search: Search = (aloud) => ({ remainingMs, ...aloud });
  return flags.add === undefined
    ? tellSpare(read.value, flags, search)
    : tellAdded(read.value, flags.add, flags, search);
}

async function tellSpare(kit: Kit, { json }: SpareFlags, search: Search): Promise<ExitCode> {
  const found = await searchAloud(kit.board.currency, (aloud) => spare(kit, search(aloud)));
  process.stdout.write(
    json ? spareJson(kit.board, found) : spareText(kit, found, screenOf(process.stdout, process.env)),
  );
  if (found.kind !== 'spare') return exitCodeFor(found);
  return found.whole ? exitCodes.plan : exitCodes.stopped;
}

async function tellAdded(kit: Kit, text: string, { json }: SpareFlags, search: Search): Promise<ExitCode> {
  const typed = typedPedal(text, freeId(kit.board, 'new-pedal'));
  if (typed.kind === 'unclear') {
    process.stderr.write(typed.faults.map((fault) => `${escapedText(`--add: ${fault}`)}\n`).join(''));
    return exitCodes.input;
  }
  const found = await searchAloud(kit.board.currency, (aloud) => addPedal(kit, typed.pedal, search(aloud)));
  const screen = screenOf(process.stdout, process.env);
  const shown = (): string => (found.kind === 'added' ? addedText(found, screen) : noBasisText(kit, found, screen));
  process.stdout.write(json ? addedJson(kit.board, found) : shown());
  return found.kind === 'added' ? exitCodeOf(found.answer) : exitCodeFor(found);
}

const exitCodeFor = ({ kind }: NoBasis): ExitCode => (kind === 'stopped' ? exitCodes.stopped : exitCodes.noPlan);
