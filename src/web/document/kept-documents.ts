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
  readonly document: PageDocument;
};

/** A document as it lies in the database. The shop, which may be large and changes seldom, lies beside it. */
type Entry = Omit<Kept, 'document'> & {
  readonly version: number;
  readonly document: Omit<PageDocument, 'shop'> & { readonly shop: string | null };
};

/** What is kept, without its shop. */
export type KeptAlone = Pick<Entry, 'id' | 'changed' | 'document'>;

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

  /** A document that is kept, with its shop; null where there is none. */
  async one(id: string): Promise<PageDocument | null> {
    const transaction = this.#database.transaction([documents, shops]);
    const entry = (await settled(transaction.objectStore(documents).get(id))) as Entry | undefined;
    if (entry === undefined) return null;
    const { shop: key } = entry.document;
    const shop = key === null ? null : ((await settled(transaction.objectStore(shops).get(key))) as HeldFile);
    if (shop !== null && key !== null) this.#shops.set(shop, key);
    return { ...nothingMade, ...entry.document, shop };
  }

  async keep({ id, origin, changed, document }: Kept): Promise<void> {
    const transaction = this.#database.transaction([documents, shops], 'readwrite', { durability: 'strict' });
    const { shop } = document;
    let key = shop === null ? null : (this.#shops.get(shop) ?? null);
    if (shop !== null && key === null) {
      key = crypto.randomUUID();
      transaction.objectStore(shops).put(shop, key);
    }
    const entry: Entry = { id, origin, changed, version, document: { ...document, shop: key } };
    transaction.objectStore(documents).put(entry);
    await finished(transaction);
    if (shop !== null && key !== null) this.#shops.set(shop, key);
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
