import type { UnknownField } from '../../domain/pedal.js';
import { openWords } from '../../reading/drafts/pedal-draft.js';
import { listText } from '../../report/words/words.js';
import type { StatedPedal } from '../document/board-data.js';
import { sayingOf } from '../document/change-pedal.js';
import type { PageState } from '../page-state.js';
import type { ToldFault } from '../worker/messages.js';

type FaultsProps = {
  readonly state: PageState;
  readonly faults: readonly ToldFault[];
  readonly more: number;
};

/** What is wrong with the files; what a board leaves unsaid of pedals can be marked as not read here. */
export function Faults({ state, faults, more }: FaultsProps) {
  const isOwned = faults.some(({ of, key }) => of === 'board' && /^(?:owned|wiring)/.test(key));
  return (
    <>
      {state.document.value.shop === null && isOwned && (
        <p>What this board has may be from a shop: open that shop, too, and boardfeed knows what it is.</p>
      )}
      <ul class="faults">
        {faults.map((fault) => (
          <Fault key={`${fault.of} ${fault.where} ${fault.message}`} state={state} fault={fault} />
        ))}
        {more > 0 && <li>{more} more.</li>}
      </ul>
    </>
  );
}

function Fault({ state, fault }: { readonly state: PageState; readonly fault: ToldFault }) {
  const unsaid = unsaidIn(fault, state.pedals.value);
  if (unsaid === null) {
    const { of, where, message, remedy } = fault;
    return (
      <li>
        {of === 'board' ? 'The board' : 'The shop'}, {where}: {message} {remedy}
      </li>
    );
  }
  const { field, pedals } = unsaid;
  const mark = (): void =>
    state.change((document) => pedals.reduce((so, pedal) => sayingOf(pedal, { [field]: 'unknown' })(so), document));
  return (
    <li>
      The board does not say of {listText(pedals.map(({ name }) => name))}: {openWords[field]}. Choose a name to say
      what its label says, or mark it as{' '}
      <button type="button" onClick={mark}>
        Not read yet<span class="unseen"> of {listText(pedals.map(({ name }) => name))}</span>
      </button>
    </li>
  );
}

/** The pedals of which a board says nothing of a field that a plan may leave open; null where something else is wrong. */
function unsaidIn(
  { of, key, alike }: ToldFault,
  pedals: readonly StatedPedal[],
): { readonly field: UnknownField; readonly pedals: readonly StatedPedal[] } | null {
  const places = [key, ...alike].map((one) => /^pedals\[(\d+)\]\.(polarity|ground)$/.exec(one));
  const field = places[0]?.[2] === 'polarity' ? 'polarity' : 'ground';
  const found = places.flatMap((place) => pedals[Number(place?.[1] ?? -1)] ?? []);
  const isAll = found.length === places.length && found.every(({ stated }) => stated[field] === undefined);
  return of === 'board' && isAll ? { field, pedals: found } : null;
}
