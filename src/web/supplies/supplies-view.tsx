import { openFiles } from '../file/open-files.js';
import type { PageState } from '../page-state.js';
import { Columns } from './columns.js';
import { Owned } from './owned.js';
import { Settings } from './settings.js';

/** What powers the board: what the shop has, what is owned, and what holds for either. */
export function SuppliesView({ state }: { readonly state: PageState }) {
  return (
    <section aria-labelledby="supplies-heading" class="supplies">
      <h2 id="supplies-heading">What powers it</h2>
      <Shop state={state} />
      <Columns state={state} />
      <LeftAside notes={state.heard.value.notes} />
      <Settings state={state} />
      <Owned state={state} />
    </section>
  );
}

function Shop({ state }: { readonly state: PageState }) {
  const { shop } = state.document.value;
  return (
    <>
      {shop === null ? (
        <p>
          No shop yet: it is planned with what you own, and where that is not enough the answer is what to look for.
          Open a shop’s table or catalogue, or drop it anywhere, to choose from what it sells.
        </p>
      ) : (
        <p>
          From <b>{shop.file}</b>. It stays here for the next visit.
        </p>
      )}
      <div class="row">
        <label class="file-button">
          <span>Open a board, a shop or a table</span>
          <input
            type="file"
            multiple
            accept=".yaml,.yml,.json,.csv,.tsv"
            onChange={({ currentTarget }) => {
              const files = [...(currentTarget.files ?? [])];
              currentTarget.value = '';
              void openFiles(state, files);
            }}
          />
        </label>
        {shop !== null && (
          <button type="button" class="quiet" onClick={() => state.change((document) => ({ ...document, shop: null }))}>
            Do without the shop: tell me what to look for
          </button>
        )}
      </div>
    </>
  );
}

/** Rows that nobody can use, with the reason, and columns that are not used. */
function LeftAside({ notes }: { readonly notes: readonly string[] }) {
  if (notes.length === 0) return null;
  return (
    <details>
      <summary>{notes.length === 1 ? 'One thing was left aside' : `${notes.length} things were left aside`}</summary>
      <ul>
        {notes.map((note) => (
          <li key={note}>{note}</li>
        ))}
      </ul>
    </details>
  );
}
