import type { ChoosingAim } from '../../domain/aim.js';
import type { PinnedPlace } from '../../planning/choose/choose-around.js';
import type { AskedSupply } from '../../planning/compare/read-purchase.js';
import type { Meanings } from '../../reading/csv/headings.js';
import { usualAssumption } from '../../reading/drafts/assumption.js';
import { newBoard } from '../../reading/drafts/new-files.js';

/** A purchase that a customer has in mind. */
export type AskedPurchase = readonly AskedSupply[];

/** A file as whoever brought it calls it. */
export type HeldFile = { readonly file: string; readonly text: string };

/** Whether the board is re-plugged from how it is plugged today, with as few moves as can be, or planned from nothing. */
export type Approach = 'as plugged' | 'from nothing';

/** How far somebody has come with the steps of a plan. */
export type Progress = {
  /** The steps themselves, so that what is done of one plan never counts for another. */
  readonly steps: string;
  /** The boxes that are ticked, each by its step and its place there, from 0, with a space between. */
  readonly ticked: readonly string[];
};

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
  /** What stands on the line for what is owned, likewise. */
  readonly ownedLine: string;
  readonly aim: ChoosingAim;
  /** Where pedals are to hang, whatever else is planned around them; at most one each. */
  readonly pins: readonly PinnedPlace[];
  /** What columns of a shop's table hold whose headings are not understood: said once, and true of the next table as well. */
  readonly meanings: Meanings;
  /** Null for what fits the board: as plugged, where most of its pedals are plugged in. */
  readonly approach: Approach | null;
  /** Null where nobody has begun to plug. */
  readonly progress: Progress | null;
  /** The choice whose plan is looked at, by its key; null for the answer. */
  readonly chosen: string | null;
  /** The choices that are pinned side by side. */
  readonly beside: readonly string[];
  /** Purchases to be judged beside the choices. */
  readonly asked: readonly AskedPurchase[];
  /** What was looked for on a label and does not stand there: the id of the pedal and the field, with a space between. */
  readonly notOnLabel: readonly string[];
};

/** Nothing is asked before the first pedal; what plans may take where labels are silent stands in the file. */
const emptyBoard = newBoard({
  name: 'My board',
  currency: 'EUR',
  assumption: usualAssumption,
  mains: null,
  noisePrice: 20,
  budget: null,
  terms: {},
});

/** What a document is without anything but its files; also of those that were kept by a page that did not know it yet. */
export const nothingMade = {
  line: '',
  ownedLine: '',
  aim: 'cost',
  pins: [],
  meanings: {},
  approach: null,
  progress: null,
  chosen: null,
  beside: [],
  asked: [],
  notOnLabel: [],
} satisfies Omit<PageDocument, 'board' | 'shop'>;

/** A document of files, with nothing typed yet. */
export function documentOf(files: Pick<PageDocument, 'board' | 'shop'>): PageDocument {
  return { ...files, ...nothingMade };
}

/** What a page begins with that nothing was given. */
export const emptyDocument: PageDocument = documentOf({
  board: { file: 'my-board.yaml', text: emptyBoard },
  shop: null,
});
