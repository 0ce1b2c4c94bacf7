import type { ChoosingAim } from '../../domain/aim.js';
import { usualAssumption } from '../../reading/drafts/assumption.js';
import { newBoard } from '../../reading/drafts/new-files.js';

/** A file as whoever brought it calls it. */
export type HeldFile = { readonly file: string; readonly text: string };

/**
 * All that was made on the page: a value, never changed in place. The board is the very text that "Save" writes, so that what
 * is saved, kept, undone and asked cannot part. What can be derived from it is not in it.
 */
export type PageDocument = {
  /** In YAML or JSON, with the comments that it came with. */
  readonly board: HeldFile;
  /** A table or a catalogue as it was brought; null while nothing is for sale. */
  readonly shop: HeldFile | null;
  /** What stands on the line to type a pedal on and is not entered yet. */
  readonly line: string;
  readonly aim: ChoosingAim;
};

/** The volts of nearly all venues of those who count in a currency are not known: no mains are stated. */
const emptyBoard = newBoard({
  name: 'My board',
  currency: 'EUR',
  assumption: usualAssumption,
  mains: null,
  noisePrice: 20,
  budget: null,
});

/** What a page begins with that nothing was given. */
export const emptyDocument: PageDocument = documentOf({
  board: { file: 'my-board.yaml', text: emptyBoard },
  shop: null,
});

/** A document of files, with nothing typed yet. */
export function documentOf(files: Pick<PageDocument, 'board' | 'shop'>): PageDocument {
  return { ...files, line: '', aim: 'cost' };
}
