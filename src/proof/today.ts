import type { Board, Catalogue, WiredFeed } from '../domain/board.js';
import type { PedalId } from '../domain/quantities.js';
import { Flaw } from './flaw.js';

/** How a pedal is plugged today, as far as a plan is compared with that. */
export type Standing = {
  /** Null where it is not plugged, or where nobody asks. */
  readonly place: Pick<WiredFeed, 'supply' | 'unit' | 'outputs' | 'millivolts'> | null;
  readonly exposed: boolean;
  /** Every plan that is spoken of has it where it is. */
  readonly kept: boolean;
};

/** Of a pedal that nobody asks about. */
export const nowhere: Standing = { place: null, exposed: false, kept: false };

/** By the place of each pedal on the board. @throws Flaw when a pedal is kept that is not plugged. */
export function standingsOf(board: Board, catalogue: Catalogue, keep: readonly PedalId[]): readonly Standing[] {
  const unplugged = keep.find((id) => !board.wiring.some(({ pedal }) => pedal === id));
  if (unplugged !== undefined) throw new Flaw(`it keeps the pedal "${unplugged}", which is not plugged in today`);
  const exposed = exposedToday(board, catalogue);
  return board.pedals.map(({ id }) => ({
    place: board.wiring.find(({ pedal }) => pedal === id) ?? null,
    exposed: exposed.has(id),
    kept: keep.includes(id),
  }));
}

/** High-gain pedals on one ground with a digital one. What hangs on two grounds makes them one. */
function exposedToday(board: Board, catalogue: Catalogue): ReadonlySet<PedalId> {
  let domains: readonly Domain[] = [];
  for (const feed of board.wiring) {
    const grounds = new Set(groundsOf(feed, board, catalogue));
    const meets = ({ grounds: others }: Domain): boolean => [...others].some((ground) => grounds.has(ground));
    const met = domains.filter(meets);
    const joined = {
      grounds: new Set([...grounds, ...met.flatMap((domain) => [...domain.grounds])]),
      pedals: [...met.flatMap(({ pedals }) => pedals), feed.pedal],
    };
    domains = [...domains.filter((domain) => !met.includes(domain)), joined];
  }
  return new Set(
    domains.flatMap(({ pedals }) => {
      const there = board.pedals.filter(({ id }) => pedals.includes(id));
      return there
        .filter((pedal) => pedal.highGain && there.some((other) => other !== pedal && other.digital))
        .map(({ id }) => id);
    }),
  );
}

type Domain = { readonly grounds: ReadonlySet<string>; readonly pedals: readonly PedalId[] };

/** An isolated output is a ground of its own; the others share their unit's. */
function groundsOf({ supply, unit, outputs }: WiredFeed, board: Board, { supplies }: Catalogue): readonly string[] {
  const banks = [...board.gear.supplies, ...supplies].find(({ id }) => id === supply)?.banks ?? [];
  return outputs.map((output) => {
    const bank = banks.find(({ firstOutput, outputs: count }) => firstOutput <= output && output < firstOutput + count);
    return JSON.stringify([supply, unit, bank?.isolated === true ? output : null]);
  });
}
