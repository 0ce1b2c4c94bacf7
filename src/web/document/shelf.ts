import { boardData, boardName, statedPedals } from './board-data.js';
import { begunWith, type History } from './history.js';
import { Keeper, whyNotKept, type Keeping } from './keeper.js';
import type { KeptAlone, KeptDocuments } from './kept-documents.js';
import { isBlank } from './next-customer.js';
import { claim, rememberOwn, type OwnDocument } from './own-document.js';
import { emptyDocument, type PageDocument } from './page-document.js';

/** A board that is kept in the browser, as one knows it again. */
export type KeptBoard = {
  readonly id: string;
  /** That of the board, or the first of its pedals where nobody has named it. */
  readonly name: string;
  /** Milliseconds since 1970. */
  readonly changed: number;
  /** What the pedals are called. */
  readonly pedals: readonly string[];
};

/** Another document that the page goes on with, or a sentence that says why it does not. */
export type Turned =
  { readonly kind: 'turned'; readonly history: History } | { readonly kind: 'refused'; readonly why: string };

/** The boards of a page that the browser keeps, of which one is on the page. */
export class Shelf {
  readonly #store: KeptDocuments;
  readonly #origin: string;
  readonly #keeper: Keeper;
  #own: Pick<OwnDocument, 'id' | 'release'>;
  /** What of the own one was given to be kept last; null where nothing was. */
  #latest: History | null;
  #told: (keeping: Keeping) => void = () => undefined;

  constructor(store: KeptDocuments, own: OwnDocument) {
    this.#store = store;
    this.#origin = own.origin;
    this.#own = own;
    this.#latest = own.isNew ? null : own.history;
    this.#keeper = new Keeper(
      (kept) => store.keep(kept),
      (keeping) => this.#told(keeping),
    );
  }

  /** Keeps what is on the page. */
  keep(history: History, told = this.#told): void {
    this.#told = told;
    this.#latest = history;
    this.#keeper.keep({ id: this.#own.id, origin: this.#origin, changed: Date.now(), history });
  }

  /** The boards that are not on the page and have something on them, the latest first. */
  async others(): Promise<readonly KeptBoard[]> {
    const { kept } = await this.#store.all(this.#origin);
    return kept.filter(({ id, document }) => id !== this.#own.id && !isBlank(document)).map(keptBoard);
  }

  /** Puts what is present aside and goes on with a new document. */
  async begin(document: PageDocument, present: () => History): Promise<Turned> {
    const history = begunWith(document);
    const turned = await this.#turn(crypto.randomUUID(), present, () => Promise.resolve(history));
    if (turned.kind === 'turned') this.keep(history);
    return turned;
  }

  /** Puts what is present aside and goes on with a document that is kept. */
  takeUp(id: string, present: () => History): Promise<Turned> {
    return this.#turn(id, present, () => this.#store.one(id));
  }

  /** Nothing is let go before the browser has it on the disk, with all that was made while it was written. */
  async #turn(id: string, present: () => History, find: () => Promise<History | null>): Promise<Turned> {
    const release = await claim(id);
    if (release === null) return { kind: 'refused', why: 'That board is open in another tab.' };
    try {
      const history = await find();
      if (history === null) throw new Error('the browser has lost a board');
      if (present() !== this.#latest) this.keep(present());
      const keeping = await this.#keeper.settled();
      if (keeping.kind === 'not kept') {
        release();
        return { kind: 'refused', why: keeping.why };
      }
      this.#own.release();
      [this.#own, this.#latest] = [{ id, release }, history];
      rememberOwn(id);
      return { kind: 'turned', history };
    } catch (error) {
      release();
      return { kind: 'refused', why: whyNotKept(error) };
    }
  }
}

/** So many pedals are named: enough to know a board again. */
const mostNamed = 3;

export const firstOf = (pedals: readonly string[]): string =>
  `${pedals.slice(0, mostNamed).join(', ')}${pedals.length > mostNamed ? ' …' : ''}`;

function keptBoard({ id, changed, document: { board } }: KeptAlone): KeptBoard {
  const data = boardData(board.text);
  const [name, pedals] = [boardName(data), statedPedals(data).map((pedal) => pedal.name)];
  const isUnnamed = name === boardName(boardData(emptyDocument.board.text)) && pedals.length > 0;
  return { id, changed, name: isUnnamed ? firstOf(pedals) : name, pedals };
}
