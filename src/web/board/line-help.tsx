import type { ComponentChildren } from 'preact';

/** What can stand on a line, each with what it says. */
export type LineWords = readonly { readonly examples: readonly string[]; readonly says: string }[];

type HelpProps = { readonly summary: string; readonly words: LineWords; readonly children?: ComponentChildren };

/** What can stand on a line to type on, and what else is to be known of it. */
export const LineHelp = ({ summary, words, children }: HelpProps) => (
  <details class="help">
    <summary>{summary}</summary>
    <dl>
      {words.map(({ examples, says }) => (
        <div key={says}>
          <dt>
            {examples.map((example) => (
              <kbd key={example}>{example}</kbd>
            ))}
          </dt>
          <dd>{says}</dd>
        </div>
      ))}
    </dl>
    {children}
  </details>
);
