import { readBack } from '../../report/words/read-back.js';
import { withRows } from '../document/paste-rows.js';
import { readLine, withLineEntered } from '../document/type-pedal.js';
import { LineHelp } from './line-help.js';
import { lineWords } from './line-words.js';
import type { PageState } from '../page-state.js';

/** A line to type a pedal on, with what it was understood as below it. */
export function TypeLine({ state }: { readonly state: PageState }) {
  const { line, board } = state.document.value;
  const read = readLine(line, board.text);
  const enter = (event: Event): void => {
    event.preventDefault();
    state.change(withLineEntered);
  };
  return (
    <form class="type-line" onSubmit={enter}>
      <label for="type-line">A pedal: its name and what its label says</label>
      <div class="type-line-row">
        <input
          id="type-line"
          type="text"
          autocomplete="off"
          autocapitalize="off"
          spellcheck={false}
          placeholder="moth delay 9v 300 neg"
          aria-describedby="type-line-understood"
          value={line}
          onPaste={(event) => pasted(state, event)}
          onInput={({ currentTarget }) => {
            const { value } = currentTarget;
            state.change((document) => ({ ...document, line: value }));
          }}
        />
        <button type="submit" disabled={read.kind !== 'pedal'}>
          Add
        </button>
      </div>
      <div id="type-line-understood" class="understood" aria-live="polite">
        {wordsOf(read).map((text) => (
          <p key={text}>{text}</p>
        ))}
      </div>
      <LineHelp summary="What can stand on the line" words={lineWords}>
        <p>
          The name alone is enough: a word in it such as drive, delay or looper tells what is likely, and the rest stays
          a dashed mark until it is read. Rows of a spreadsheet can be pasted here, with their headings.
        </p>
      </LineHelp>
    </form>
  );
}

/** Several rows of a spreadsheet become pedals; a single one goes onto the line as it is. */
function pasted(state: PageState, event: ClipboardEvent): void {
  const text = event.clipboardData?.getData('text/plain').trim() ?? '';
  if (!text.includes('\n')) return;
  event.preventDefault();
  const { document, refused } = withRows(state.document.value, text);
  state.change(() => document);
  for (const sentence of refused) state.notice(sentence);
}

function wordsOf(read: ReturnType<typeof readLine>): readonly string[] {
  switch (read.kind) {
    case 'empty':
      return [];
    case 'pedal':
      return readBack(read.draft).split('\n');
    case 'unclear':
      return read.faults;
  }
}
