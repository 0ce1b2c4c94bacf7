import wrapAnsi from 'wrap-ansi';

import type { InputKind } from '../../../domain/finding.js';
import { listed } from '../../../domain/shown-text.js';
import { isWhole } from '../../../reading/drafts/entry.js';
import { openPedals } from '../../../reading/drafts/open-pedals.js';
import { draftIn } from '../../../reading/drafts/opened-draft.js';
import { openWords } from '../../../reading/drafts/pedal-draft.js';
import { faultsAlone } from '../../../reading/sheet/faults-alone.js';
import { readSheet } from '../../../reading/sheet/read-sheet.js';
import { namedFile } from '../../disk/file-text.js';
import { printFaults } from '../printed/print-faults.js';
import { columnsOf } from '../printed/screen-of.js';
import { tell } from '../printed/tell.js';
import type { Conversation } from './tell.js';

/** Tells what was written into a file, what is still to be read, and what to do next: whether that is to choose. */
export async function tellOutcome(
  path: string,
  kind: InputKind,
  { additions, read, sections }: Conversation,
): Promise<boolean> {
  const whole = additions.filter(({ entry }) => isWhole(entry)).length;
  const leftOut = additions.filter(({ entry }) => !isWhole(entry)).map(({ entry }) => entry.name);
  tell(`${path}: ${whole} added${read.length === 0 ? '' : `, ${read.length} read`}.`);
  if (leftOut.length > 0)
    tellWrapped(`Left out of plans until more is known: ${leftOut.join(', ')}. The file says what to look for.`);
  const named = await namedFile(path);
  const opened = draftIn(kind, named);
  const open = opened.kind === 'read' && opened.value !== null ? openPedals(opened.value.data) : [];
  for (const { name, unknown } of open) {
    const words = unknown.map((key) => openWords[key]);
    tellWrapped(`To be read: ${name}: ${listed(words, 'and')}.`);
  }
  if (open.length > 0) tell(`Once you have: boardfeed start ${path}`);
  const faulty = faultsAlone(readSheet(kind, named));
  if (faulty !== null) {
    tell('Before it can be used:');
    printFaults({ kind: 'faulty', ...faulty });
    return false;
  }
  if (sections.some(({ key }) => key === 'wiring')) {
    tell(`Next: boardfeed rewire ${path}`);
    return false;
  }
  tell(kind === 'board' ? `Next: boardfeed choose ${path} CATALOGUE` : `Next: boardfeed choose BOARD ${path}`);
  return kind === 'board';
}

const tellWrapped = (text: string): void => tell(...wrapAnsi(text, columnsOf(process.stderr)).split('\n'));
