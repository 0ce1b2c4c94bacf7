import { useEffect } from 'preact/hooks';

import { AnswerView } from './answer/answer-view.js';
import { Choices } from './answer/choices.js';
import { Glance } from './answer/glance.js';
import { BoardView } from './board/board-view.js';
import { LabelsView } from './answer/labels-view.js';
import { boardName } from './document/board-data.js';
import { DrawingView } from './drawing/drawing-view.js';
import { DropPlace } from './file/drop-place.js';
import { Bar } from './bar.js';
import type { PageState } from './page-state.js';
import { SuppliesView } from './supplies/supplies-view.js';

/** The bench: what is typed, the board, what powers it and how. */
export function Page({ state }: { readonly state: PageState }) {
  useShortcuts(state);
  const name = boardName(state.data.value);
  useEffect(() => void (document.title = `${name} – boardfeed`), [name]);
  return (
    <>
      <Bar state={state} />
      <main class="bench">
        <div class="bench-board">
          <BoardView state={state} />
          <SuppliesView state={state} />
        </div>
        <div class="bench-answer">
          <AnswerView state={state} />
          <Choices state={state} />
          <LabelsView state={state} />
          <DrawingView state={state} />
        </div>
      </main>
      <Glance state={state} />
      <DropPlace state={state} />
    </>
  );
}

/** Undo and redo by the usual keys, but in a field, which has an undo of its own. */
function useShortcuts({ undo, redo }: PageState): void {
  useEffect(() => {
    const pressed = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || isField(event.target)) return;
      const key = event.key.toLowerCase();
      if (key !== 'z' && key !== 'y') return;
      event.preventDefault();
      if (key === 'y' || event.shiftKey) redo();
      else undo();
    };
    addEventListener('keydown', pressed);
    return () => removeEventListener('keydown', pressed);
  }, [undo, redo]);
}

const isField = (target: EventTarget | null): boolean =>
  target instanceof HTMLInputElement && target.type === 'text' && target.value !== '';
