import { useId } from 'preact/hooks';

import { meaningOf } from '../document/change-supplies.js';
import type { PageState } from '../page-state.js';
import type { ColumnChoice, ToldColumn } from '../worker/told-shelf.js';

/** The columns of the shop's table that are not understood, to be matched by hand. */
export function Columns({ state }: { readonly state: PageState }) {
  const told = state.heard.value.columns;
  if (told === null || told.columns.length === 0) return null;
  const wanted = told.columns.filter(({ meaning, mayLimit }) => meaning === null && mayLimit);
  const isWanting = wanted.length + told.missing.length > 0;
  return (
    <details class="columns" open={isWanting}>
      <summary>
        {isWanting
          ? 'Say what the columns of the shop hold'
          : `Columns matched by hand or not used (${told.columns.length})`}
      </summary>
      {told.missing.length > 0 && <p>Still missing: {told.missing.join(', ')}.</p>}
      <ul class="column-list">
        {told.columns.map((column) => (
          <Column key={column.heading} column={column} choices={told.choices} state={state} />
        ))}
      </ul>
      <p class="minor">It is remembered for the next table with these headings.</p>
    </details>
  );
}

type ColumnProps = {
  readonly column: ToldColumn;
  readonly choices: readonly ColumnChoice[];
  readonly state: PageState;
};

function Column({ column: { heading, samples, mayLimit, meaning }, choices, state }: ColumnProps) {
  const id = useId();
  return (
    <li>
      <label for={id}>
        <b>{heading}</b> <span class="minor">such as {samples.join(', ') || 'nothing yet'}</span>
      </label>
      <select
        id={id}
        value={meaning ?? ''}
        onChange={({ currentTarget }) => state.change(meaningOf(heading, currentTarget.value))}
      >
        <option value="">{mayLimit ? 'it may be a limit: choose' : 'not used'}</option>
        {choices.map((choice) => (
          <option key={choice.meaning} value={choice.meaning}>
            {choice.words}
          </option>
        ))}
      </select>
    </li>
  );
}
