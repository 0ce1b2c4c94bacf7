import type { InputKind } from '../../../domain/finding.js';
import { withAdditions } from '../../../reading/drafts/close-draft.js';
import { entryLines } from '../../../reading/drafts/entry.js';
import { withSection } from '../../../reading/drafts/section.js';
import { withKeys } from '../../../reading/drafts/set-keys.js';
import { withValue } from '../../../reading/drafts/set-value.js';
import { flowText } from '../../../reading/text/yaml-text.js';
import { readText } from '../../disk/file-text.js';
import { writeWhole } from '../../disk/write-file.js';
import { exitCodes, type ExitCode } from '../exit-codes.js';
import { tell } from '../printed/tell.js';
import { wordsText } from '../written/aloud.js';
import { tellOutcome } from './outcome.js';
import type { Conversation } from './tell.js';

/** Where the result goes: no path is standard output. */
export type Target = { readonly path: string | undefined; readonly kind: InputKind };

/** How a conversation ended, and whether the file that it has brought can be chosen for. */
type Finished = { readonly code: ExitCode; readonly canChoose: boolean };

/** Writes what a conversation has brought. Nothing of it is lost: what cannot be written is printed. */
export async function finish(told: Conversation, { path, kind }: Target): Promise<Finished> {
  const { additions, newFile, read, values, sections } = told;
  if ([...additions, ...read, ...values, ...sections].length === 0) {
    tell('Nothing was written.');
    return ending(exitCodes.plan);
  }
  const text = newFile ?? (await presentText(path));
  const result = text === null ? null : withAll(text, told);
  if (result === null) {
    tell(`Nothing can be added to ${path ?? 'this file'} as it is written. This is what was to go into it:`);
    const lines = [
      ...read.map((one) => `# pedal ${one.index + 1}: ${flowText(one.values)}`),
      ...values.map(({ path: keys, value }) => `# ${keys.join(' ')}: ${flowText(value)}`),
      ...additions.flatMap(({ entry }) => entryLines(entry)),
      ...sections.flatMap(({ lines: section }) => section),
    ];
    process.stdout.write(lines.map(endedLine).join(''));
    return ending(exitCodes.input);
  }
  for (const entry of result.untold) tell('Not in the file, which has no comments:', ...entryLines(entry));
  if (path !== undefined) return writeTo(path, kind, { text: result.text, told });
  process.stdout.write(result.text);
  return ending(exitCodes.plan);
}

const ending = (code: ExitCode, canChoose = false): Finished => ({ code, canChoose });

/** The text with what has become known of the pedals in it, and with what is new. */
function withAll(text: string, { read, additions, values, sections }: Conversation) {
  let current: string | null = text;
  for (const one of read)
    current = current === null ? null : withKeys(current, { list: 'pedals', index: one.index }, one.values);
  for (const { path, value } of values) current = current === null ? null : withValue(current, path, value);
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
): Promise<Finished> {
  const obstacle = await writeWhole(path, text, { overwrite: told.newFile === null });
  if (obstacle === null) return ending(exitCodes.plan, await tellOutcome(path, kind, told));
  tell(`${path}: ${wordsText(obstacle)} This is what was to be in it:`);
  process.stdout.write(text);
  return ending(exitCodes.input);
}

/** Read again, since it may have changed while somebody was reading labels. */
async function presentText(path: string | undefined): Promise<string | null> {
  const read = path === undefined ? null : await readText(path);
  return read?.kind === 'text' ? read.text : null;
}
