import type { ToldChoice } from '../worker/told-choices.js';

/** Choices side by side, each with its figures and its small drawing. */
export function Beside({
  choices,
  titles,
}: {
  readonly choices: readonly ToldChoice[];
  readonly titles: readonly string[];
}) {
  if (choices.length === 0) return null;
  return (
    <ul class="beside" aria-label="Side by side">
      {choices.map(({ key, words, small }) => (
        <li key={key}>
          <h3>
            {words.price} {words.label}
          </h3>
          <dl class="beside-figures">
            {titles.map((title, at) => (
              <div key={title}>
                <dt>{title}</dt>
                <dd>{words.figures?.[at]}</dd>
              </div>
            ))}
          </dl>
          {/* What the reports draw is escaped already. */}
          <figure class="drawing" dangerouslySetInnerHTML={{ __html: small }} />
        </li>
      ))}
    </ul>
  );
}
