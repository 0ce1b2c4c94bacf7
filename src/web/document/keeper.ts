import type { Kept } from './kept-documents.js';

/** How what is on the page stands to what is kept in the browser. */
export type Keeping =
  | { readonly kind: 'kept' }
  | { readonly kind: 'keeping' }
  /** With a sentence that says what to do. */
  | { readonly kind: 'not kept'; readonly why: string };

/** Keeps the latest of what it is given, one write after the other, so that none overtakes a later one. */
export class Keeper {
  readonly #write: (kept: Kept) => Promise<void>;
  readonly #onChange: (keeping: Keeping) => void;
  #next: Kept | null = null;
  #isWriting = false;
  #settled: Promise<Keeping> = Promise.resolve({ kind: 'kept' });

  constructor(write: (kept: Kept) => Promise<void>, onChange: (keeping: Keeping) => void) {
    this.#write = write;
    this.#onChange = onChange;
  }

  keep(kept: Kept): void {
    this.#next = kept;
    if (!this.#isWriting) this.#settled = this.#work();
  }

  /** What became of the latest, and of all that is given until nothing is left to be written. */
  settled(): Promise<Keeping> {
    return this.#settled;
  }

  async #work(): Promise<Keeping> {
    this.#isWriting = true;
    this.#onChange({ kind: 'keeping' });
    let outcome: Keeping = { kind: 'kept' };
    for (let one = this.#next; one !== null; one = this.#next) {
      this.#next = null;
      outcome = await this.#write(one).then(
        (): Keeping => ({ kind: 'kept' }),
        (error: unknown): Keeping => ({ kind: 'not kept', why: whyNotKept(error) }),
      );
    }
    this.#isWriting = false;
    this.#onChange(outcome);
    return outcome;
  }
}

/** What a browser's refusal means for whoever made something on the page. */
export function whyNotKept(error: unknown): string {
  const isFull = error instanceof DOMException && error.name === 'QuotaExceededError';
  return isFull
    ? 'The browser has no room left to keep this: save the board as a file before you close the page.'
    : 'The browser keeps nothing here: save the board as a file before you close the page.';
}
