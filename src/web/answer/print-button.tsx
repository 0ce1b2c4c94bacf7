import type { PageState } from '../page-state.js';
import type { SheetOrder } from '../worker/messages.js';

type PrintButtonProps = { readonly state: PageState; readonly of: SheetOrder['of']; readonly children: string };

/** Has a sheet printed, at once or as soon as what it shows is there. */
export const PrintButton = ({ state, of, children }: PrintButtonProps) => (
  <button
    type="button"
    class="print"
    // Leaving a field may change the answer and move the button while it is pressed: the click is still its own.
    onPointerDown={({ currentTarget, pointerId }) => currentTarget.setPointerCapture(pointerId)}
    onClick={() => state.printSheet(of)}
  >
    {children}
  </button>
);
