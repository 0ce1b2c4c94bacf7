import type { Catalogue } from '../domain/board.js';
import { resolveInputs } from './resolve/resolve-inputs.js';
import { collectedFaults } from './sheet/collect-faults.js';
import type { NamedFile } from './text/file-text.js';
import type { ReadResult } from './faults/input-fault.js';
import { readUsable, readWith, type ReadingOptions } from './sheet/without-bad-rows.js';

/** A catalogue by itself, with the text that it was read from. */
export type CatalogueFile = { readonly catalogue: Catalogue; readonly text: string };

/** A catalogue that is to be used with boards that are not known yet. What the file system refused is a fault, too. */
export function catalogueIn(named: NamedFile, options: ReadingOptions = {}): ReadResult<CatalogueFile> {
  const { text } = named;
  const { sheet, notes } = readUsable('catalogue', named, options);
  const { catalogue, findings } = resolveInputs({ board: null, catalogue: sheet.sheet });
  const faults = collectedFaults(sheet, null, findings);
  if (faults !== null) return { kind: 'faulty', ...faults };
  if (catalogue === null || text.kind !== 'text') throw new Error('a catalogue was refused without a fault');
  return readWith({ catalogue, text: text.text }, notes);
}
