/**
 * Pedals that can do all that others can, for no less and without taking more. Of any best content that leaves one of them
 * out and uses another that it can replace, one that uses it instead is as good: a search that leaves a pedal out may
 * leave out, too, all that it can replace.
 */
import { gathered } from '../../solver/gathered.js';

/** Whether the first can replace the second. */
type CanReplace<Pedal> = (one: Pedal, two: Pedal) => boolean;

/** Whoever can replace another comes before it; beyond that, those that are worth the most. */
export function replacersFirst<Pedal>(
  pedals: readonly Pedal[],
  worth: (pedal: Pedal) => number,
  canReplace: CanReplace<Pedal>,
): readonly Pedal[] {
  const strictly = (one: Pedal, two: Pedal): boolean => canReplace(one, two) && !canReplace(two, one);
  const left = pedals.toSorted((a, b) => worth(b) - worth(a));
  const order: Pedal[] = [];
  while (left.length > 0) {
    const free = left.findIndex((pedal) => !left.some((other) => other !== pedal && strictly(other, pedal)));
    order.push(...left.splice(Math.max(0, free), 1));
  }
  return order;
}

/** For every pedal in such an order the later ones that it can replace, by their places. */
export const replaceable = <Pedal>(
  order: readonly Pedal[],
  canReplace: CanReplace<Pedal>,
): readonly (readonly number[])[] =>
  order.map((pedal, index) => gathered(order, (other, at) => (at > index && canReplace(pedal, other) ? [at] : [])));
