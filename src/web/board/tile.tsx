import { useState } from 'preact/hooks';

import { circuitKinds } from '../../domain/circuit-kinds.js';
import type { UnknownField } from '../../domain/pedal.js';
import { openWords } from '../../reading/drafts/pedal-draft.js';
import { isNotOnLabel } from '../document/change-pedal.js';
import { figuresOf } from './figures.js';
import { MendPanel } from './mend-panel.js';
import { OpenPanel } from './open-panel.js';
import type { TileOrder } from './tile-order.js';
import type { TileProps } from './tile-props.js';

/** A pedal: what its label says, what nobody has read, and what can be done about either. */
export function Tile({ pedal, state, order }: TileProps & { readonly order: TileOrder }) {
  const [shown, show] = useState<UnknownField | 'mend' | null>(null);
  const { id, name, open, stated } = pedal;
  const field = open.find((one) => one === shown);
  const close = (): void => {
    show(null);
    requestAnimationFrame(() => document.getElementById(`tile-${id}`)?.focus());
  };
  const shifted = (event: KeyboardEvent): void => {
    const by = event.key === 'ArrowLeft' ? -1 : event.key === 'ArrowRight' ? 1 : null;
    if (by === null || !event.shiftKey) return;
    event.preventDefault();
    order.shift(pedal.index, by);
  };
  return (
    <li class={open.length === 0 ? 'tile' : 'tile tile-open'} draggable={shown === null} {...order.dragging(pedal)}>
      <h3>
        <button
          type="button"
          id={`tile-${id}`}
          class="tile-name"
          aria-expanded={shown === 'mend'}
          aria-keyshortcuts="Shift+ArrowLeft Shift+ArrowRight"
          onKeyDown={shifted}
          onClick={() => show(shown === 'mend' ? null : 'mend')}
        >
          {name}
        </button>
      </h3>
      <p class="tile-figures">{figuresOf(pedal).join(' · ')}</p>
      {open.length > 0 && (
        <ul class="marks" aria-label={`Not known of ${name}`}>
          {open.map((one) => (
            <li key={one}>
              <button
                type="button"
                class={isNotOnLabel(state.document.value, pedal, one) ? 'mark mark-sought' : 'mark'}
                aria-expanded={shown === one}
                onClick={() => show(shown === one ? null : one)}
              >
                {openWords[one]}
                {isNotOnLabel(state.document.value, pedal, one) ? ': not on the label' : ''}
                <span class="unseen"> of {name}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      <PlannedAs circuit={open.includes('milliamps') ? stated['circuit'] : null} />
      {field !== undefined && <OpenPanel pedal={pedal} state={state} field={field} close={close} />}
      {shown === 'mend' && <MendPanel pedal={pedal} state={state} order={order} close={close} />}
    </li>
  );
}

/** What a draw that nobody has read is planned as. */
function PlannedAs({ circuit }: { readonly circuit: unknown }) {
  const kind = circuitKinds.find(({ key }) => key === circuit);
  if (kind === undefined) return null;
  return (
    <p class="minor">
      planned as {kind.label}: {kind.planningMilliamps} mA
    </p>
  );
}
