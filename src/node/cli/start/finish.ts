import type { InputKind } from '../../../domain/finding.js';
import { withAdditions, type Addition } from '../../../reading/drafts/close-draft.js';
import { entryLines, isWhole } from '../../../reading/drafts/entry.js';
import { schemaFile } from '../../../reading/drafts/new-files.js';
import { namedFile, readText } from '../../disk/file-text.js';
import { faultText } from '../../../reading/faults/input-fault.js';
import { faultsAlone } from '../../../reading/sheet/faults-alone.js';
import { readSheet } from '../../../reading/sheet/read-sheet.js';
import { jsonSchemaText } from '../../../report/json/schemas.js';
import { besideOf, writeWhole } from '../../disk/write-file.js';
import { exitCodes, type ExitCode } from '../exit-codes.js';
import { tell } from '../printed/tell.js';
import { Cancelled, type Asker } from './asker.js';
import type { Conversation } from './tell.js';

/** Where the result goes: no path is standard output. */
export type Target = { readonly path: string | undefined; readonly kind: InputKind };

/** Writes what a conversation has brought. Nothing of it is lost: what cannot be written is printed. */
export async function finish(asker: Asker, told: Conversation, { path, kind }: Target): Promise<ExitCode> {
  const { additions, newFile, wasStopped } = told;
  if (additions.length === 0) {
    tell('Nothing was written.');
    return exitCodes.plan;
  }
  const hasSchema = newFile !== null && path !== undefined && !wasStopped && (await putSchemaBeside(asker, path, kind));
  const text = newFile === null ? await presentText(path) : newFile(hasSchema);
  const result = text === null ? null : withAdditions(text, additions);
  if (result === null) {
    tell(`Nothing can be added to ${path ?? 'this file'} as it is written. This is what was to go into it:`);
    process.stdout.write(
      additions
        .flatMap(({ entry }) => entryLines(entry))
        .map(endedLine)
        .join(''),
    );
    return exitCodes.input;
  }
  for (const entry of result.untold) tell('Not in the file, which has no comments:', ...entryLines(entry));
  if (path !== undefined) return writeTo(path, kind, { text: result.text, isNew: newFile !== null, additions });
  process.stdout.write(result.text);
  return exitCodes.plan;
}

const endedLine = (line: string): string => `${line}\n`;

async function writeTo(
  path: string,
  kind: InputKind,
  {
    text,
    isNew,
    additions,
  }: { readonly text: string; readonly isNew: boolean; readonly additions: readonly Addition[] },
): Promise<ExitCode> {
  const obstacle = await writeWhole(path, text, { overwrite: !isNew });
  if (obstacle === null) {
    await tellOutcome(path, kind, additions);
    return exitCodes.plan;
  }
  tell(`${path}: ${obstacle.message} ${obstacle.remedy} This is what was to be in it:`);
  process.stdout.write(text);
  return exitCodes.input;
}

/** Read again, since it may have changed while somebody was reading labels. */
async function presentText(path: string | undefined): Promise<string | null> {
  const read = path === undefined ? null : await readText(path);
  return read?.kind === 'text' ? read.text : null;
}

async function putSchemaBeside(asker: Asker, path: string, kind: InputKind): Promise<boolean> {
  const file = schemaFile(kind);
  asker.say(`With ${file} beside it, editors complete and check the file. boardfeed itself does not need it.`);
  try {
    if (!(await asker.confirm(`Shall ${file} be written as well?`, true))) return false;
  } catch (error) {
    if (error instanceof Cancelled) return false;
    throw error;
  }
  const obstacle = await writeWhole(besideOf(path, file), jsonSchemaText(kind), { overwrite: true });
  if (obstacle !== null) tell(`${file}: ${obstacle.message} It was not written.`);
  return obstacle === null;
}

async function tellOutcome(path: string, kind: InputKind, additions: readonly Addition[]): Promise<void> {
  const whole = additions.filter(({ entry }) => isWhole(entry)).length;
  const open = additions.filter(({ entry }) => !isWhole(entry)).map(({ entry }) => entry.name);
  tell(`${path}: ${whole} added.`);
  if (open.length > 0)
    tell(`Left out of plans until more is known: ${open.join(', ')}. The file says what to look for.`);
  const faults = faultsAlone(readSheet(kind, await namedFile(path)))?.faults ?? [];
  if (faults.length > 0) tell('Before it can be used:', ...faults.map(faultText));
  else tell(kind === 'board' ? `Next: boardfeed choose ${path} CATALOGUE` : `Next: boardfeed choose BOARD ${path}`);
}
