import type { Part } from '../../src/domain/part.js';
import type { Pedal, Polarity } from '../../src/domain/pedal.js';
import type { Readings } from '../../src/domain/plan.js';

/** The polarity behind a part. AC has none, so null stays null. */
export function behind(part: Part, polarity: Polarity | null): Polarity | null {
  if (!part.reverses || polarity === null) return polarity;
  return polarity === 'centre-negative' ? 'centre-positive' : 'centre-negative';
}

/** The adapters of one pedal; where either polarity may be, those that both ways to plug it take, and which for which. */
export type Tail = { readonly parts: readonly Part[]; readonly readings: Readings | null };

/** The tails from a plug that may stand at any of the polarities, whichever suits the pedal. */
export function tailsTo(
  pedal: Pedal,
  plug: string,
  positions: readonly (Polarity | null)[],
  parts: readonly Part[],
): readonly Tail[] {
  const waysAs = (as: Pedal): readonly (readonly Part[])[] =>
    positions.flatMap((position) => routesTo(as, plug, position, parts));
  if (pedal.polarity !== 'unknown') return waysAs(pedal).map((route) => ({ parts: route, readings: null }));
  return waysAs({ ...pedal, polarity: 'centre-negative' }).flatMap((minus) =>
    waysAs({ ...pedal, polarity: 'centre-positive' }).map((plus) => ({
      parts: bothOf(minus, plus),
      readings: { 'centre-negative': minus.map(({ id }) => id), 'centre-positive': plus.map(({ id }) => id) },
    })),
  );
}

/** Each part as often as the list that has it most often. */
function bothOf(one: readonly Part[], other: readonly Part[]): readonly Part[] {
  const all = [...new Set([...one, ...other])];
  const times = (list: readonly Part[], part: Part): number => list.filter((each) => each === part).length;
  return all.flatMap((part) => new Array<Part>(Math.max(times(one, part), times(other, part))).fill(part));
}

/**
 * The ways, over none, one or two adapters, from a plug at a polarity to a pedal's inlet. A way that needs the parts of
 * another one and more is left out, and so is the same pair of parts in the other order: neither can be better.
 */
export function routesTo(
  pedal: Pedal,
  plug: string,
  polarity: Polarity | null,
  parts: readonly Part[],
): readonly (readonly Part[])[] {
  const adapters = parts.filter((part) => part.role.kind === 'adapter');
  const ends = (route: readonly Part[]): boolean => reaches(pedal, plug, polarity, route);
  if (ends([])) return [[]];
  const single = adapters.filter((adapter) => ends([adapter]));
  const others = adapters.filter((adapter) => !single.includes(adapter));
  const double = others.flatMap((first, index) =>
    others.slice(index).flatMap((second) => {
      if (ends([first, second])) return [[first, second]];
      return ends([second, first]) ? [[second, first]] : [];
    }),
  );
  return [...single.map((adapter) => [adapter]), ...double];
}

/** True when every adapter fits what the one before gives, and the last gives the inlet at the pedal's polarity. */
function reaches(pedal: Pedal, plug: string, polarity: Polarity | null, route: readonly Part[]): boolean {
  let [offered, sign] = [plug, polarity];
  for (const part of route) {
    if (part.fits !== offered) return false;
    [offered, sign] = [part.gives, behind(part, sign)];
  }
  return offered === pedal.inlet && (pedal.power === 'AC' || sign === pedal.polarity);
}
