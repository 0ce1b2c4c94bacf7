import { stat } from 'node:fs/promises';

import type { Source } from '../../domain/finding.js';
import { collectedFaults } from '../../reading/faults/collect-faults.js';
import { isCsvName } from '../../reading/csv/read-csv.js';
import { readText } from './file-text.js';
import { faultsAlone } from '../../reading/faults/faults-alone.js';
import type { InputFault, ReadResult } from '../../reading/faults/input-fault.js';
import { plainData } from '../../reading/text/located-tree.js';
import { readSheet } from '../../reading/read-sheet.js';
import { obstacleTo } from './write-file.js';

type Data = Readonly<Record<string, unknown>>;

/** A file that entries are to be added to: null when there is none yet. */
export type OpenedDraft = { readonly text: string; readonly data: Data } | null;

/** Looks at the file that is to be written or extended: what stands in the way is told before anybody is asked anything. */
export async function openDraft(path: string, source: Source): Promise<ReadResult<OpenedDraft>> {
  const at = { file: path, line: 1, column: 1, key: '' };
  const isThere = await stat(path).then(
    () => true,
    () => false,
  );
  if (isCsvName(path)) {
    const words = {
      message: 'nothing is added to a table here.',
      remedy: 'Make a file in YAML of it with boardfeed convert.',
    };
    return { kind: 'faulty', faults: [{ ...at, ...words }], more: 0 };
  }
  const obstacle = await obstacleTo(path, { overwrite: true });
  if (obstacle !== null) return { kind: 'faulty', faults: [{ ...at, ...obstacle }], more: 0 };
  if (!isThere) return { kind: 'read', value: null };
  const text = await readText(path);
  const sheet = readSheet(source, { file: path, text });
  if (sheet.tree !== null && text.kind === 'text')
    return { kind: 'read', value: { text: text.text, data: plainData(sheet.tree.root) as Data } };
  const faults = collectedFaults(sheet, null, []);
  if (faults === null) throw new Error('a file was refused without a fault');
  return { kind: 'faulty', ...faults };
}

/** What is still wrong with the file that was written. */
export async function faultsIn(path: string, source: Source): Promise<readonly InputFault[]> {
  const text = await readText(path);
  return faultsAlone(readSheet(source, { file: path, text }))?.faults ?? [];
}
