import type { HookupStep } from '../../report/words/steps.js';
import { plugsOf, ticking, type StepStanding } from '../document/plugging.js';
import type { PageState } from '../page-state.js';
import { Check } from './check.js';

type StepProps = {
  readonly standing: StepStanding;
  /** Where it stands, and where the first stands that is not done. */
  readonly place: { readonly at: number; readonly current: number };
  readonly state: PageState;
  readonly steps: readonly HookupStep[];
};

/** A step: unfolded while it is at its turn; what comes later can be read and not ticked. */
export function Step({ standing: { step, boxes, isDone }, place: { at, current }, state, steps }: StepProps) {
  const { title, text, items, checks } = step;
  const isSingle = items.length === 0 && checks === null;
  const box = (number: number) => ({
    checked: boxes[number] === true,
    disabled: at > current,
    tick: () => {
      state.change(ticking(steps, at, number));
      const isLast = boxes.every((ticked, other) => other === number || ticked);
      if (isLast && boxes[number] === false) goOn(at + 1);
    },
  });
  return (
    <li>
      <details open={at === current}>
        <summary id={`step-${at}`}>
          {title} <span class="minor">{isDone ? 'done' : countOf(boxes)}</span>
        </summary>
        {!isSingle && <p>{text}</p>}
        <ul class="step-boxes">
          {isSingle && (
            <li>
              <Box {...box(0)} text={text} />
            </li>
          )}
          {items.map((item, number) => (
            <li key={item}>
              <Box {...box(number)} text={item} />
            </li>
          ))}
          {plugsOf(step).map((plug, number) => (
            <Check key={number} checks={plug} isDone={boxes[items.length + number] === true}>
              <Box {...box(items.length + number)} text="Reads right" of={`Lead ${plug[0].mark}`} />
            </Check>
          ))}
        </ul>
      </details>
    </li>
  );
}

const countOf = (boxes: readonly boolean[]): string =>
  boxes.length === 1 ? '' : `${boxes.filter(Boolean).length} of ${boxes.length}`;

/** The box that had the focus is folded away. */
const goOn = (at: number): void => {
  requestAnimationFrame(() => document.getElementById(`step-${at}`)?.focus());
};

type BoxProps = {
  readonly checked: boolean;
  readonly disabled: boolean;
  readonly tick: () => void;
  readonly text: string;
  /** What it is about, for whoever does not see what stands beside it. */
  readonly of?: string;
};

const Box = ({ checked, disabled, tick, text, of }: BoxProps) => (
  <label>
    <input type="checkbox" checked={checked} disabled={disabled} onChange={tick} />
    <span>
      {text}
      {of !== undefined && <span class="unseen">: {of}</span>}
    </span>
  </label>
);
