import { useEffect } from 'preact/hooks';

import { AnswerView } from './answer/answer-view.js';
import { Choices } from './answer/choices.js';
import { Glance } from './answer/glance.js';
import { BoardView } from './board/board-view.js';
import { LastBoards } from './board/last-boards.js';
import { LabelsView } from './answer/labels-view.js';
import { boardName } from './document/board-data.js';
import type { Customers } from './customers.js';
import { DrawingView } from './drawing/drawing-view.js';
import { DropPlace } from './file/drop-place.js';
import { Bar } from './bar.js';
import type { PageState } from './page-state.js';
import { StepsView } from './steps/steps-view.js';
import { SuppliesView } from './supplies/supplies-view.js';

/** The bench: what is typed, the board, what powers it and how. */
export function Page({ state, customers }: { readonly state: PageState; readonly customers: Customers }) {
  useShortcuts(state, customers);
  const name = boardName(state.data.value);
  useEffect(() => void (document.title = `${name} – boardfeed`), [name]);
  return (
    <>
      <Bar state={state} customers={customers} />
      <main class="bench">
        <div class="bench-board">
          <BoardView state={state} />
          <SuppliesView state={state} />
          <LastBoards customers={customers} />
        </div>
        <div class="bench-answer">
          <AnswerView state={state} />
          <Choices state={state} />
          <LabelsView state={state} />
          <DrawingView state={state} />
          <StepsView state={state} />
        </div>
      </main>
      <Glance state={state} />
      <DropPlace state={state} />
    </>
  );
}

/** F8 for the next customer; undo and redo by the usual keys, but in a field, which has an undo of its own. */
function useShortcuts({ undo, redo }: PageState, { next }: Customers): void {
  useEffect(() => {
    const pressed = (event: KeyboardEvent): void => {
      if (event.key === 'F8' && !event.repeat) {
        event.preventDefault();
        leaveField();
        next();
        return;
      }
      if (!(event.ctrlKey || event.metaKey) || event.altKey || isField(event.target)) return;
      const key = event.key.toLowerCase();
      if (key !== 'z' && key !== 'y') return;
      event.preventDefault();
      if (key === 'y' || event.shiftKey) redo();
      else undo();
    };
    addEventListener('keydown', pressed);
    return () => removeEventListener('keydown', pressed);
  }, [undo, redo, next]);
}

/** What stands in a field is told to the board that it was typed for. */
const leaveField = (): void => {
  if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
};

const isField = (target: EventTarget | null): boolean =>
  target instanceof HTMLInputElement && target.type === 'text' && target.value !== '';
