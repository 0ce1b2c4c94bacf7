import { useEffect, useState } from 'preact/hooks';

import type { PageState } from '../page-state.js';
import { openFiles } from './open-files.js';

/** Files may be dropped anywhere; while they are held over the page it says so. */
export function DropPlace({ state }: { readonly state: PageState }) {
  const [isOver, show] = useState(false);
  useEffect(() => {
    const over = (event: DragEvent): void => {
      if (event.dataTransfer?.types.includes('Files') !== true) return;
      event.preventDefault();
      show(true);
    };
    // Within the page a drag leaves one thing to enter another one: only at its edge is there none.
    const left = (event: DragEvent): void => {
      if (event.relatedTarget === null) show(false);
    };
    const dropped = (event: DragEvent): void => {
      show(false);
      const files = [...(event.dataTransfer?.files ?? [])];
      if (files.length === 0) return;
      event.preventDefault();
      void openFiles(state, files);
    };
    const handlers = [
      ['dragover', over],
      ['dragleave', left],
      ['drop', dropped],
    ] as const;
    for (const [name, handler] of handlers) addEventListener(name, handler);
    return () => {
      for (const [name, handler] of handlers) removeEventListener(name, handler);
    };
  }, [state]);
  return isOver ? <p class="drop-place">Drop a board, a shop or a table here.</p> : null;
}
