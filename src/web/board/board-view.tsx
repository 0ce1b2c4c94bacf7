import { circuitKinds } from '../../domain/circuit-kinds.js';
import { openWords } from '../../reading/drafts/pedal-draft.js';
import { withoutPedal } from '../document/change-pedal.js';
import type { StatedPedal } from '../document/board-data.js';
import type { PageState } from '../page-state.js';
import { figuresOf } from './figures.js';
import { TypeLine } from './type-line.js';

/** The line to type a pedal on, and a tile a pedal. */
export function BoardView({ state }: { readonly state: PageState }) {
  const pedals = state.pedals.value;
  return (
    <section aria-labelledby="board-heading">
      <h2 id="board-heading">Pedals</h2>
      <TypeLine state={state} />
      {pedals.length === 0 ? (
        <p class="soft">No pedal yet. Type its name and what its label says, and press Enter.</p>
      ) : (
        <ol class="tiles">
          {pedals.map((pedal) => (
            <Tile key={pedal.id} pedal={pedal} state={state} />
          ))}
        </ol>
      )}
    </section>
  );
}

function Tile({ pedal, state }: { readonly pedal: StatedPedal; readonly state: PageState }) {
  const kind = circuitKinds.find(({ key }) => key === pedal.stated['circuit']);
  return (
    <li class={pedal.open.length === 0 ? 'tile' : 'tile tile-open'}>
      <h3>{pedal.name}</h3>
      <p>{figuresOf(pedal).join(' · ')}</p>
      {pedal.open.length > 0 && (
        <ul class="marks">
          {pedal.open.map((field) => (
            <li key={field} class="mark">
              {openWords[field]}
            </li>
          ))}
        </ul>
      )}
      {kind !== undefined && (
        <p class="soft">
          planned as {kind.label}: {kind.planningMilliamps} mA
        </p>
      )}
      <button
        type="button"
        class="quiet"
        aria-label={`Take off ${pedal.name}`}
        onClick={() => state.change((document) => withoutPedal(document, pedal))}
      >
        Take off
      </button>
    </li>
  );
}
