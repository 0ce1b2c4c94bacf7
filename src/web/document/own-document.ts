import type { Kept, KeptDocuments } from './kept-documents.js';
import type { PageDocument } from './page-document.js';

/** Where a tab remembers which document is its own, over a reload and a crash. */
const tabKey = 'boardfeed-document';

/**
 * The document that this tab goes on with, which no other one has open: its own one after a reload, else the latest of this
 * page, else a new one.
 */
export async function ownDocument(
  store: KeptDocuments,
  origin: string,
  fresh: PageDocument,
): Promise<Kept & { readonly isElsewhere: boolean; readonly foreign: number }> {
  const { kept, foreign } = await store.all(origin);
  const mine = sessionStorage.getItem(tabKey);
  const latest = kept[0];
  const candidates = [kept.find(({ id }) => id === mine), latest].filter((one) => one !== undefined);
  for (const one of candidates) if (await claim(one.id)) return remembered({ ...one, isElsewhere: false, foreign });
  const id = crypto.randomUUID();
  await claim(id);
  return remembered({
    ...{ id, origin, changed: Date.now(), document: fresh },
    isElsewhere: latest !== undefined,
    foreign,
  });
}

function remembered<One extends Kept>(one: One): One {
  sessionStorage.setItem(tabKey, one.id);
  return one;
}

/** Holds a document for as long as the tab is open; false where another tab holds it. A crash gives it free. */
const claim = async (id: string): Promise<boolean> =>
  new Promise((resolve) => {
    const forever = new Promise<never>(() => undefined);
    void navigator.locks.request(`boardfeed ${id}`, { ifAvailable: true }, async (lock) => {
      resolve(lock !== null);
      if (lock !== null) await forever;
    });
  });
