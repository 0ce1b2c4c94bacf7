import type { PageState } from '../page-state.js';
import { labelsOf } from './labels-view.js';
import { linesLeftOut } from './left-out.js';

/** The answer in a line, for a screen on which it stands below what is typed, and the way to each part of the page. */
export function Glance({ state }: { readonly state: PageState }) {
  if (state.pedals.value.length === 0) return null;
  return (
    <nav aria-label="The answer in short" class="glance">
      <a class="glance-answer" href="#answer-heading">
        {sentenceOf(state)} <b>{standingOf(state)}</b>
      </a>
      <ul>
        {partsOf(state).map(({ to, words }) => (
          <li key={to}>
            <a href={`#${to}-heading`}>{words}</a>
          </li>
        ))}
      </ul>
    </nav>
  );
}

function sentenceOf({ heard, choice }: PageState): string {
  const told = choice.value?.plan ?? heard.value.answer?.told;
  if (told === undefined) return '';
  return told.kind === 'plan' ? told.headline.cost : (told.lead.split('. ')[0] ?? '');
}

function standingOf(state: PageState): string {
  const { heard, choice, isSettled } = state;
  const { answer, faults } = heard.value;
  if (faults.length > 0) return 'To be mended.';
  if (linesLeftOut(state).length > 0) return 'A line is left out.';
  if (!isSettled.value) return 'Searching …';
  if (choice.value !== null) return `${choice.value.words.label}.`;
  if (answer?.told.proven === true) return 'Proven.';
  // Of a plan or a list there may be a better one; that there is none at all is said in the sentence.
  return answer?.told.kind === 'none' && answer.told.wanted.length === 0 ? '' : 'Not proven.';
}

/** Those that are there, by what their headings are called. */
function partsOf(state: PageState) {
  const { heard, choice, isSettled } = state;
  const { about, answer, choices } = heard.value;
  const plan = choice.value?.plan ?? (answer?.told.kind === 'plan' ? answer.told : null);
  const count = choices?.about === about ? choices.told.choices.length : 0;
  return [
    { to: 'board', words: 'Pedals', isThere: true },
    { to: 'choices', words: count === 1 ? '1 choice' : `${count} choices`, isThere: count > 0 },
    { to: 'labels', words: 'Labels', isThere: labelsOf(state) !== null },
    { to: 'drawing', words: 'Drawing', isThere: plan !== null },
    { to: 'steps', words: 'Steps', isThere: isSettled.value && plan !== null && plan.steps.length > 0 },
  ].filter(({ isThere }) => isThere);
}
