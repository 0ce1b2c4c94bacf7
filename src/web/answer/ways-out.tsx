import { takingWayOut } from '../document/way-out.js';
import type { PageState } from '../page-state.js';
import type { ToldWays } from '../worker/told-ways.js';

/** Why there is no plan, and each way out: as a button, where the board can be changed so. */
export function WaysOut({ state, ways: { conflicts, ways } }: { readonly state: PageState; readonly ways: ToldWays }) {
  return (
    <>
      {conflicts.length > 0 && <h3>Why</h3>}
      {conflicts.map((texts, at) => (
        <ul key={at}>
          {texts.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      ))}
      {ways.length > 0 && <h3>Ways out, each by itself enough</h3>}
      <ul class="ways">
        {ways.map(({ change, plan, edits }) => (
          <li key={change}>
            {edits.length === 0 ? (
              change
            ) : (
              <button type="button" onClick={() => state.change(takingWayOut(edits))}>
                {change}
              </button>
            )}{' '}
            {plan}
          </li>
        ))}
      </ul>
    </>
  );
}
