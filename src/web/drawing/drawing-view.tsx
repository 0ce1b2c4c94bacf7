import type { PageState } from '../page-state.js';
import type { Figure } from './figures.js';

/** The supplies with all that hangs on them. */
export function DrawingView({ state }: { readonly state: PageState }) {
  const { answer } = state.heard.value;
  if (answer?.told.kind !== 'plan' || state.pedals.value.length === 0) return null;
  return (
    <section aria-labelledby="drawing-heading">
      <h2 id="drawing-heading">How it is plugged</h2>
      {answer.told.figures.map((figure) => (
        <Drawing key={figure.name} figure={figure} />
      ))}
    </section>
  );
}

function Drawing({ figure: { name, owned, wide, narrow } }: { readonly figure: Figure }) {
  return (
    <figure class="drawing">
      <figcaption>
        {name} ({owned ? 'yours' : 'to buy'})
      </figcaption>
      {/* What the reports draw is escaped already. */}
      <div class="drawing-wide" dangerouslySetInnerHTML={{ __html: wide }} />
      <div class="drawing-narrow" dangerouslySetInnerHTML={{ __html: narrow }} />
    </figure>
  );
}
