import type { InputKind } from '../../domain/finding.js';
import { isCsvName } from '../csv/read-csv.js';
import type { InputFault, ReadResult } from '../faults/input-fault.js';
import { collectedFaults } from '../sheet/collect-faults.js';
import { readSheet } from '../sheet/read-sheet.js';
import type { Data } from '../text/data.js';
import type { NamedFile } from '../text/file-text.js';
import { plainData } from '../text/located-tree.js';

/** A file that entries are to be added to: null when there is none yet. */
export type OpenedDraft = { readonly text: string; readonly data: Data } | null;

/** What there is to say against adding to a file of that name; null when nothing is. */
export const unfitName = (file: string): InputFault | null =>
  isCsvName(file)
    ? {
        file,
        line: 1,
        column: 1,
        key: '',
        message: 'nothing is added to a table here.',
        remedy: 'Make a file in YAML of it with boardfeed convert.',
      }
    : null;

/** A file that is there, as far as it can be added to. */
export function draftIn(source: InputKind, named: NamedFile): ReadResult<OpenedDraft> {
  const { text } = named;
  const sheet = readSheet(source, named);
  if (sheet.tree !== null && text.kind === 'text')
    return { kind: 'read', value: { text: text.text, data: plainData(sheet.tree.root) as Data } };
  const faults = collectedFaults(sheet, null, []);
  if (faults === null) throw new Error('a file was refused without a fault');
  return { kind: 'faulty', ...faults };
}
