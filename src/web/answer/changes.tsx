import type { ReplugWords } from '../../report/words/handout.js';
import { listText } from '../../report/words/words.js';

/** What a plan changes of how the board is plugged today. */
export const Changes = ({
  changes: { stay, releads, moves, added, dropped, unlisted },
}: {
  readonly changes: ReplugWords;
}) => (
  <ul class="changes" aria-label="What changes">
    {moves.map(({ name, way, why }) => (
      <li key={name}>
        <b>{name} moves:</b> {way}.{why === '' ? '' : ` Why: ${why}`}
      </li>
    ))}
    {added.map(({ name, to }) => (
      <li key={name}>
        <b>{name} is new:</b> {to}.
      </li>
    ))}
    {releads.length > 0 && (
      <li>
        <b>Other leads:</b> {listText(releads)}.
      </li>
    )}
    {dropped.map((name) => (
      <li key={name} class="care">
        <b>{name}</b> is unplugged and left without power.
      </li>
    ))}
    {stay.length > 0 && (
      <li>
        <b>Stay as they are plugged:</b> {listText(stay)}.
      </li>
    )}
    {unlisted.map((text) => (
      <li key={text} class="care">
        {text}
      </li>
    ))}
  </ul>
);
