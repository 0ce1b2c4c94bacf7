import { Tile } from './tile.js';
import type { PageState } from '../page-state.js';
import { TypeLine } from './type-line.js';

/** The line to type a pedal on, and a tile a pedal, in the order in which they stand. */
export function BoardView({ state }: { readonly state: PageState }) {
  const pedals = state.pedals.value;
  const open = pedals.reduce((sum, pedal) => sum + pedal.open.length, 0);
  return (
    <section aria-labelledby="board-heading">
      <h2 id="board-heading">Pedals</h2>
      <TypeLine state={state} />
      {pedals.length === 0 && (
        <p class="minor">No pedal yet. Type its name and what its label says, and press Enter.</p>
      )}
      {open > 0 && (
        <p class="minor">A dashed mark is something that nobody has read yet: choose it to see where to look.</p>
      )}
      <ol class="tiles" aria-label="Pedals on the board">
        {pedals.map((pedal) => (
          <Tile key={pedal.id} pedal={pedal} state={state} />
        ))}
      </ol>
    </section>
  );
}
