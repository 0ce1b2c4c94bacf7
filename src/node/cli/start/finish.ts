import type { InputKind } from '../../../domain/finding.js';
import { withAdditions } from '../../../reading/drafts/close-draft.js';
import { entryLines, isWhole } from '../../../reading/drafts/entry.js';
import { draftIn } from '../../../reading/drafts/opened-draft.js';
import { openWords } from '../../../reading/drafts/pedal-draft.js';
import { listed } from '../../../domain/shown-text.js';
import { openPedals } from '../../../reading/drafts/open-pedals.js';
import { withSection } from '../../../reading/drafts/section.js';
import { withKeys } from '../../../reading/drafts/set-keys.js';
import { flowText } from '../../../reading/text/yaml-text.js';
import { namedFile, readText } from '../../disk/file-text.js';
import { faultText } from '../../../reading/faults/input-fault.js';
import { faultsAlone } from '../../../reading/sheet/faults-alone.js';
import { readSheet } from '../../../reading/sheet/read-sheet.js';
import { writeWhole } from '../../disk/write-file.js';
import { exitCodes, type ExitCode } from '../exit-codes.js';
import { tell } from '../printed/tell.js';
import type { Conversation } from './tell.js';

/** Where the result goes: no path is standard output. */
export type Target = { readonly path: string | undefined; readonly kind: InputKind };

/** Writes what a conversation has brought. Nothing of it is lost: what cannot be written is printed. */
export async function finish(told: Conversation, { path, kind }: Target): Promise<ExitCode> {
  const { additions, newFile, read, sections } = told;
  if (additions.length === 0 && read.length === 0 && sections.length === 0) {
    tell('Nothing was written.');
    return exitCodes.plan;
  }
  const text = newFile ?? (await presentText(path));
  const result = text === null ? null : withAll(text, told);
  if (result === null) {
    tell(`Nothing can be added to ${path ?? 'this file'} as it is written. This is what was to go into it:`);
    const lines = [
      ...read.map(({ index, values }) => `# pedal ${index + 1}: ${flowText(values)}`),
      ...additions.flatMap(({ entry }) => entryLines(entry)),
      ...sections.flatMap(({ lines: section }) => section),
    ];
    process.stdout.write(lines.map(endedLine).join(''));
    return exitCodes.input;
  }
  for (const entry of result.untold) tell('Not in the file, which has no comments:', ...entryLines(entry));
  if (path !== undefined) return writeTo(path, kind, { text: result.text, told });
  process.stdout.write(result.text);
  return exitCodes.plan;
}

/** The text with what has become known of the pedals in it, and with what is new. */
function withAll(text: string, { read, additions, sections }: Conversation) {
  let current: string | null = text;
  for (const { index, values } of read)
    current = current === null ? null : withKeys(current, { list: 'pedals', index }, values);
  const added = current === null ? null : withAdditions(current, additions);
  current = added?.text ?? null;
  for (const section of sections) current = current === null ? null : withSection(current, section);
  return added === null || current === null ? null : { text: current, untold: added.untold };
}

const endedLine = (line: string): string => `${line}\n`;

async function writeTo(
  path: string,
  kind: InputKind,
  { text, told }: { readonly text: string; readonly told: Conversation },
): Promise<ExitCode> {
  const obstacle = await writeWhole(path, text, { overwrite: told.newFile === null });
  if (obstacle === null) {
    await tellOutcome(path, kind, told);
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

async function tellOutcome(path: string, kind: InputKind, { additions, read, sections }: Conversation): Promise<void> {
  const whole = additions.filter(({ entry }) => isWhole(entry)).length;
  const leftOut = additions.filter(({ entry }) => !isWhole(entry)).map(({ entry }) => entry.name);
  tell(`${path}: ${whole} added${read.length === 0 ? '' : `, ${read.length} read`}.`);
  if (leftOut.length > 0)
    tell(`Left out of plans until more is known: ${leftOut.join(', ')}. The file says what to look for.`);
  const named = await namedFile(path);
  const opened = draftIn(kind, named);
  const open = opened.kind === 'read' && opened.value !== null ? openPedals(opened.value.data) : [];
  for (const { name, unknown } of open)
    tell(
      `To be read: ${name}: ${listed(
        unknown.map((key) => openWords[key]),
        'and',
      )}.`,
    );
  if (open.length > 0) tell(`Once you have: boardfeed start ${path}`);
  const faults = faultsAlone(readSheet(kind, named))?.faults ?? [];
  if (faults.length > 0) tell('Before it can be used:', ...faults.map(faultText));
  else if (sections.some(({ key }) => key === 'wiring')) tell(`Next: boardfeed rewire ${path}`);
  else tell(kind === 'board' ? `Next: boardfeed choose ${path} CATALOGUE` : `Next: boardfeed choose BOARD ${path}`);
}
