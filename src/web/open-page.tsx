import { render } from 'preact';

import { createCustomers } from './customers.js';
import { begunWith, type History } from './document/history.js';
import { whyNotKept } from './document/keeper.js';
import { KeptDocuments } from './document/kept-documents.js';
import { ownDocument } from './document/own-document.js';
import { documentOf, emptyDocument } from './document/page-document.js';
import { Shelf } from './document/shelf.js';
import { givenFiles, type Given } from './file/given-files.js';
import { printedPage } from './file/printed-page.js';
import { createState } from './page-state.js';
import { Page } from './page.js';
import { createDesk, type Hand } from './worker/desk.js';
import type { News } from './worker/messages.js';

/** Opens the page in the document that holds it. */
export async function openPage(): Promise<void> {
  const begun = await beginning(givenFiles(textOf('given')));
  const news: { tell: (news: News) => void } = { tell: () => undefined };
  const desk = createDesk({
    hire,
    onNews: (one) => news.tell(one),
    later: (ms, call) => {
      const timer = setTimeout(call, ms);
      return () => clearTimeout(timer);
    },
  });
  const state = createState(begun.history, {
    keep: (history, told) => {
      if ('why' in begun.shelf) told({ kind: 'not kept', why: begun.shelf.why });
      else begun.shelf.keep(history, told);
    },
    ask: desk.ask,
    inquire: desk.inquire,
    record: desk.record,
    order: (order) => desk.order({ ...order, date: dayInWords(new Date()) }),
    printPage: printedPage,
  });
  news.tell = state.onNews;
  for (const sentence of begun.notices) state.notice(sentence);

  const toLine = (): void => document.getElementById('type-line')?.focus();
  const customers = createCustomers(state, begun.shelf, toLine);
  const root = document.getElementById('page');
  if (root === null) throw new Error('the page has no place for itself');
  render(<Page state={state} customers={customers} />, root);
  if (state.pedals.value.length === 0) toLine();
}

/** As on the sheets that the commands write. */
function dayInWords(day: Date): string {
  return day.toLocaleDateString('en-GB', { dateStyle: 'long' });
}

function textOf(id: string): string {
  return document.getElementById(id)?.textContent ?? '';
}

/** A page from a file may load nothing beside itself: the worker runs the page's own script, which knows where it runs. */
function hire(): Hand {
  const address = URL.createObjectURL(new Blob([textOf('script')], { type: 'text/javascript' }));
  const worker = new Worker(address);
  URL.revokeObjectURL(address);
  return {
    postMessage: (message) => worker.postMessage(message),
    terminate: () => worker.terminate(),
    listen: (told) => worker.addEventListener('message', ({ data }: MessageEvent<News>) => told(data)),
  };
}

type Beginning = {
  readonly history: History;
  /** Where the browser keeps nothing, a sentence that says what to do. */
  readonly shelf: Shelf | { readonly why: string };
  readonly notices: readonly string[];
};

/** The document that the browser has kept, or a new one; what is changed is kept from then on. */
async function beginning({ origin, files }: Given): Promise<Beginning> {
  const first = files === null ? emptyDocument : documentOf(files);
  try {
    const store = await KeptDocuments.open();
    const own = await ownDocument(store, origin, first);
    return {
      history: own.history,
      shelf: new Shelf(store, own),
      notices: [
        ...(own.isElsewhere
          ? ['The board that was last changed here is open in another tab: this one is a new board.']
          : []),
        ...(own.foreign > 0 ? ['Boards that another version of boardfeed has kept here are not touched.'] : []),
      ],
    };
  } catch (error) {
    const why = whyNotKept(error);
    return { history: begunWith(first), shelf: { why }, notices: [why] };
  }
}
