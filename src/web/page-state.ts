import { computed, signal, type ReadonlySignal } from '@preact/signals';

import type { PedalId } from '../domain/quantities.js';
import { boardData, statedPedals, type StatedPedal } from './document/board-data.js';
import { changedTo, redone, undone, type History } from './document/history.js';
import type { Keeping } from './document/keeper.js';
import type { PageDocument } from './document/page-document.js';
import { pluggedAs, noRoom } from './document/plugging.js';
import { textWithLine } from './document/type-pedal.js';
import type { Inquiry, News, Question, SheetOrder, ShownPlan } from './worker/messages.js';
import type { ToldPlan } from './worker/told-answer.js';
import type { ToldChoice } from './worker/told-choices.js';
import { heard, nothingHeard, type Heard } from './worker/heard.js';
import type { Data } from '../reading/text/data.js';

/** What the page holds: one document with its history, and what was heard of it last. Views are functions of this. */
export type PageState = {
  readonly document: ReadonlySignal<PageDocument>;
  readonly history: ReadonlySignal<History>;
  /** The board's text as data, and its pedals: derived, for all views alike. */
  readonly data: ReadonlySignal<Data>;
  readonly pedals: ReadonlySignal<readonly StatedPedal[]>;
  /** What the worker has said; of an older document until it has said something of this one. */
  readonly heard: ReadonlySignal<Heard>;
  /** The last plan that was settled before the present step; null where there was none. */
  readonly earlier: ReadonlySignal<ToldPlan | null>;
  /** The choice that is looked at; null for the answer itself. */
  readonly choice: ReadonlySignal<ToldChoice | null>;
  /** Whether the answer is about the document that is there, and no better one will come. */
  readonly isSettled: ReadonlySignal<boolean>;
  readonly keeping: ReadonlySignal<Keeping>;
  /** Sentences that concern the whole page, the latest last. */
  readonly notices: ReadonlySignal<readonly string[]>;
  readonly canUndo: ReadonlySignal<boolean>;
  readonly canRedo: ReadonlySignal<boolean>;
  readonly change: (edit: (document: PageDocument) => PageDocument) => void;
  /** Asks where a pedal could hang, or why it hangs there. */
  readonly inquire: (asked: Inquiry['asked'], pedal: PedalId) => void;
  /** Has the sheet of the plan that is shown printed, or that of all choices; while they are searched, as soon as they are there. */
  readonly printSheet: (of: SheetOrder['of']) => void;
  /** What is shown is how the board is plugged now. */
  readonly plugged: () => void;
  readonly undo: () => void;
  readonly redo: () => void;
  /** Goes on with another document and what can be taken back of it. */
  readonly replace: (history: History) => void;
  readonly notice: (sentence: string) => void;
  readonly dismissNotices: () => void;
};

/** What the state does to the world around it. */
type Effects = {
  readonly keep: (history: History, told: (keeping: Keeping) => void) => void;
  /** Called with each question; what comes of it is handed to `onNews`. */
  readonly ask: (question: Question) => void;
  readonly inquire: (inquiry: Inquiry) => void;
  readonly order: (order: Omit<SheetOrder, 'date'>) => void;
  readonly record: (shown: ShownPlan) => void;
  /** Opens a sheet and prints it; `refuse` is told what to do where the browser does not. */
  readonly printPage: (page: string, refuse: (sentence: string) => void) => void;
};

/** The state of a page that begins with a document and what can be taken back of it. */
export function createState(first: History, effects: Effects): PageState & { readonly onNews: (news: News) => void } {
  const history = signal(first);
  const about = signal(0);
  const told = signal<Heard>(nothingHeard);
  const earlier = signal<ToldPlan | null>(null);
  const keeping = signal<Keeping>({ kind: 'kept' });
  const notices = signal<readonly string[]>([]);
  const document = computed(() => history.value.present);
  const text = computed(() => document.value.board.text);
  const data = computed(() => boardData(text.value));
  const choice = computed(() => choiceIn(told.value, document.value));
  const notice = (sentence: string): void => void (notices.value = withNotice(notices.value, sentence));
  const ask = (): void => effects.ask(questionOf(document.value, (about.value += 1)));

  function go(next: typeof history.value): void {
    const before = document.value;
    history.value = next;
    if (document.value === before) return;
    effects.keep(history.value, (one) => (keeping.value = one));
    if (isSameQuestion(before, document.value)) return;
    earlier.value = heldAgainst([before, document.value], settledPlan(told.value, about.value), earlier.value);
    ask();
  }

  const change: PageState['change'] = (edit) => go(changedTo(history.value, edit(document.value)));
  const shown = (): ShownPlan => ({ about: about.value, chosen: choice.value?.key ?? null });
  const sheets = sheetsWithAnswers((of) => effects.order({ ...shown(), of }));
  ask();
  return {
    document,
    history,
    data,
    pedals: computed(() => statedPedals(data.value)),
    heard: told,
    earlier,
    choice,
    isSettled: computed(() => isSettledFor(told.value, about.value)),
    keeping,
    notices,
    canUndo: computed(() => history.value.past.length > 0),
    canRedo: computed(() => history.value.future.length > 0),
    change,
    inquire: (asked, pedal) => effects.inquire({ about: about.value, asked, pedal }),
    printSheet: (of) => sheets.want({ about: about.value, of }, told.value),
    plugged: () => effects.record(shown()),
    undo: () => go(undone(history.value)),
    redo: () => go(redone(history.value)),
    replace: (next) => {
      [history.value, told.value, earlier.value] = [next, nothingHeard, null];
      ask();
    },
    notice,
    dismissNotices: () => (notices.value = []),
    onNews: (news) => {
      if (news.about !== about.value) return;
      if (news.kind === 'sheet') effects.printPage(news.page, notice);
      else if (news.kind !== 'recorded') told.value = heard(told.value, news);
      else take(news.text, { change, notice });
      sheets.take(news);
    },
  };
}

type Wanted = Pick<SheetOrder, 'about' | 'of'>;

/** By which news it comes what a sheet is of. */
const newsOf = { plan: 'answer', choices: 'choices' } as const satisfies Record<SheetOrder['of'], News['kind']>;

/** A sheet that is wanted while what it shows is searched is ordered with that, unless there is another question by then. */
function sheetsWithAnswers(order: (of: SheetOrder['of']) => void) {
  let awaited: Wanted | null = null;
  return {
    want: (wanted: Wanted, known: Heard): void => {
      if (known[newsOf[wanted.of]]?.about === wanted.about) order(wanted.of);
      else awaited = wanted;
    },
    take: ({ about, kind }: News): void => {
      if (awaited?.about !== about || newsOf[awaited.of] !== kind) return;
      order(awaited.of);
      awaited = null;
    },
  };
}

/**
 * What plans are held against after a step. A pedal is one from its first key to its last: what it changes stays marked until
 * the next. Of a board that was opened nothing has changed yet.
 */
function heldAgainst(
  [before, after]: readonly [PageDocument, PageDocument],
  settled: ToldPlan | null,
  earlier: ToldPlan | null,
): ToldPlan | null {
  if (before.board.file !== after.board.file) return null;
  return textWithLine(before) === null ? (settled ?? earlier) : earlier;
}

/** The board's text as it is plugged now, or that it has no room for that. */
function take(text: string | null, { change, notice }: Pick<PageState, 'change' | 'notice'>): void {
  if (text === null) notice(noRoom);
  else change(pluggedAs(text));
}

/** What is said again is said last. */
const withNotice = (notices: readonly string[], sentence: string): readonly string[] => [
  ...notices.filter((one) => one !== sentence),
  sentence,
];

/** A final answer stays as it is, whatever else is still worked out beside it. */
const isSettledFor = ({ about, isDone, answer }: Heard, document: number): boolean =>
  about === document && (isDone || (answer?.about === document && answer.isFinal));

const settledPlan = (heard: Heard, document: number): ToldPlan | null =>
  isSettledFor(heard, document) && heard.answer?.told.kind === 'plan' ? heard.answer.told : null;

/** What is asked of a document: of its board with the pedal that is being typed, where that is one already. */
const questionOf = (document: PageDocument, about: number): Question => {
  const { board, shop, aim, pins, meanings, approach, asked } = document;
  return {
    about,
    board: { ...board, text: textWithLine(document) ?? board.text },
    shop,
    aim,
    pins,
    meanings,
    approach,
    asked,
  };
};

/** Whatever else has changed, nothing has to be answered anew. */
function isSameQuestion(before: PageDocument, after: PageDocument): boolean {
  const parts = (document: PageDocument): readonly unknown[] => {
    const { board, shop, aim, pins, meanings, approach, asked } = document;
    return [textWithLine(document) ?? board.text, board.file, shop, aim, pins, meanings, approach, asked];
  };
  const was = parts(before);
  return parts(after).every((value, at) => value === was[at]);
}

/** An older choice is never shown for one of another board. */
const choiceIn = ({ about, choices }: Heard, { chosen }: PageDocument): ToldChoice | null =>
  choices?.about !== about ? null : (choices.told.choices.find(({ key }) => key === chosen) ?? null);
