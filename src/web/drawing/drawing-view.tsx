import type { PageState } from '../page-state.js';

/** The board with all its leads. */
export function DrawingView({ state }: { readonly state: PageState }) {
  const { answer } = state.heard.value;
  if (answer?.told.kind !== 'plan' || state.pedals.value.length === 0) return null;
  return (
    <section aria-labelledby="drawing-heading">
      <h2 id="drawing-heading">How it is plugged</h2>
      {answer.told.figures.map(({ size, markup }, at) => (
        // What the reports draw is escaped already.
        <figure key={at} class={`drawing drawing-${size}`} dangerouslySetInnerHTML={{ __html: markup }} />
      ))}
    </section>
  );
}
