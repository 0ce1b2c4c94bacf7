import type { Pedal } from '../../domain/pedal.js';
import type { CaseItem } from './items.js';
import type { AlikePedals } from './pedal-class.js';

/**
 * A way to count who is exposed on one ground. Every content of a ground has one that counts it rightly, and none counts
 * too few: `quiet` has no digital pedal; `noisy` counts every high-gain pedal; `sole` has one digital pedal, itself
 * high-gain, which does not expose itself, and counts the other high-gain ones. `free` counts nobody.
 */
export type CaseNoise =
  | { readonly kind: 'free' | 'quiet' | 'noisy' }
  | { readonly kind: 'sole'; /** The place of the only digital item. */ readonly item: number };

/** The ways that it takes for a ground on which these items may meet. */
export function noisesOf(
  among: readonly number[],
  items: readonly CaseItem[],
  classes: readonly AlikePedals[],
): readonly CaseNoise[] {
  const flagged = among.map((item) => ({ item, pedal: pedalOf(items, item, classes) }));
  const digital = flagged.filter(({ pedal }) => pedal?.digital === true);
  const highGain = flagged.filter(({ pedal }) => pedal?.highGain === true);
  if (digital.length === 0 || highGain.length === 0) return [{ kind: 'free' }];
  const both = digital.filter(({ pedal }) => pedal?.highGain === true);
  return [{ kind: 'noisy' }, { kind: 'quiet' }, ...both.map(({ item }) => ({ kind: 'sole', item }) as const)];
}

/** Whether an item may be on a ground that is counted in this way, and whether it counts as exposed there. */
export function roleIn(
  noise: CaseNoise,
  item: number,
  { digital, highGain }: { readonly digital: boolean; readonly highGain: boolean },
): 'absent' | 'counted' | 'uncounted' {
  const isSole = noise.kind === 'sole' && noise.item === item;
  if (digital && (noise.kind === 'quiet' || (noise.kind === 'sole' && !isSole))) return 'absent';
  const counts = noise.kind === 'noisy' || (noise.kind === 'sole' && !isSole);
  return highGain && counts ? 'counted' : 'uncounted';
}

/** How items may meet on the common ground of a unit; a ground of null is any. */
export type Common = { readonly ground: Pedal['ground'] | null; readonly noise: CaseNoise };

export function pedalOf(items: readonly CaseItem[], item: number, classes: readonly AlikePedals[]) {
  return classes[items[item]?.pedal ?? -1]?.pedal;
}
