import { lineWords } from './line-words.js';

/** What can stand on the line to type a pedal on. */
export const LineHelp = () => (
  <details class="help">
    <summary>What can stand on the line</summary>
    <dl>
      {lineWords.map(({ examples, says }) => (
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
    <p>
      The name alone is enough: a word in it such as drive, delay or looper tells what is likely, and the rest stays a
      dashed mark until it is read. Rows of a spreadsheet can be pasted here, with their headings.
    </p>
  </details>
);
