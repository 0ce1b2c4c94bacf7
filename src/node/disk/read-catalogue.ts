import type { Catalogue } from '../../domain/board.js';
import { resolveInputs } from '../../reading/resolve/resolve-inputs.js';
import { collectedFaults } from '../../reading/faults/collect-faults.js';
import { readText } from './file-text.js';
import type { ReadResult } from '../../reading/faults/input-fault.js';
import { readSheet } from '../../reading/read-sheet.js';

/** A catalogue by itself, with the text that it was read from. */
export type CatalogueFile = { readonly catalogue: Catalogue; readonly text: string };

/** Reads a catalogue that is to be used with boards that are not known yet. What the file system refuses is a fault, too. */
export async function readCatalogue(file: string): Promise<ReadResult<CatalogueFile>> {
  const text = await readText(file);
  const sheet = readSheet('catalogue', { file, text });
  const { catalogue, findings } = resolveInputs({ board: null, catalogue: sheet.sheet });
  const faults = collectedFaults(sheet, null, findings);
  if (faults !== null) return { kind: 'faulty', ...faults };
  if (catalogue === null || text.kind !== 'text') throw new Error('a catalogue was refused without a fault');
  return { kind: 'read', value: { catalogue, text: text.text } };
}
