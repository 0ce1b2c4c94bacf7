import { useEffect, useRef, useState } from 'preact/hooks';

import type { Feed } from '../../domain/plan.js';
import type { Berth } from '../../planning/check/places-for.js';
import type { ChangeKind } from '../../report/words/change-words.js';
import type { ReplugWords } from '../../report/words/handout.js';
import { letGo, pinnedAt } from '../document/pins.js';
import type { PageState } from '../page-state.js';
import type { ToldPlan } from '../worker/told-answer.js';
import { whereText } from '../answer/what-changed.js';
import { outputOf } from './board-drawing.js';
import { DrawingKey } from './drawing-key.js';
import { usePlaces } from './hand.js';
import { Places } from './lead-list.js';
import { markChanged } from './mark-changed.js';
import { Rooms, TouchedRoom } from './rooms.js';

type Kinds = ReplugWords['kinds'];
type RePluggedProps = { readonly state: PageState; readonly plan: ToldPlan; readonly kinds: Kinds };

/** The board as it is when it has been re-plugged: only what changes is marked, and what moves can be kept where it is. */
export function RePlugged({ state, plan, kinds }: RePluggedProps) {
  const [looked, look] = useState<string | null>(null);
  const { moving: asked, move: ask, places } = usePlaces(state, plan);
  const canKeep = plan.rows.some((row) => placeToday(state, row, kinds) !== null);
  return (
    <section aria-labelledby="drawing-heading">
      <h2 id="drawing-heading">{plan.steps.length === 0 ? 'How it is plugged' : 'How it is plugged then'}</h2>
      {plan.steps.length > 0 && (
        <p class="minor">
          What changes is marked.{canKeep && ' Keep a pedal where it is, and all else is planned around it.'}
        </p>
      )}
      <TouchedRoom rooms={plan.rooms} output={looked} />
      <MarkedDrawing figures={plan.figures} kinds={kinds} look={look} />
      <ol class="leads" aria-label="Leads">
        {plan.rows.map((row) => (
          <li key={row.feed.pedal}>
            <span>
              <span class="lead-place">
                <b>{row.mark}</b> {row.pedal}: {whereText(row)}
              </span>
              <ChangeMark kind={kinds.get(row.feed.pedal)} />
            </span>
            <Keep state={state} row={row} kinds={kinds} />
            <button
              type="button"
              class="quiet"
              aria-expanded={asked === row.feed.pedal}
              onClick={() => ask(asked === row.feed.pedal ? null : row.feed.pedal)}
            >
              Why there?<span class="unseen"> {row.pedal}</span>
            </button>
            {asked === row.feed.pedal && <Places name={row.pedal} hand={{ places }} />}
          </li>
        ))}
      </ol>
      <DrawingKey entries={plan.key} />
      <Rooms rooms={plan.rooms} />
    </section>
  );
}

/** Each with a sign and a word; whoever stays goes without saying. */
const kindMarks: Readonly<Record<ChangeKind, string | null>> = {
  stays: null,
  'gets other leads': '~ other leads',
  moves: '→ moves',
  'is new': '+ new',
  'is unplugged': '− unplugged',
};

function ChangeMark({ kind }: { readonly kind: ChangeKind | undefined }) {
  const mark = kind === undefined ? null : kindMarks[kind];
  return mark === null ? null : (
    <>
      {' '}
      <b class="change">{mark}</b>
    </>
  );
}

type Row = ToldPlan['rows'][number];
type KeepProps = Omit<RePluggedProps, 'plan'> & { readonly row: Row };

/** Where a pedal that moves, or an inlet, is plugged today; null where it stays, is pinned or is new. */
function placeToday({ document, heard }: PageState, { feed }: Row, kinds: Kinds): Berth | null {
  const { pedal } = feed;
  if (document.value.pins.some((pin) => pin.pedal === pedal)) return null;
  const today = heard.value.start.plugged.find((one) => one.pedal === pedal);
  // What becomes of the inlet of a supply is no change of a pedal.
  const moves = today !== undefined && (kinds.get(pedal) === 'moves' || isElsewhere(feed, today));
  return moves ? today : null;
}

function Keep({ state, row, kinds }: KeepProps) {
  const { pedal } = row.feed;
  const name = row.pedal;
  if (state.document.value.pins.some((pin) => pin.pedal === pedal))
    return (
      <button type="button" class="quiet" onClick={() => state.change(letGo(pedal))}>
        Kept: let go<span class="unseen"> of {name}</span>
      </button>
    );
  const today = placeToday(state, row, kinds);
  if (today === null) return null;
  return (
    <button type="button" class="quiet" onClick={() => state.change(pinnedAt(pedal, today))}>
      Keep it where it is<span class="unseen">: {name}</span>
    </button>
  );
}

const isElsewhere = ({ inletOf, supply, unit, outputs }: Feed, today: Berth): boolean =>
  inletOf !== undefined && (supply !== today.supply || unit !== today.unit || outputs.join() !== today.outputs.join());

type MarkedProps = {
  readonly figures: ToldPlan['figures'];
  readonly kinds: Kinds;
  readonly look: (output: string | null) => void;
};

function MarkedDrawing({ figures, kinds, look }: MarkedProps) {
  const board = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const marks = [...kinds].map(([pedal, kind]) => [pedal, kindMarks[kind]] as const);
    markChanged(board.current, new Map(marks.flatMap(([pedal, mark]) => (mark === null ? [] : [[pedal, mark]]))));
  }, [figures, kinds]);
  return (
    <div ref={board} onClick={({ target }) => look(outputOf(target))}>
      {figures.map(({ size, markup }, at) => (
        // What the reports draw is escaped already.
        <figure key={at} class={`drawing drawing-${size}`} dangerouslySetInnerHTML={{ __html: markup }} />
      ))}
    </div>
  );
}
