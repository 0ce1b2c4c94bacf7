import { groupBy } from '../../domain/group-by.js';
import { banksOf, type Kit } from '../../domain/kit.js';
import { everyWired, type WiredFeed } from '../../domain/board.js';
import { inletPedal, isFed } from '../../domain/inlet.js';
import type { Pedal, Polarity } from '../../domain/pedal.js';
import { leadsOf } from '../../domain/plan.js';
import type { PartId, PedalId } from '../../domain/quantities.js';

/** What each feed's output has at its plug, in the order of the wiring; null for AC. */
export function offeredPolarities(kit: Kit): readonly (Polarity | null)[] {
  const wiring = everyWired(kit.board);
  const wanted: Wanted = new Map([...kit.board.pedals, ...inletsOf(kit)].map(({ id, polarity }) => [id, polarity]));
  const outlets = groupBy(wiring, outletOf);
  const offered = new Map(outlets.map((group) => [outletOf(group[0]), offeredTo(group, wanted, kit)]));
  return wiring.map((wired) => offered.get(outletOf(wired)) ?? null);
}

/** The inlets that are plugged today, as pedals. */
const inletsOf = ({ board, supplies }: Kit): readonly Pedal[] =>
  board.inlets.flatMap(({ inletOf }) => {
    const supply = supplies.get(inletOf.supply);
    return supply !== undefined && isFed(supply) ? [inletPedal(supply, inletOf.unit)] : [];
  });

type Wanted = ReadonlyMap<PedalId, Pedal['polarity']>;

const outletOf = ({ supply, unit, outputs }: WiredFeed): string => JSON.stringify([supply, unit, ...outputs]);

/** What an output has at its plug. Where a switch decides, it stands so that it suits the most pedals. */
function offeredTo(group: readonly WiredFeed[], wanted: Wanted, kit: Kit): Polarity | null {
  const polarities = group.slice(0, 1).flatMap((wired) => banksOf(kit, wired).map(({ polarity }) => polarity));
  const fixed = polarities.find((polarity) => polarity !== 'either');
  if (fixed !== undefined) return fixed;
  if (polarities.length === 0) return null;
  const suited = (position: Polarity): number =>
    group.filter((wired) => behind(position, leadsOf(wired), kit) === wanted.get(wired.pedal)).length;
  return suited('centre-positive') > suited('centre-negative') ? 'centre-positive' : 'centre-negative';
}

/** The polarity behind leads; null for AC. */
export function behind(offered: Polarity | null, leads: readonly PartId[], { parts }: Kit): Polarity | null {
  const reversals = leads.filter((id) => parts.get(id)?.reverses === true).length;
  if (offered === null || reversals % 2 === 0) return offered;
  return offered === 'centre-negative' ? 'centre-positive' : 'centre-negative';
}
