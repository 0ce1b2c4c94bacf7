import { begunWith } from './history.js';
import type { Kept, KeptDocuments } from './kept-documents.js';
import type { PageDocument } from './page-document.js';

/** Where a tab remembers which document is its own, over a reload and a crash. */
const tabKey = 'boardfeed-document';

/** The document that a tab has open. */
export type OwnDocument = Kept & {
  /** Whether the browser does not keep it yet. */
  readonly isNew: boolean;
  /** Lets other tabs have it. */
  readonly release: () => void;
};

/**
 * The document that this tab goes on with, which no other one has open: its own one after a reload, else the latest of this
 * page, else a new one.
 */
export async function ownDocument(
  store: KeptDocuments,
  origin: string,
  fresh: PageDocument,
): Promise<OwnDocument & { readonly isElsewhere: boolean; readonly foreign: number }> {
  const { kept, foreign } = await store.all(origin);
  const mine = sessionStorage.getItem(tabKey);
  const latest = kept[0];
  const candidates = [kept.find(({ id }) => id === mine), latest].filter((one) => one !== undefined);
  for (const { id, changed } of candidates) {
    const release = await claim(id);
    if (release === null) continue;
    const history = await store.one(id);
    if (history === null) throw new Error('the browser has lost a board');
    rememberOwn(id);
    return { id, origin, changed, history, isNew: false, release, isElsewhere: false, foreign };
  }
  const id = crypto.randomUUID();
  const release = await claim(id);
  if (release === null) throw new Error('somebody else holds what was made just now');
  rememberOwn(id);
  const isElsewhere = latest !== undefined;
  return { id, origin, changed: Date.now(), history: begunWith(fresh), isNew: true, release, isElsewhere, foreign };
}

/** After a reload the tab goes on with this document. */
export const rememberOwn = (id: string): void => sessionStorage.setItem(tabKey, id);

/** Holds a document until it is released or the tab is closed; null where a tab holds it. A crash gives it free. */
export const claim = async (id: string): Promise<(() => void) | null> =>
  new Promise((resolve) => {
    void navigator.locks.request(`boardfeed ${id}`, { ifAvailable: true }, async (lock) => {
      if (lock === null) resolve(null);
      else await new Promise<void>((release) => resolve(release));
    });
  });
