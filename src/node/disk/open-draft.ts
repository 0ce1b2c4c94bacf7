import type { InputKind } from '../../domain/finding.js';
import { draftIn, unfitName, type OpenedDraft } from '../../reading/drafts/opened-draft.js';
import type { InputFault, ReadResult } from '../../reading/faults/input-fault.js';
import { fileAt } from './file-at.js';
import { namedFile } from './file-text.js';
import { obstacleTo } from './write-file.js';

/** Looks at the file that is to be written or extended: what stands in the way is told before anybody is asked anything. */
export async function openDraft(path: string, source: InputKind): Promise<ReadResult<OpenedDraft>> {
  const isThere = (await fileAt(path)) !== null;
  const fault = unfitName(path) ?? (await obstacleFault(path));
  if (fault !== null) return { kind: 'faulty', faults: [fault], more: 0 };
  return isThere ? draftIn(source, await namedFile(path)) : { kind: 'read', value: null };
}

async function obstacleFault(path: string): Promise<InputFault | null> {
  const obstacle = await obstacleTo(path, { overwrite: true });
  return obstacle === null ? null : { file: path, line: 1, column: 1, key: '', ...obstacle };
}
