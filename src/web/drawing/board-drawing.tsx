import { useEffect, useRef, useState } from 'preact/hooks';

import type { PedalId } from '../../domain/quantities.js';
import type { ToldPlan } from '../worker/told-answer.js';
import { markChanged, type Marks } from './mark-changed.js';
import type { HandState } from './hand.js';

type DrawingProps = {
  readonly figures: ToldPlan['figures'];
  readonly rows: ToldPlan['rows'];
  readonly marks: Marks;
  readonly hand: HandState;
  /** Called with an output that is touched. */
  readonly look: (output: string | null) => void;
};

/** What hangs at the pointer, and what is said of the output below it. */
type Drag = { readonly x: number; readonly y: number; readonly output: string | null };

/** How far the pointer goes before it is meant as a drag, in pixels. */
const slack = 6;

/** The drawing of the reports, in which pedals and leads can be dragged to outputs with a mouse or a pen. */
export function BoardDrawing({ figures, rows, marks, hand, look }: DrawingProps) {
  const board = useRef<HTMLDivElement>(null);
  const start = useRef<{ readonly x: number; readonly y: number; readonly pedal: PedalId } | null>(null);
  const [drag, setDrag] = useState<Drag | null>(null);
  useEffect(() => markOutputs(board.current, hand, drag?.output ?? null), [hand.places, hand.moving, drag?.output]);
  useEffect(() => markChanged(board.current, marks), [marks]);
  const place = hand.places.find(({ output }) => output === drag?.output);

  const down = (event: PointerEvent): void => {
    const pedal = pedalAt(event.target, rows);
    if (pedal === null || event.pointerType === 'touch' || event.button !== 0) return;
    start.current = { x: event.clientX, y: event.clientY, pedal };
    event.preventDefault();
    board.current?.setPointerCapture(event.pointerId);
  };
  const moved = ({ clientX: x, clientY: y }: PointerEvent): void => {
    const from = start.current;
    if (from === null || (drag === null && Math.hypot(x - from.x, y - from.y) < slack)) return;
    if (drag === null) hand.move(from.pedal);
    setDrag({ x, y, output: outputAt(x, y) });
  };
  const up = (): void => {
    const from = start.current;
    start.current = null;
    setDrag(null);
    if (drag !== null && place !== undefined && place.berth !== null) hand.pin(place.berth);
    else if (drag === null && from !== null) hand.move(hand.moving === from.pedal ? null : from.pedal);
  };
  return (
    <div
      ref={board}
      class={drag === null ? 'board-drawing' : 'board-drawing dragging'}
      onPointerDown={down}
      onPointerMove={moved}
      onPointerUp={up}
      onClick={({ target }) => look(outputOf(target))}
      onPointerCancel={() => {
        start.current = null;
        setDrag(null);
      }}
    >
      {figures.map(({ size, markup }, at) => (
        // What the reports draw is escaped already.
        <figure key={at} class={`drawing drawing-${size}`} dangerouslySetInnerHTML={{ __html: markup }} />
      ))}
      {drag !== null && (
        <p class="drag-note" style={{ left: `${drag.x + 14}px`, top: `${drag.y + 14}px` }}>
          {place === undefined ? 'Drop it on an output' : `${place.name}: ${place.text}`}
        </p>
      )}
    </div>
  );
}

/** Shows which outputs are open to what is moved, and which not, until it is let go. */
function markOutputs(board: HTMLElement | null, { places, moving }: HandState, over: string | null) {
  const marked = [...(board?.querySelectorAll('[data-output]') ?? [])];
  const berths = new Map(places.map(({ output, berth }) => [output, berth]));
  for (const element of marked) {
    const output = element.getAttribute('data-output') ?? '';
    element.classList.toggle('can-take', moving !== null && (berths.get(output) ?? null) !== null);
    element.classList.toggle('cannot-take', moving !== null && berths.get(output) === null);
    element.classList.toggle('is-over', output === over);
  }
}

function outputAt(x: number, y: number): string | null {
  const element = document.elementsFromPoint(x, y).find((one) => one.closest('[data-output]') !== null);
  return outputOf(element ?? null);
}

/** The output that is touched; null beside all of them. */
export const outputOf = (target: EventTarget | null): string | null =>
  target instanceof Element ? (target.closest('[data-output]')?.getAttribute('data-output') ?? null) : null;

/** The pedal, or the inlet of a supply, that something in the drawing belongs to: itself, or the one that its lead feeds. */
function pedalAt(target: EventTarget | null, rows: ToldPlan['rows']): PedalId | null {
  if (!(target instanceof Element)) return null;
  const id = target.closest('[data-pedal]')?.getAttribute('data-pedal');
  const lead = target.closest('[data-lead]')?.getAttribute('data-lead');
  return rows.find(({ feed, mark }) => feed.pedal === id || (lead !== undefined && mark === lead))?.feed.pedal ?? null;
}
