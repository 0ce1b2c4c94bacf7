import { isBegunOtherwise, standingOf } from '../document/plugging.js';
import type { PageState } from '../page-state.js';
import type { ToldPlan } from '../worker/told-answer.js';
import { Step } from './step.js';

/** How to plug what is shown, one step after the other, with boxes to tick, until it is how the board is plugged. */
export function StepsView({ state }: { readonly state: PageState }) {
  const { answer } = state.heard.value;
  const told = answer?.told;
  const plan = state.choice.value?.plan ?? (told?.kind === 'plan' ? told : null);
  if (plan === null || !state.isSettled.value || state.pedals.value.length === 0) return null;
  const isRePlug = plan.changes !== null;
  if (plan.steps.length === 0) return isRePlug ? <AsPlugged /> : null;
  return (
    <section aria-labelledby="steps-heading">
      <h2 id="steps-heading">{isRePlug ? 'Re-plug it' : 'Plug it in'}, step by step</h2>
      <Steps state={state} plan={plan} />
    </section>
  );
}

/** What there is where nothing has to be done. */
const AsPlugged = () => (
  <section aria-labelledby="steps-heading">
    <h2 id="steps-heading">It is plugged like this</h2>
    <p>
      Type a new pedal, or take one off, and what moves is planned from here. “Save the board” gives the file in which
      it stands.
    </p>
  </section>
);

function Steps({ state, plan: { steps } }: { readonly state: PageState; readonly plan: ToldPlan }) {
  const standing = standingOf(steps, state.document.value);
  const open = standing.findIndex(({ isDone }) => !isDone);
  const current = open < 0 ? steps.length : open;
  return (
    <>
      {isBegunOtherwise(steps, state.document.value) && (
        <p class="care">
          The plan is another one than that whose steps you have ticked. “Undo” leads back to it. Else pull all supplies
          from the mains, put back what you have moved, and begin with the first step.
        </p>
      )}
      <p role="status" class="minor">
        {current === steps.length
          ? 'All steps are done.'
          : `Step ${current + 1} of ${steps.length}: ${steps[current]?.title ?? ''}.`}
      </p>
      <ol class="step-list">
        {standing.map((one, at) => (
          <Step key={at} standing={one} place={{ at, current }} state={state} steps={steps} />
        ))}
      </ol>
      <Finish isDone={current === steps.length} plugged={state.plugged} />
    </>
  );
}

type FinishProps = { readonly isDone: boolean; readonly plugged: () => void };

/** Whoever knows the way need not tick every box. */
const Finish = ({ isDone, plugged }: FinishProps) => (
  <>
    <button type="button" class={isDone ? 'finish' : 'quiet'} onClick={plugged}>
      {isDone ? 'Done: it is plugged like this now' : 'It is plugged like this already'}
    </button>
    <p class="minor">
      From then on the board has it as its wiring, with the number of every lead, and what it buys as yours. “Undo”
      takes it back.
    </p>
  </>
);
