import { useRef } from 'preact/hooks';

import type { StatedPedal } from '../document/board-data.js';
import { placedAt } from '../document/change-pedal.js';
import type { PageState } from '../page-state.js';

/** Puts tiles in another order, by keys or by pointer. */
export type TileOrder = {
  /** How many there are. */
  readonly count: number;
  /** Puts one so many places further on, where there is such a place. */
  readonly shift: (index: number, by: number) => void;
  /** What makes an element a tile that can be dragged to the place of another one. */
  readonly dragging: (tile: Pick<StatedPedal, 'index' | 'name'>) => DragHandlers;
};

type DragHandlers = Readonly<Record<'onDragStart' | 'onDragOver' | 'onDrop' | 'onDragEnd', (event: DragEvent) => void>>;

/** `moved` is told where the tile stands then. */
export function useTileOrder(state: PageState, moved: (index: number) => void): TileOrder {
  const held = useRef<number | null>(null);
  const count = state.pedals.value.length;
  const put = (from: number, to: number): void => {
    const pedal = state.pedals.value[from];
    if (pedal === undefined || to === from || to < 0 || to >= count) return;
    state.change(placedAt(pedal, to));
    moved(to);
  };
  return {
    count,
    shift: (index, by) => put(index, index + by),
    dragging: ({ index, name }) => ({
      onDragStart: ({ dataTransfer }) => {
        dataTransfer?.setData('text/plain', name);
        held.current = index;
      },
      onDragOver: (event) => {
        if (held.current !== null) event.preventDefault();
      },
      onDrop: (event) => {
        if (held.current === null) return;
        event.preventDefault();
        put(held.current, index);
      },
      onDragEnd: () => (held.current = null),
    }),
  };
}
