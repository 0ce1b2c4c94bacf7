import type { Kit } from './kit.js';
import { leadNumbers } from './lead-numbers.js';
import type { Feed } from './plan.js';
import type { PedalId } from './quantities.js';

/** A feed as far as it tells which tail of which lead it is. */
type Tail = Pick<Feed, 'pedal' | 'supply' | 'unit' | 'outputs' | 'chain'>;

/**
 * The letter of each pedal's tail of a chain lead, for life; none for pedals that are on no chain. A pedal keeps the tail that
 * the board file gives it as long as it stays on that lead; others take the first tails that are free: first those that are on
 * the lead already, though the file gives them no letter, then new ones, each in the order of the board.
 */
export function leadTails(kit: Kit, feeds: readonly Tail[]): ReadonlyMap<PedalId, string> {
  const numbers = leadNumbers(kit, feeds);
  const wired = new Map(kit.board.wiring.map((feed) => [feed.pedal, feed]));
  const leads = new Map<number, PedalId[]>();
  for (const { pedal, chain } of feeds) {
    const number = numbers.get(pedal);
    if (chain === null || number === undefined) continue;
    leads.set(number, [...(leads.get(number) ?? []), pedal]);
  }
  const tails = new Map<PedalId, string>();
  for (const [number, pedals] of leads) {
    const isThere = (pedal: PedalId): boolean => wired.get(pedal)?.lead === number;
    const known = (pedal: PedalId): string | undefined => (isThere(pedal) ? wired.get(pedal)?.tail : undefined);
    const taken = new Set(pedals.map(known));
    const others = pedals.filter((pedal) => known(pedal) === undefined);
    let at = 0;
    for (const pedal of [...others.filter(isThere), ...others.filter((one) => !isThere(one))]) {
      while (taken.has(letters(at))) at += 1;
      tails.set(pedal, letters(at));
      at += 1;
    }
    for (const pedal of pedals) tails.set(pedal, known(pedal) ?? tails.get(pedal) ?? '');
  }
  return tails;
}

/** a to z, then aa, ab and so on. */
function letters(at: number): string {
  const last = String.fromCharCode('a'.charCodeAt(0) + (at % 26));
  return at < 26 ? last : letters(Math.floor(at / 26) - 1) + last;
}
