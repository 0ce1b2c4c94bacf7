import type { PageState } from '../page-state.js';
import type { ToldLabels } from '../worker/told-labels.js';

/** How many labels stand there unfolded. */
const mostShown = 3;

const headings = {
  first: 'read this first',
  purchase: 'decides what to buy',
  unknown: 'not settled yet',
  wiring: 'decides only how it is wired',
} as const;

/** What is told of labels for the plan beside which they stand; null where there is nothing to read. */
export function labelsOf({ heard }: PageState): ToldLabels | null {
  const { labels, answer } = heard.value;
  if (labels === null || labels.about !== answer?.about) return null;
  return labels.told.deciding.length === 0 && labels.told.others === null ? null : labels.told;
}

/** The labels to read first. */
export function LabelsView({ state }: { readonly state: PageState }) {
  const told = labelsOf(state);
  if (told === null) return null;
  const { deciding, others } = told;
  const [first, rest] = [deciding.slice(0, mostShown), deciding.slice(mostShown)];
  return (
    <section aria-labelledby="labels-heading">
      <h2 id="labels-heading">Labels to read</h2>
      {first.length === 0 ? <p>No label that is open changes what to buy.</p> : <LabelList labels={first} />}
      {(rest.length > 0 || others !== null) && (
        <details>
          <summary>The other labels</summary>
          <LabelList labels={rest} />
          {others !== null && <p>{others}</p>}
        </details>
      )}
    </section>
  );
}

function LabelList({ labels }: { readonly labels: ToldLabels['deciding'] }) {
  return (
    <ul>
      {labels.map(({ weight, text }) => (
        <li key={text}>
          <b>{headings[weight]}: </b>
          {text}
        </li>
      ))}
    </ul>
  );
}
