import type { PageState } from '../page-state.js';
import { besideOthers, choosing, mostBeside } from '../document/choose.js';
import type { ToldChoice, ToldChoices } from '../worker/told-choices.js';
import { AskedFor } from './asked-for.js';
import { Beside } from './beside.js';
import { PrintButton } from './print-button.js';

/** What else could be bought, from the cheapest on: touching one shows its whole plan, two or three stand side by side. */
export function Choices({ state }: { readonly state: PageState }) {
  const { about, choices, things, isDone, start } = state.heard.value;
  const told = choices?.about === about ? choices.told : null;
  const isForSale = things.some(({ price }) => price !== null);
  // Around pins, and for what is plugged today, nothing else is sought.
  const isSought = !isDone && state.document.value.pins.length === 0 && start.approach !== 'as plugged';
  if (state.pedals.value.length === 0 || !isForSale || (told === null && !isSought)) return null;
  return (
    <section aria-labelledby="choices-heading" class="answer">
      <h2 id="choices-heading">{told?.choices.length === 1 ? 'The one choice' : 'The choices'}</h2>
      <p class="minor" role="status">
        {told === null ? 'Looking for what else could be bought …' : told.standing}
      </p>
      {told?.choices.length !== 0 && (
        <PrintButton state={state} of="choices">
          Print the choices
        </PrintButton>
      )}
      {told !== null && <Told told={told} state={state} />}
      <AskedFor state={state} />
    </section>
  );
}

function Told({ told, state }: { readonly told: ToldChoices; readonly state: PageState }) {
  const { beside } = state.document.value;
  const pinned = told.choices.filter(({ key }) => beside.includes(key));
  return (
    <>
      <ol class="choice-row">
        {told.choices.map((choice) => (
          <Choice key={choice.key} choice={choice} state={state} isFull={pinned.length >= mostBeside} />
        ))}
      </ol>
      {told.ofAsked.map((text) => (
        <p key={text}>{text}</p>
      ))}
      <Beside choices={pinned} titles={told.titles} />
      <details>
        <summary>What the figures mean</summary>
        <p>{told.legend}</p>
      </details>
    </>
  );
}

type ChoiceProps = { readonly choice: ToldChoice; readonly state: PageState; readonly isFull: boolean };

function Choice({ choice, state, isFull }: ChoiceProps) {
  const { key, words, isOverBudget, isAnswer } = choice;
  const shown = state.choice.value;
  const isShown = shown === null ? isAnswer : shown.key === key;
  const isPinned = state.document.value.beside.includes(key);
  return (
    <li class={isOverBudget ? 'choice choice-over' : 'choice'}>
      <button
        type="button"
        class="choice-name"
        aria-pressed={isShown}
        onClick={() => state.change(choosing(isAnswer ? null : key))}
      >
        <b>{words.price}</b> {words.label}
      </button>
      <ul class="choice-bill">
        {words.bill.map(({ text, price }) => (
          <li key={text}>
            {text}, <span class="amount">{price}</span>
          </li>
        ))}
        {words.bill.length === 0 && <li>Nothing to buy</li>}
      </ul>
      {words.notes.map((note) => (
        <p key={note} class={isOverBudget ? 'care' : 'minor'}>
          {note}
        </p>
      ))}
      <p class="minor">{words.noise.length === 0 ? 'Nobody exposed to noise' : `May hum: ${words.noise.join('; ')}`}</p>
      <label class="choice-pin">
        <input
          type="checkbox"
          checked={isPinned}
          disabled={isFull && !isPinned}
          onChange={() => state.change(besideOthers(key))}
        />{' '}
        Set beside others<span class="unseen">: {words.label}</span>
      </label>
    </li>
  );
}
