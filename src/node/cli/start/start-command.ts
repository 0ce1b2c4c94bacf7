import { parse } from 'node:path';

import { unfitName } from '../../../reading/drafts/opened-draft.js';
import { openDraft } from '../../disk/open-draft.js';
import { boardTemplate, catalogueTemplate } from '../../../reading/drafts/templates.js';
import { exitCodes, type ExitCode } from '../exit-codes.js';
import { tell } from '../printed/tell.js';
import { printFaults } from '../printed/print-faults.js';
import { wordsText, writeAloud } from '../written/aloud.js';
import { columnsOf, screenOf } from '../printed/screen-of.js';
import type { Asker } from './asker.js';
import { clackAsker } from './clack-asker.js';
import { finish } from './finish.js';
import { offerToChoose } from './go-on.js';
import { signsFor, type Signs } from './label-help.js';
import { tellBoard, tellCatalogue } from './tell.js';

export type StartFlags = { readonly catalogue: boolean };

const usualBoard = 'board.yaml';

/** Asks for a board or a catalogue on the terminal, and writes it; without a terminal writes or prints one to fill in. */
export async function runStart(path: string | undefined, flags: StartFlags): Promise<ExitCode> {
  const { stdin, stdout, stderr, env } = process;
  if (!stdin.isTTY || !stderr.isTTY) return giveTemplate(path, flags);
  const asker = clackAsker({ input: stdin, output: stderr, width: columnsOf(stderr) });
  return startWith(asker, signsFor(screenOf(stderr, env).unicode ?? true), fileFor(path, flags, stdout.isTTY), flags);
}

/** The file of that path; where none is named and what is printed would only pass by on a screen, one with the usual name. */
export function fileFor(path: string | undefined, { catalogue }: StartFlags, isOnScreen: boolean): string | undefined {
  return path ?? (isOnScreen ? (catalogue ? 'shop.yaml' : usualBoard) : undefined);
}

/** Where nobody can be asked. A file that is there stays as it is. */
async function giveTemplate(path: string | undefined, { catalogue }: StartFlags): Promise<ExitCode> {
  const template = catalogue ? catalogueTemplate : boardTemplate;
  if (path === undefined) {
    process.stdout.write(template);
    return exitCodes.plan;
  }
  const unfit = unfitName(path);
  const said = {
    done: `${path}: written to be filled in. On a terminal, start asks instead.`,
    lost: 'Without a terminal nothing can be asked, and so nothing be added.',
  };
  if (unfit !== null) tell(`${path}: ${wordsText(unfit)} ${said.lost}`);
  return unfit === null && (await writeAloud(path, template, false, said)) ? exitCodes.plan : exitCodes.input;
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
  if (path !== undefined && opened.value !== null) asker.say(`${path} is there already: what you tell is added to it.`);
  const told = catalogue
    ? await tellCatalogue(asker, signs, opened.value)
    : await tellBoard(asker, signs, opened.value, boardName(path));
  const { code, canChoose } = await finish(told, { path, kind });
  if (told.wasStopped) return code === exitCodes.plan ? exitCodes.stopped : code;
  if (canChoose && path !== undefined) await offerToChoose(asker, path);
  return code;
}

/** As its file is called, unless nobody has called that something of their own. */
const boardName = (path = usualBoard): string => (path === usualBoard ? 'My board' : parse(path).name);
