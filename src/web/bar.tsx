import type { Customers } from './customers.js';
import { boardName } from './document/board-data.js';
import { savedBoard } from './file/saved-board.js';
import type { PageState } from './page-state.js';

/** What concerns the whole board: its name, whether it is kept, taking back, saving, and the next one. */
export function Bar({ state, customers }: { readonly state: PageState; readonly customers: Customers }) {
  const { document, data, keeping, notices, canUndo, canRedo, undo, redo, dismissNotices } = state;
  return (
    <header class="bar">
      <h1>{boardName(data.value)}</h1>
      <p class="minor" role="status">
        {keepingText(keeping.value)}
      </p>
      <div class="bar-actions">
        <button type="button" onClick={undo} disabled={!canUndo.value}>
          Undo
        </button>
        <button type="button" onClick={redo} disabled={!canRedo.value}>
          Redo
        </button>
        <button type="button" onClick={() => savedBoard(document.value.board)}>
          Save<span class="roomy"> the board</span>
        </button>
        <button type="button" aria-keyshortcuts="F8" onClick={customers.next}>
          Next customer <span class="minor roomy">F8</span>
        </button>
      </div>
      {notices.value.length > 0 && (
        <div class="notice" role="alert">
          {notices.value.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
          <button type="button" onClick={dismissNotices}>
            Close
          </button>
        </div>
      )}
    </header>
  );
}

function keepingText(keeping: PageState['keeping']['value']): string {
  switch (keeping.kind) {
    case 'kept':
      return 'Kept in this browser';
    case 'keeping':
      return 'Keeping …';
    case 'not kept':
      return keeping.why;
  }
}
