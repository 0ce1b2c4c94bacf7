import { useId, useState } from 'preact/hooks';

import { readLabel, sayingOf } from '../document/change-pedal.js';
import type { TileProps } from './tile-props.js';

type FieldProps = TileProps & { readonly done: () => void; readonly hint: string };

/** What a label says, typed as it stands there. */
export function LabelField({ pedal, state, done, hint }: FieldProps) {
  const id = useId();
  const [typed, type] = useState('');
  const [faults, blame] = useState<readonly string[]>([]);
  const take = (event: Event): void => {
    event.preventDefault();
    const read = readLabel(typed);
    if ('faults' in read) {
      blame(read.faults);
      return;
    }
    state.change(sayingOf(pedal, read.values));
    done();
  };
  return (
    <form onSubmit={take} class="label-field">
      <label for={id}>What the label says</label>
      <div class="type-line-row">
        <input
          id={id}
          type="text"
          autocomplete="off"
          placeholder={hint}
          value={typed}
          aria-invalid={faults.length > 0}
          aria-describedby={`${id}-faults`}
          onInput={({ currentTarget }) => type(currentTarget.value)}
        />
        <button type="submit">Take</button>
      </div>
      <div id={`${id}-faults`} class="care" aria-live="polite">
        {faults.map((fault) => (
          <p key={fault}>{fault}</p>
        ))}
      </div>
    </form>
  );
}
