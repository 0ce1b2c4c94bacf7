import type { WiredFeed } from '../../domain/board.js';
import { banksOf, type Kit } from '../../domain/kit.js';
import { polarities, type Polarity } from '../../domain/pedal.js';
import { leadsOf, type Feed, type Readings } from '../../domain/plan.js';
import type { PartId } from '../../domain/quantities.js';
import { behind } from './wired-polarities.js';

/** What of a wired pedal says how it hangs. */
type Hung = Pick<WiredFeed, 'pedal' | 'supply' | 'outputs' | 'join' | 'chain' | 'adapters'>;

/** The most adapters on the way to a pedal, by the rule `plug`. */
const mostAdapters = 2;

/**
 * What a wired pedal's inlet gets from what its output offers at the plug. Where nobody has read its polarity, the adapters
 * listed are those at hand for it, and the label says which of them to use.
 */
export function wiredPolarity(wired: Hung, offered: Polarity | null, kit: Kit): Pick<Feed, 'polarity' | 'readings'> {
  const pedal = kit.board.pedals.find(({ id }) => id === wired.pedal);
  if (pedal?.polarity !== 'unknown') return { polarity: behind(offered, leadsOf(wired), kit) };
  const ways = orderedParts(wired.adapters);
  const waysFor = (reading: Polarity): readonly (readonly PartId[])[] =>
    positions(wired, offered, kit).flatMap((position) =>
      ways.filter(
        (way) => leads(wired, way, pedal.inlet, kit) && polarityBehind(wired, way, position, kit) === reading,
      ),
    );
  const [minus, plus] = polarities.map(waysFor);
  const fitting = (minus ?? [])
    .flatMap((one) => (plus ?? []).map((other): Readings => ({ 'centre-negative': one, 'centre-positive': other })))
    .find((readings) => usesAll(readings, wired.adapters));
  // Where they do not serve both readings, all of them are used for each, and the audit says what is wrong with that.
  const all = { 'centre-negative': wired.adapters, 'centre-positive': wired.adapters };
  return { polarity: 'unknown', readings: fitting ?? all };
}

/** A polarity switch may wait for the label of a pedal that is alone on it. */
function positions(wired: Hung, offered: Polarity | null, kit: Kit): readonly (Polarity | null)[] {
  const switched = banksOf(kit, wired).every(({ polarity }) => polarity === 'either');
  return switched && wired.chain === null ? polarities : [offered];
}

const polarityBehind = (wired: Hung, way: readonly PartId[], position: Polarity | null, kit: Kit) =>
  behind(position, leadsOf({ ...wired, adapters: way }), kit);

/** Whether each adapter fits what the one before gives, and the last gives the inlet. */
function leads(wired: Hung, way: readonly PartId[], inlet: string, kit: Kit): boolean {
  const head = kit.parts.get(wired.join?.part ?? wired.chain ?? ('' as PartId));
  let plug = head?.gives ?? banksOf(kit, wired)[0]?.plug;
  for (const id of way) {
    const part = kit.parts.get(id);
    if (part?.fits !== plug) return false;
    plug = part?.gives;
  }
  return plug === inlet;
}

/** Every order of none, one or two of the parts. */
function orderedParts(parts: readonly PartId[]): readonly (readonly PartId[])[] {
  let ways: readonly (readonly number[])[] = [[]];
  let longest = ways;
  for (let length = 0; length < mostAdapters; length += 1) {
    longest = longest.flatMap((way) => [...parts.keys()].flatMap((at) => (way.includes(at) ? [] : [[...way, at]])));
    ways = [...ways, ...longest];
  }
  return ways.map((way) => way.flatMap((at) => parts[at] ?? []));
}

/** Whether each part is there as often as the reading that needs it most. */
const usesAll = (readings: Readings, parts: readonly PartId[]): boolean =>
  [...new Set(parts)].every(
    (part) => count(parts, part) === Math.max(...polarities.map((reading) => count(readings[reading], part))),
  );

const count = (parts: readonly PartId[], part: PartId): number => parts.filter((each) => each === part).length;
