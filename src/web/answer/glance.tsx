import type { PageState } from '../page-state.js';

/** The answer in a line, for a screen on which it stands below what is typed; it leads there. */
export function Glance({ state }: { readonly state: PageState }) {
  const { answer, faults } = state.heard.value;
  if (state.pedals.value.length === 0) return null;
  const told = answer?.told;
  const sentence = told === undefined ? '' : told.kind === 'plan' ? told.headline.cost : told.lead.split('. ')[0];
  const standing = faults.length > 0 ? 'To be mended.' : state.isSettled.value ? isProven(told) : 'Searching …';
  return (
    <nav aria-label="The answer in short">
      <a class="glance" href="#answer-heading">
        {sentence} <b>{standing}</b>
      </a>
    </nav>
  );
}

const isProven = (told: { readonly proven: boolean } | undefined): string =>
  told?.proven === true ? 'Proven.' : 'Not proven.';
