import { changeMarks, whereText, type Changed } from '../answer/what-changed.js';
import { askedAs, letGo } from '../document/pins.js';
import type { PageState } from '../page-state.js';
import type { ToldPlan } from '../worker/told-answer.js';
import type { HandState } from './hand.js';

type Rows = Pick<ToldPlan, 'rows' | 'pinned'> & { readonly hand: HandState; readonly changed: Changed };

/** What the drawing shows as a list, a pedal a row: all that can be done in the drawing can be done here by keyboard. */
export function LeadList({ state, rows, pinned, hand, changed }: Rows & { readonly state: PageState }) {
  const pins = new Set(state.document.value.pins.map(({ pedal }) => pedal));
  const { why: asked, about } = state.heard.value;
  const why = asked?.about === about ? asked : null;
  return (
    <ol class="leads" aria-label="Leads">
      {rows.map((row) => (
        <li key={row.feed.pedal}>
          <span>
            <span class="lead-place">
              <b>{row.mark}</b> {row.pedal}: {whereText(row)}
            </span>
            <RowChange changed={changed.pedals.get(row.feed.pedal)} />
          </span>
          {pins.has(askedAs(row.feed.pedal, pinned)) && (
            <button type="button" class="quiet" onClick={() => state.change(letGo(askedAs(row.feed.pedal, pinned)))}>
              Pinned: let go<span class="unseen"> of {row.pedal}</span>
            </button>
          )}
          <button
            type="button"
            class="quiet"
            aria-expanded={hand.moving === row.feed.pedal}
            onClick={() => hand.move(hand.moving === row.feed.pedal ? null : row.feed.pedal)}
          >
            Move<span class="unseen"> {row.pedal}</span>
          </button>
          {row.feed.inletOf === undefined && (
            <button type="button" class="quiet" onClick={() => state.inquire('why', row.feed.pedal)}>
              Why there?<span class="unseen"> {row.pedal}</span>
            </button>
          )}
          {why?.pedal === row.feed.pedal && (
            <ul class="why" role="status">
              {why.texts.map((text) => (
                <li key={text}>{text}</li>
              ))}
            </ul>
          )}
          {hand.moving === row.feed.pedal && <Places name={row.pedal} hand={hand} />}
        </li>
      ))}
      {changed.gone.map((name) => (
        <li key={`gone ${name}`}>
          <span>
            <del>{name}</del> <b class="change">{changeMarks.gone}</b>
          </span>
        </li>
      ))}
    </ol>
  );
}

function RowChange({ changed }: { readonly changed: ReturnType<Changed['pedals']['get']> }) {
  if (changed === undefined) return null;
  return (
    <>
      {' '}
      <b class="change">{changeMarks[changed.change]}</b>
      {changed.was !== null && <span class="minor"> was on {changed.was}</span>}
    </>
  );
}

type PlacesProps = { readonly name: string; readonly hand: Pick<HandState, 'places'> & Partial<HandState> };

/** Where a pedal could go, with the load there, and where not, with the reason. */
export function Places({ name, hand: { places, pin } }: PlacesProps) {
  if (places.length === 0) return <p role="status">Looking where it could go …</p>;
  return (
    <ul class="places" aria-label={`Where ${name} could go`}>
      {places.map(({ output, name: place, berth, text, isHere, shared }) => (
        <li key={output}>
          {berth === null || pin === undefined ? (
            <span class="closed">
              <b>{place}</b>
              {isHere ? ' (here)' : berth === null ? ' cannot take it:' : ''} {text}
            </span>
          ) : (
            <button type="button" onClick={() => pin(berth)}>
              <b>{place}</b>
              {isHere ? ' (here)' : ''} {text}
            </button>
          )}
          {shared !== null && pin !== undefined && (
            <button type="button" onClick={() => pin(shared.berth, shared.company)}>
              <b>{place}</b> {shared.text}
            </button>
          )}
        </li>
      ))}
    </ul>
  );
}
