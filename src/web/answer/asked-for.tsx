import { useId, useState } from 'preact/hooks';

import { askingFor, askingNoMoreFor, readAsked } from '../document/ask-for.js';
import type { AskedPurchase } from '../document/page-document.js';
import type { PageState } from '../page-state.js';
import type { ToldThing } from '../worker/told-shelf.js';

/** What a customer has in mind, to be judged beside the choices. */
export function AskedFor({ state }: { readonly state: PageState }) {
  const forSale = state.heard.value.things.filter(({ kind, price }) => kind === 'supply' && price !== null);
  const { asked } = state.document.value;
  return (
    <>
      <AskLine state={state} forSale={forSale} />
      {asked.length > 0 && (
        <ul class="asked" aria-label="Asked for">
          {asked.map((purchase) => (
            <li key={JSON.stringify(purchase)}>
              {textOf(purchase, forSale)}{' '}
              <button type="button" class="quiet" onClick={() => state.change(askingNoMoreFor(purchase))}>
                Ask no more<span class="unseen"> for {textOf(purchase, forSale)}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

const textOf = (purchase: AskedPurchase, forSale: readonly ToldThing[]): string =>
  purchase.map(({ id, units }) => `${units} × ${forSale.find((thing) => thing.id === id)?.name ?? id}`).join(', ');

function AskLine({ state, forSale }: { readonly state: PageState; readonly forSale: readonly ToldThing[] }) {
  const id = useId();
  const [line, type] = useState('');
  const read = readAsked(line, forSale);
  const take = (purchase: AskedPurchase): void => {
    state.change(askingFor(purchase));
    type('');
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (read.kind === 'purchase') take(read.purchase);
      }}
    >
      <label for={id}>Is another one worth it? Its name in the shop</label>
      <div class="type-line-row">
        <input
          id={id}
          type="text"
          autocomplete="off"
          value={line}
          aria-invalid={read.kind === 'unclear'}
          aria-describedby={`${id}-read`}
          onInput={({ currentTarget }) => type(currentTarget.value)}
        />
        <button type="submit" disabled={read.kind !== 'purchase'}>
          Ask
        </button>
      </div>
      <div id={`${id}-read`} aria-live="polite">
        {read.kind === 'unclear' && <p>{read.fault}</p>}
        {read.kind === 'purchase' && <p>{textOf(read.purchase, forSale)}</p>}
        {read.kind === 'several' && (
          <ul class="offers" aria-label="Which one">
            {read.found.slice(0, mostOffered).map((thing) => (
              <li key={thing.id}>
                <button type="button" onClick={() => take(read.choose(thing))}>
                  {thing.name}
                </button>
              </li>
            ))}
          </ul>
        )}
      </div>
    </form>
  );
}

const mostOffered = 8;
