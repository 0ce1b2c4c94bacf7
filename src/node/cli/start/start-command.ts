import { openDraft } from '../../disk/open-draft.js';
import { boardTemplate, catalogueTemplate } from '../../../reading/drafts/templates.js';
import { exitCodes, type ExitCode } from '../exit-codes.js';
import { printFaults } from '../printed/print-faults.js';
import { columnsOf, screenOf } from '../printed/screen-of.js';
import type { Asker } from './asker.js';
import { clackAsker } from './clack-asker.js';
import { finish } from './finish.js';
import { signsFor, type Signs } from './label-help.js';
import { tellBoard, tellCatalogue } from './tell.js';

export type StartFlags = { readonly catalogue: boolean };

/** Asks for a board or a catalogue on the terminal, and writes it; without a terminal prints one to fill in. */
export async function runStart(path: string | undefined, flags: StartFlags): Promise<ExitCode> {
  const { stdin, stderr, env } = process;
  if (!stdin.isTTY || !stderr.isTTY) {
    process.stdout.write(flags.catalogue ? catalogueTemplate : boardTemplate);
    return exitCodes.plan;
  }
  const asker = clackAsker({ input: stdin, output: stderr, width: columnsOf(stderr) });
  return startWith(asker, signsFor(screenOf(stderr, env).unicode ?? true), path, flags);
}

/** The same with whoever asks. */
export async function startWith(
  asker: Asker,
  signs: Signs,
  path: string | undefined,
  { catalogue }: StartFlags,
): Promise<ExitCode> {
  const kind = catalogue ? 'catalogue' : 'board';
  const opened = path === undefined ? ({ kind: 'read', value: null } as const) : await openDraft(path, kind);
  if (opened.kind === 'faulty') {
    printFaults(opened);
    return exitCodes.input;
  }
  const told = await (catalogue ? tellCatalogue : tellBoard)(asker, signs, opened.value);
  const ending = await finish(asker, told, { path, kind });
  return ending === exitCodes.plan && told.wasStopped ? exitCodes.stopped : ending;
}
