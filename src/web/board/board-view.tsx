import { useState } from 'preact/hooks';

import { Tile } from './tile.js';
import type { PageState } from '../page-state.js';
import { useTileOrder } from './tile-order.js';
import { TypeLine } from './type-line.js';

/** The line to type a pedal on, and a tile a pedal, in the order in which they stand. */
export function BoardView({ state }: { readonly state: PageState }) {
  const pedals = state.pedals.value;
  const [said, say] = useState('');
  const order = useTileOrder(state, (index) => {
    const pedal = state.pedals.value[index];
    if (pedal === undefined) return;
    say(`${pedal.name} stands at place ${index + 1} of ${state.pedals.value.length}.`);
    // A tile that is moved in the page loses what the keys go to.
    const active = document.activeElement;
    requestAnimationFrame(() => {
      if (active instanceof HTMLElement) active.focus();
    });
  });
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
          <Tile key={pedal.id} pedal={pedal} state={state} order={order} />
        ))}
      </ol>
      <p class="unseen" role="status">
        {said}
      </p>
    </section>
  );
}
