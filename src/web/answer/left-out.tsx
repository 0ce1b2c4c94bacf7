import { readLine } from '../document/type-pedal.js';
import type { PageState } from '../page-state.js';
import { ownedFound } from '../supplies/owned-found.js';

/** The lines that cannot be taken as they stand, each with what it is for: the answer is one without them. */
export function linesLeftOut({ document, heard }: PageState) {
  const { line, ownedLine, board } = document.value;
  const { read, taken } = ownedFound(ownedLine, heard.value.things);
  return [
    { to: 'type-line', of: 'a pedal', isLeftOut: readLine(line, board.text).kind === 'unclear' },
    { to: 'owned-line', of: 'what you own', isLeftOut: taken !== null || read?.kind === 'unclear' },
  ].filter(({ isLeftOut }) => isLeftOut);
}

/** What was typed and is in no answer, with the way to where it says what is in the way. */
export const LeftOut = ({ state }: { readonly state: PageState }) => (
  <>
    {linesLeftOut(state).map(({ to, of }) => (
      <p key={to} class="care">
        The line for {of} cannot be taken as it stands, and nothing of it counts here:{' '}
        <a href={`#${to}`}>see what is in the way</a>.
      </p>
    ))}
  </>
);
