import { useId, useState } from 'preact/hooks';

import { idFromName } from '../../reading/resolve/resolve-id.js';
import { nameIsTaken } from '../../reading/typed/pedal-name.js';
import { comingLater, naming, sayingOf, without } from '../document/change-pedal.js';
import { isPlugged } from '../document/todays-wiring.js';
import { LabelField } from './label-field.js';
import { OwnSources } from './own-sources.js';
import type { TileOrder } from './tile-order.js';
import type { TileProps } from './tile-props.js';

const traits = [
  ['digital', 'holds a digital circuit'],
  ['highGain', 'high gain'],
  ['alone', 'wants an output of its own'],
  ['later', 'bought later: keep a place'],
] as const;

type MendProps = TileProps & { readonly order: TileOrder; readonly close: () => void };

/** All that can be mended of a pedal: its name, its label, what it is like, and where it stands. */
export function MendPanel({ pedal, state, order, close }: MendProps) {
  return (
    <div class="panel" role="group" aria-label={`Change ${pedal.name}`}>
      <LabelField pedal={pedal} state={state} done={close} hint="9v 300 neg" />
      <NameField pedal={pedal} state={state} close={close} />
      <ul class="ticks">
        {traits.map(([key, words]) => (
          <li key={key}>
            <label>
              <input
                type="checkbox"
                checked={pedal.stated[key] === true}
                onChange={({ currentTarget: { checked } }) =>
                  state.change(key === 'later' ? comingLater(pedal, checked) : sayingOf(pedal, { [key]: checked }))
                }
              />{' '}
              {words}
            </label>
          </li>
        ))}
      </ul>
      <OwnSources pedal={pedal} state={state} />
      {isPlugged(state.document.value.board.text, pedal.id) && (
        <p class="minor">It is plugged in today: with the mains off, pull its plug when you take it off.</p>
      )}
      <div class="choices">
        <button type="button" disabled={pedal.index === 0} onClick={() => order.shift(pedal.index, -1)}>
          One place earlier
        </button>
        <button type="button" disabled={pedal.index === order.count - 1} onClick={() => order.shift(pedal.index, 1)}>
          One place later
        </button>
      </div>
      <button type="button" onClick={() => state.change(without(pedal))}>
        Take it off the board
      </button>
    </div>
  );
}

function NameField({ pedal, state, close }: TileProps & { readonly close: () => void }) {
  const id = useId();
  const [typed, type] = useState(pedal.name);
  const [fault, blame] = useState<string | null>(null);
  const take = (event: Event): void => {
    event.preventDefault();
    const name = typed.trim();
    const isTaken = state.pedals.value.some((one) => one.index !== pedal.index && one.id === idFromName(name));
    if (idFromName(name) === null || isTaken) {
      blame(isTaken ? nameIsTaken : 'Write at least one letter.');
      return;
    }
    state.change(naming(pedal, name));
    close();
  };
  return (
    <form onSubmit={take} class="label-field">
      <label for={id}>Its name</label>
      <div class="type-line-row">
        <input
          id={id}
          type="text"
          autocomplete="off"
          value={typed}
          aria-invalid={fault !== null}
          aria-describedby={`${id}-fault`}
          onInput={({ currentTarget }) => type(currentTarget.value)}
        />
        <button type="submit">Take</button>
      </div>
      <p id={`${id}-fault`} class="care" aria-live="polite">
        {fault}
      </p>
    </form>
  );
}
