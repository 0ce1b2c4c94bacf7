import type { PedalId } from '../../domain/quantities.js';
import type { News, ToldFault } from './messages.js';
import type { ToldAnswer } from './told-answer.js';
import type { ToldLabels } from './told-labels.js';
import type { ToldChoices } from './told-choices.js';
import type { ToldStart } from './told-start.js';
import type { ToldPlace } from './told-places.js';
import type { ToldWays } from './told-ways.js';
import type { ToldColumns, ToldThing } from './told-shelf.js';

/** All that was heard of the latest question that anything was heard of. */
export type Heard = {
  readonly about: number;
  /** Null while there is none; that of an older question until there is one of this. */
  readonly answer: { readonly about: number; readonly told: ToldAnswer; readonly isFinal: boolean } | null;
  /** What else could be bought; null while nobody has told, or where nothing is for sale. */
  readonly choices: { readonly about: number; readonly told: ToldChoices } | null;
  /** Where one pedal could hang, as was asked last; null while nobody asks. */
  readonly places: { readonly about: number; readonly pedal: PedalId; readonly places: readonly ToldPlace[] } | null;
  /** Which labels decide; null until it was asked. */
  readonly labels: { readonly about: number; readonly told: ToldLabels } | null;
  /** Why one pedal hangs where it does, as was asked last; null while nobody asks. */
  readonly why: { readonly about: number; readonly pedal: PedalId; readonly texts: readonly string[] } | null;
  /** Why there is no plan, and what would help; null where there is one, or it was not told yet. */
  readonly ways: { readonly about: number; readonly told: ToldWays } | null;
  /** What is wrong with the files; empty where they are right. */
  readonly faults: readonly ToldFault[];
  readonly more: number;
  /** What was left aside in reading. */
  readonly notes: readonly string[];
  /** From what the board is planned. */
  readonly start: ToldStart;
  /** What planning from nothing would come to; null where it was not told, or is the answer. */
  readonly over: { readonly about: number; readonly text: string } | null;
  /** What can be owned, and how many of it are. */
  readonly things: readonly ToldThing[];
  /** What there is to be said of the columns of the shop's table; null where it is none. */
  readonly columns: ToldColumns | null;
  /** A defect of boardfeed; null where there is none. */
  readonly failure: string | null;
  readonly isDone: boolean;
};

export const nothingHeard: Heard = {
  about: 0,
  answer: null,
  choices: null,
  places: null,
  labels: null,
  why: null,
  ways: null,
  faults: [],
  more: 0,
  notes: [],
  start: { approach: null, plugged: [] },
  over: null,
  things: [],
  columns: null,
  failure: null,
  isDone: false,
};

/** What is known once this was heard, too. */
export function heard(before: Heard, news: Exclude<News, { readonly kind: 'sheet' | 'recorded' }>): Heard {
  switch (news.kind) {
    case 'begun':
      return { ...before, about: news.about, isDone: false, failure: null };
    case 'read':
      return { ...before, faults: [], more: 0, notes: news.notes, things: news.things, start: news.start };
    case 'columns':
      return { ...before, columns: news.columns };
    case 'faulty':
      return { ...before, answer: null, faults: news.faults, more: news.more };
    case 'answer':
      return { ...before, answer: { about: news.about, told: news.answer, isFinal: news.isFinal } };
    case 'choices':
      return { ...before, choices: { about: news.about, told: news.choices } };
    case 'places':
      return { ...before, places: { about: news.about, pedal: news.pedal, places: news.places } };
    case 'labels':
      return { ...before, labels: { about: news.about, told: news.labels } };
    case 'ways':
      return { ...before, ways: { about: news.about, told: news.ways } };
    case 'over':
      return { ...before, over: { about: news.about, text: news.text } };
    case 'why':
      return { ...before, why: { about: news.about, pedal: news.pedal, texts: news.texts } };
    case 'failed':
      return { ...before, failure: news.message, isDone: true };
    case 'done':
      return { ...before, isDone: true };
  }
}
