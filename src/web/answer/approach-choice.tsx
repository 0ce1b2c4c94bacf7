import { planning } from '../document/plugging.js';
import type { PageState } from '../page-state.js';

/** Of a board that is plugged: whether it is re-plugged with as few moves as can be or planned from nothing, and what the other would come to. */
export function ApproachChoice({ state }: { readonly state: PageState }) {
  const { start, over, about, answer } = state.heard.value;
  if (start.approach === null || answer === null) return null;
  if (start.approach === 'as plugged')
    return (
      <div class="approach">
        {over?.about === about && <p role="status">{over.text}</p>}
        <button type="button" class="quiet" onClick={() => state.change(planning('from nothing'))}>
          Plan from nothing instead
        </button>
      </div>
    );
  return (
    <div class="approach">
      <p>
        {start.plugged.length === 1 ? 'One pedal is' : `${start.plugged.length} pedals are`} plugged in today; this is
        planned from nothing.
      </p>
      <button type="button" class="quiet" onClick={() => state.change(planning('as plugged'))}>
        Move as few plugs as can be instead
      </button>
    </div>
  );
}
