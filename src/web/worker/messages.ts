import type { ChoosingAim } from '../../domain/aim.js';
import type { PedalId } from '../../domain/quantities.js';
import type { PinnedPlace } from '../../planning/choose/choose-around.js';
import type { Meanings } from '../../reading/csv/headings.js';
import type { Approach, AskedPurchase, HeldFile } from '../document/page-document.js';
import type { ToldAnswer } from './told-answer.js';
import type { ToldLabels } from './told-labels.js';
import type { ToldChoices } from './told-choices.js';
import type { ToldStart } from './told-start.js';
import type { ToldPlace } from './told-places.js';
import type { ToldWays } from './told-ways.js';
import type { ToldColumns, ToldThing } from './told-shelf.js';

/** What is to be answered. All of it is in the message: a worker remembers nothing that it would have to be told before. */
export type Question = {
  /** The number of the document that it is about; a higher one is a later one. */
  readonly about: number;
  readonly board: HeldFile;
  readonly shop: HeldFile | null;
  readonly aim: ChoosingAim;
  readonly pins: readonly PinnedPlace[];
  /** What columns of the shop's table hold whose headings are not understood. */
  readonly meanings: Meanings;
  readonly approach: Approach | null;
  readonly asked: readonly AskedPurchase[];
};

/** What the page says to the worker. A question ends the search for the one before; all else ends nothing. */
export type ToWorker =
  | { readonly kind: 'ask'; readonly question: Question }
  | { readonly kind: 'inquire'; readonly inquiry: Inquiry }
  | { readonly kind: 'order'; readonly order: SheetOrder }
  /** The plan that is shown is how the board is plugged now. */
  | { readonly kind: 'record'; readonly shown: ShownPlan }
  | { readonly kind: 'stop' };

/** What is asked of the latest plan for a document, while its search goes on: where a pedal could hang, or why it hangs there. */
export type Inquiry = { readonly about: number; readonly asked: 'places' | 'why'; readonly pedal: PedalId };

/** What is shown of a document. */
export type ShownPlan = {
  readonly about: number;
  /** The choice that is looked at, by its key; null for the answer. */
  readonly chosen: string | null;
};

/** One sheet of paper of what is shown. */
export type SheetOrder = ShownPlan & {
  /** The plan to plug by, or the choices side by side. */
  readonly of: 'plan' | 'choices';
  /** The day in words. */
  readonly date: string;
};

/** What the worker says of a question, until `done`. */
export type News = {
  /** That of the question. */
  readonly about: number;
} &
  /** It has been heard: whoever is silent for long does not listen any more. */
  (
    | { readonly kind: 'begun' }
    /** The files are understood; with a sentence for each thing that was left aside. */
    | {
        readonly kind: 'read';
        readonly notes: readonly string[];
        readonly things: readonly ToldThing[];
        readonly start: ToldStart;
      }
    /** What there is to be said of the columns of the shop's table; null where it is none. */
    | { readonly kind: 'columns'; readonly columns: ToldColumns | null }
    | { readonly kind: 'faulty'; readonly faults: readonly ToldFault[]; readonly more: number }
    /** The best so far, or all that there is to say. */
    | { readonly kind: 'answer'; readonly answer: ToldAnswer; readonly isFinal: boolean }
    /** What else could be bought, whatever the budget. */
    | { readonly kind: 'choices'; readonly choices: ToldChoices }
    | { readonly kind: 'places'; readonly pedal: PedalId; readonly places: readonly ToldPlace[] }
    /** Which labels decide, once the plan is proven. */
    | { readonly kind: 'labels'; readonly labels: ToldLabels }
    /** What planning from nothing would come to beside this, in a sentence. */
    | { readonly kind: 'over'; readonly text: string }
    /** The board's text with a plan as its wiring; null where the text has no room for it. */
    | { readonly kind: 'recorded'; readonly text: string | null }
    | { readonly kind: 'why'; readonly pedal: PedalId; readonly texts: readonly string[] }
    /** Why there is no plan, and what would help. */
    | { readonly kind: 'ways'; readonly ways: ToldWays }
    /** A sheet that was ordered, as an HTML page of its own. */
    | { readonly kind: 'sheet'; readonly page: string }
    | { readonly kind: 'done' }
    /** A defect of boardfeed. */
    | { readonly kind: 'failed'; readonly message: string }
  );

/** What is wrong with a file, in words. */
export type ToldFault = {
  readonly of: 'board' | 'shop';
  /** What it is about: a key, or a row of a table and its heading; empty for a file as a whole. */
  readonly key: string;
  /** What else the same is wrong with, as `key`. */
  readonly alike: readonly string[];
  /** Where it stands: "line 12, Echo". */
  readonly where: string;
  readonly message: string;
  readonly remedy: string;
};
