import { signal, type ReadonlySignal } from '@preact/signals';

import { isBlank, forNextCustomer } from './document/next-customer.js';
import type { KeptBoard, Shelf, Turned } from './document/shelf.js';
import type { PageState } from './page-state.js';

/** From one customer's board to the next, and back. */
export type Customers = {
  /** The boards that are not on the page, the latest first. */
  readonly others: ReadonlySignal<readonly KeptBoard[]>;
  /** What was done last, in a sentence; empty before. */
  readonly said: ReadonlySignal<string>;
  readonly next: () => void;
  readonly backTo: (board: KeptBoard) => void;
};

/** Without a shelf the browser keeps nothing, and `why` says what to do. `turned` is called when another board is there. */
export function createCustomers(
  { history, replace, notice }: PageState,
  shelf: Shelf | { readonly why: string },
  turned: () => void,
): Customers {
  const others = signal<readonly KeptBoard[]>([]);
  const said = signal('');
  let isTurning = false;
  const present = () => history.value;

  async function look(): Promise<void> {
    if (!('why' in shelf)) others.value = await shelf.others();
  }

  async function turn(words: string, to: (shelf: Shelf) => Promise<Turned>): Promise<void> {
    if ('why' in shelf) {
      notice(shelf.why);
      return;
    }
    if (isTurning) return;
    isTurning = true;
    const next = await to(shelf);
    isTurning = false;
    if (next.kind === 'refused') notice(next.why);
    else {
      replace(next.history);
      said.value = words;
      turned();
    }
    await look();
  }

  void look();
  return {
    others,
    said,
    next: () => {
      if (isBlank(present().present)) turned();
      else
        void turn('A new board. The one before is kept here.', (boards) =>
          boards.begin(forNextCustomer(present().present), present),
        );
    },
    backTo: ({ id, name }) => void turn(`Back at ${name}.`, (boards) => boards.takeUp(id, present)),
  };
}
