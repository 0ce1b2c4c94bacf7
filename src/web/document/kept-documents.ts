import type { History } from './history.js';
import { nothingMade, type HeldFile, type PageDocument } from './page-document.js';

/** The form of what is kept. Whoever changes `PageDocument` in a way that older ones cannot be read by raises it. */
const version = 1;

/** A document that is kept in the browser. */
export type Kept = {
  /** By which one document is told from another, whatever is changed in it. */
  readonly id: string;
  /** Which page it was made on: pages with other files inside have documents of their own. */
  readonly origin: string;
  /** Milliseconds since 1970. */
  readonly changed: number;
  /** With what can be taken back, and back again. */
  readonly history: History;
};

/** A document as it lies in the database. The shop, which may be large and changes seldom, lies beside it. */
type Laid = Omit<PageDocument, 'shop'> & { readonly shop: string | null };
type Entry = Omit<Kept, 'history'> & {
  readonly version: number;
  readonly document: Laid;
  /** The latest last; left out by pages that did not keep them yet. */
  readonly past?: readonly Laid[];
  readonly future?: readonly Laid[];
};

/** What is kept, without its shop and its history. */
export type KeptAlone = Pick<Entry, 'id' | 'changed' | 'document'>;

/** So many steps can be taken back after a reload. */
const mostSteps = 100;

const [documents, shops] = ['documents', 'shops'];

/** Documents in the browser's database. Each promise is kept when the browser has it on the disk. */
export class KeptDocuments {
  readonly #database: IDBDatabase;
  /** The shops that lie there, by what they are called there. */
  readonly #shops = new Map<HeldFile, string>();

  constructor(database: IDBDatabase) {
    this.#database = database;
  }

  /** @throws whatever the browser says when it keeps nothing. */
  static async open(name = 'boardfeed'): Promise<KeptDocuments> {
    const asked = indexedDB.open(name, 1);
    asked.onupgradeneeded = () => {
      asked.result.createObjectStore(documents, { keyPath: 'id' });
      asked.result.createObjectStore(shops);
    };
    return new KeptDocuments(await settled(asked));
  }

  /** Those of a page that can be read, the latest first, and how many there are that another version has kept. */
  async all(origin: string): Promise<{ readonly kept: readonly KeptAlone[]; readonly foreign: number }> {
    const store = this.#database.transaction(documents).objectStore(documents);
    const own = ((await settled(store.getAll())) as readonly Entry[]).filter((entry) => entry.origin === origin);
    const readable = own.filter((entry) => entry.version === version);
    const kept = readable.sort((one, other) => other.changed - one.changed);
    return { kept, foreign: own.length - kept.length };
  }

  /** What is kept of a document, with its shop; null where there is nothing. */
  async one(id: string): Promise<History | null> {
    const transaction = this.#database.transaction([documents, shops]);
    const entry = (await settled(transaction.objectStore(documents).get(id))) as Entry | undefined;
    if (entry === undefined) return null;
    const { past = [], document, future = [] } = entry;
    const held = new Map<string, HeldFile>();
    for (const { shop } of [...past, document, ...future]) {
      if (shop === null || held.has(shop)) continue;
      const file = (await settled(transaction.objectStore(shops).get(shop))) as HeldFile;
      held.set(shop, file);
      this.#shops.set(file, shop);
    }
    const whole = (laid: Laid): PageDocument => ({
      ...nothingMade,
      ...laid,
      shop: laid.shop === null ? null : (held.get(laid.shop) ?? null),
    });
    return { past: past.map(whole), present: whole(document), future: future.map(whole) };
  }

  async keep({ id, origin, changed, history }: Kept): Promise<void> {
    const transaction = this.#database.transaction([documents, shops], 'readwrite', { durability: 'strict' });
    const fresh = new Map<HeldFile, string>();
    const laid = (document: PageDocument): Laid => {
      const { shop } = document;
      if (shop === null) return { ...document, shop };
      const key = this.#shops.get(shop) ?? fresh.get(shop) ?? crypto.randomUUID();
      if (!this.#shops.has(shop)) fresh.set(shop, key);
      return { ...document, shop: key };
    };
    const past = history.past.slice(-mostSteps).map(laid);
    const future = history.future.slice(0, mostSteps).map(laid);
    const entry: Entry = { id, origin, changed, version, document: laid(history.present), past, future };
    for (const [shop, key] of fresh) transaction.objectStore(shops).put(shop, key);
    transaction.objectStore(documents).put(entry);
    await finished(transaction);
    for (const [shop, key] of fresh) this.#shops.set(shop, key);
  }
}

const settled = async <Result>(request: IDBRequest<Result>): Promise<Result> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error('the browser gave no reason'));
  });

const finished = async (transaction: IDBTransaction): Promise<void> =>
  new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new Error('the browser gave no reason'));
  });
