import type { Inquiry, News, Question, SheetOrder, ShownPlan, ToWorker } from './messages.js';

/** A worker, as far as the desk deals with it. */
export type Hand = {
  readonly postMessage: (message: ToWorker) => void;
  readonly terminate: () => void;
  readonly listen: (heard: (news: News) => void) => void;
};

export type Desk = {
  readonly ask: (question: Question) => void;
  /** Asks beside the latest question, whose search goes on. */
  readonly inquire: (inquiry: Inquiry) => void;
  /** Has a sheet made of the latest answer. */
  readonly order: (order: SheetOrder) => void;
  /** Has it written how the board is plugged. */
  readonly record: (shown: ShownPlan) => void;
  readonly stop: () => void;
};

type DeskPlace = {
  readonly hire: () => Hand;
  readonly onNews: (news: News) => void;
  /** Calls back after so many milliseconds, unless it is called off. */
  readonly later: (ms: number, call: () => void) => () => void;
};

/** Longer than a worker is silent that is searching, or reads a large shop for the first time. */
const patienceMs = 2_000;

/**
 * Takes questions to a worker and brings back its news of the latest one. A worker that is too busy to hear a newer question
 * is ended, and another one asked; one that is new has nothing to be busy with.
 */
export function createDesk({ hire, onNews, later }: DeskPlace): Desk {
  let [hand, latest, isBusy] = [hired(), 0, false];
  let callOff = (): void => undefined;

  function hired(): Hand {
    const one = hire();
    one.listen((news) => {
      if (one !== hand || news.about !== latest) return;
      if (news.kind === 'begun') {
        callOff();
        isBusy = true;
      } else if (news.kind === 'done' || news.kind === 'failed') isBusy = false;
      onNews(news);
    });
    return one;
  }

  function dismiss(): void {
    hand.terminate();
    hand = hired();
    isBusy = false;
  }

  return {
    ask: (question) => {
      callOff();
      latest = question.about;
      hand.postMessage({ kind: 'ask', question });
      if (!isBusy) return;
      callOff = later(patienceMs, () => {
        dismiss();
        hand.postMessage({ kind: 'ask', question });
      });
    },
    inquire: (inquiry) => hand.postMessage({ kind: 'inquire', inquiry }),
    record: (shown) => hand.postMessage({ kind: 'record', shown }),
    order: (order) => hand.postMessage({ kind: 'order', order }),
    stop: () => {
      callOff();
      hand.postMessage({ kind: 'stop' });
    },
  };
}
