import type { PageState } from '../page-state.js';
import { ApproachChoice } from './approach-choice.js';
import { Changes } from './changes.js';
import { Faults } from './faults.js';
import { FirstSteps } from './first-steps.js';
import { LeftOut } from './left-out.js';
import { PrintButton } from './print-button.js';
import { WaysOut } from './ways-out.js';
import { changedText, changeMarks, whatChanged, type Change, type Changed } from './what-changed.js';
import { letGo } from '../document/pins.js';
import type { Bill, ToldAnswer, ToldNoPlan, ToldPlan } from '../worker/told-answer.js';

/** What powers the board, in sentences, while it is sought and when it is proven. */
export function AnswerView({ state }: { readonly state: PageState }) {
  const { failure } = state.heard.value;
  const isEmpty = state.pedals.value.length === 0;
  return (
    <section aria-labelledby="answer-heading" class="answer">
      <h2 id="answer-heading">The answer</h2>
      <p class="standing" role="status">
        {isEmpty ? 'It appears here as soon as there is a pedal.' : standingOf(state)}
      </p>
      <LeftOut state={state} />
      {failure !== null && <p class="care">Something is wrong with boardfeed itself: {failure}</p>}
      {isEmpty ? <FirstSteps /> : <Said state={state} />}
      {!isEmpty && hasSheet(state.heard.value) && (
        <PrintButton state={state} of="plan">
          Print the sheet
        </PrintButton>
      )}
      {!isEmpty && <ApproachChoice state={state} />}
    </section>
  );
}

/** For what is told of the board as it is; where pins are in each other's way there is nothing to take home. */
function hasSheet({ answer, faults }: PageState['heard']['value']): boolean {
  if (answer === null || faults.length > 0) return false;
  return answer.told.kind === 'plan' || answer.told.letGo.length === 0;
}

function Said({ state }: { readonly state: PageState }) {
  const { answer, faults, more, ways, about } = state.heard.value;
  const choice = state.choice.value;
  // Ways out say all that a mere reason says, and what to do about it.
  const isOutdone = answer?.told.kind === 'none' && ways?.about === about;
  const first = readFirst(state.heard.value);
  return (
    <>
      {faults.length > 0 && <Faults state={state} faults={faults} more={more} />}
      {choice !== null && <Plan plan={choice.plan} first={first} before={null} />}
      {choice === null && answer !== null && !isOutdone && (
        <Told told={answer.told} first={first} before={state.earlier.value} />
      )}
      {choice === null && answer?.told.kind === 'none' && <Ways state={state} letGo={answer.told.letGo} />}
    </>
  );
}

/** What is to be read before anything of this answer is bought. */
const readFirst = ({ answer, labels }: PageState['heard']['value']): string | null =>
  labels?.about === answer?.about ? (labels?.told.first ?? null) : null;

function Ways({ state, letGo: pedals }: { readonly state: PageState; readonly letGo: ToldNoPlan['letGo'] }) {
  const { ways, about } = state.heard.value;
  return (
    <>
      <LetGo state={state} letGo={pedals} />
      {ways?.about === about && <WaysOut state={state} ways={ways.told} />}
    </>
  );
}

/** In words, not by a spinner alone. */
function standingOf(state: PageState): string {
  const { answer, faults } = state.heard.value;
  if (faults.length > 0) return 'Before there is an answer, this must be mended.';
  if (answer === null)
    return state.isSettled.value ? 'Before there is an answer, say what the columns of the shop hold.' : 'Searching …';
  const choice = state.choice.value;
  if (choice !== null) return [`${choice.words.label}.`, ...choice.words.notes].join(' ');
  if (!state.isSettled.value) return 'Searching … this is the best so far.';
  const { told } = answer;
  return told.kind === 'plan' ? told.headline.standing : told.lead;
}

/** The plan that was told before, which what is told now is held against. */
type Before = {
  readonly before: ToldPlan | null;
  /** What is to be read before anything is bought. */
  readonly first: string | null;
};

function Told({ told, ...rest }: Before & { readonly told: ToldAnswer }) {
  return told.kind === 'plan' ? <Plan plan={told} {...rest} /> : <NoPlan told={told} />;
}

function Plan({ plan, before, first }: Before & { readonly plan: ToldPlan }) {
  const { headline, bill, changes, confirm, cautions } = plan;
  // What is re-plugged is held against how the board is plugged today, not against an answer before.
  const changed = whatChanged(changes === null ? before : null, plan);
  const since = changedText(changed);
  return (
    <>
      <p class="headline">
        {headline.cost} {headline.counts}
      </p>
      {since !== null && <p>{since}</p>}
      {changes !== null && plan.steps.length > 0 && <Changes changes={changes} />}
      {bill.lines.length > 0 && first !== null && <p class="care">{first}</p>}
      {bill.lines.length + changed.billGone.length > 0 && <BillTable bill={bill} changed={changed} />}
      <Remarks title="Confirm before plugging in" remarks={confirm} />
      <Remarks title="Cautions" remarks={cautions} />
    </>
  );
}

/** Each of these is a way out. */
function LetGo({ state, letGo: pedals }: { readonly state: PageState; readonly letGo: ToldNoPlan['letGo'] }) {
  return (
    <>
      {pedals.map(({ pedal, name }) => (
        <button key={pedal} type="button" onClick={() => state.change(letGo(pedal))}>
          Let go of {name}
        </button>
      ))}
    </>
  );
}

type BillProps = { readonly bill: Bill; readonly changed: Changed };

function BillTable({ bill: { lines, total }, changed }: BillProps) {
  return (
    <table class="bill">
      <caption class="unseen">What to buy</caption>
      <tbody>
        {lines.map(({ units, name, price }) => (
          <tr key={name}>
            <th scope="row">
              {units} × {name} <BillMark {...changed.bill.get(name)} />
            </th>
            <td>{price}</td>
          </tr>
        ))}
        {changed.billGone.map(({ units, name }) => (
          <tr key={`gone ${name}`}>
            <th scope="row">
              <del>
                {units} × {name}
              </del>{' '}
              <BillMark change="gone" />
            </th>
            <td />
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">Total</th>
          <td>{total}</td>
        </tr>
      </tfoot>
    </table>
  );
}

function BillMark({ change, was = 0 }: { readonly change?: Change; readonly was?: number }) {
  if (change === undefined) return null;
  return (
    <>
      <b class="change">{changeMarks[change]}</b>
      {was > 0 && <span class="minor"> was {was}</span>}
    </>
  );
}

function Remarks({ title, remarks }: { readonly title: string; readonly remarks: ToldPlan['confirm'] }) {
  if (remarks.length === 0) return null;
  return (
    <details>
      <summary>
        {title} ({remarks.length})
      </summary>
      <ul>
        {remarks.map(({ text, care }) => (
          <li key={text} class={care ? 'care' : undefined}>
            {text}
          </li>
        ))}
      </ul>
    </details>
  );
}

function NoPlan({ told: { passages } }: { readonly told: Extract<ToldAnswer, { kind: 'none' }> }) {
  return (
    <>
      {passages.map(({ title, entries }) => (
        <div key={title}>
          <h3>{title}</h3>
          <ul>
            {entries.map(({ name, text, below }) => (
              <li key={`${name ?? ''} ${text}`}>
                {name !== null && <b>{name} </b>}
                {text}
                {below.length > 0 && (
                  <ul>
                    {below.map((line) => (
                      <li key={line}>{line}</li>
                    ))}
                  </ul>
                )}
              </li>
            ))}
          </ul>
        </div>
      ))}
    </>
  );
}
