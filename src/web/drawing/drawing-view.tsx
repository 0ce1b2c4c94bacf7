import { useState } from 'preact/hooks';

import { whatChanged } from '../answer/what-changed.js';
import { pinnedAt } from '../document/pins.js';
import type { PageState } from '../page-state.js';
import type { ToldChoice } from '../worker/told-choices.js';
import type { ToldPlan } from '../worker/told-answer.js';
import { BoardDrawing } from './board-drawing.js';
import { DrawingKey } from './drawing-key.js';
import { usePlaces, type HandState } from './hand.js';
import { LeadList } from './lead-list.js';
import { marksOf } from './mark-changed.js';
import { RePlugged } from './re-plugged.js';
import { Rooms, TouchedRoom } from './rooms.js';

/** The board with all its leads: a drawing in which leads can be moved, and the same as a list. */
export function DrawingView({ state }: { readonly state: PageState }) {
  const { answer } = state.heard.value;
  const choice = state.choice.value;
  if (choice !== null) return <Looked choice={choice} />;
  if (answer?.told.kind !== 'plan' || state.pedals.value.length === 0) return null;
  const { told } = answer;
  return told.changes === null ? (
    <Plugged state={state} plan={told} />
  ) : (
    <RePlugged state={state} plan={told} kinds={told.changes.kinds} />
  );
}

/** The plan of a choice, to be looked at: leads are moved in the answer. */
const Looked = ({ choice: { plan, words } }: { readonly choice: ToldChoice }) => (
  <section aria-labelledby="drawing-heading">
    <h2 id="drawing-heading">How it is plugged: {words.label}</h2>
    {plan.figures.map(({ size, markup }, at) => (
      // What the reports draw is escaped already.
      <figure key={at} class={`drawing drawing-${size}`} dangerouslySetInnerHTML={{ __html: markup }} />
    ))}
    <DrawingKey entries={plan.key} />
  </section>
);

function Plugged({ state, plan }: { readonly state: PageState; readonly plan: ToldPlan }) {
  const places = usePlaces(state, plan);
  const { moving, move } = places;
  const [looked, look] = useState<string | null>(null);
  const changed = whatChanged(state.earlier.value, plan);
  const pin: HandState['pin'] = (berth, company) => {
    if (moving !== null) state.change(pinnedAt(moving, berth, plan.pinned, company));
    move(null);
  };
  return (
    <section aria-labelledby="drawing-heading">
      <h2 id="drawing-heading">How it is plugged</h2>
      <p class="minor">
        Drag a pedal to another output, or choose “Move” in the list below. All else is planned around it.
      </p>
      <TouchedRoom rooms={plan.rooms} output={looked} />
      <BoardDrawing
        figures={plan.figures}
        rows={plan.rows}
        marks={marksOf(changed)}
        hand={{ ...places, pin }}
        look={look}
      />
      <LeadList state={state} rows={plan.rows} pinned={plan.pinned} changed={changed} hand={{ ...places, pin }} />
      <DrawingKey entries={plan.key} />
      <Rooms rooms={plan.rooms} />
    </section>
  );
}
