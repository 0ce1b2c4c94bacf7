import type { PageState } from '../page-state.js';
import { openedFile } from '../file/opened-file.js';

/** What powers the board: the shop. */
export function SuppliesView({ state }: { readonly state: PageState }) {
  const { shop } = state.document.value;
  const { notes } = state.heard.value;
  return (
    <section aria-labelledby="supplies-heading">
      <h2 id="supplies-heading">What powers it</h2>
      {shop === null ? (
        <p>
          No shop yet: the answer is what to look for. Open a shop’s table or catalogue to choose from what it sells.
        </p>
      ) : (
        <p>{shop.file}</p>
      )}
      <label class="file-button">
        <span>Open a board, a shop or a table</span>
        <input
          type="file"
          accept=".yaml,.yml,.json,.csv,.tsv"
          onChange={({ currentTarget }) => void opened(state, currentTarget)}
        />
      </label>
      {notes.length > 0 && (
        <details>
          <summary>
            {notes.length === 1 ? 'One thing was left aside' : `${notes.length} things were left aside`}
          </summary>
          <ul>
            {notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

async function opened(state: PageState, input: HTMLInputElement): Promise<void> {
  const files = [...(input.files ?? [])];
  input.value = '';
  for (const file of files) {
    const read = await openedFile({
      name: file.name,
      size: file.size,
      bytes: async () => new Uint8Array(await file.arrayBuffer()),
    });
    if (read.kind === 'refused') state.notice(read.why);
    else state.change(read.edit);
  }
}
