import type { PedalId } from '../../domain/quantities.js';
import type { Argument } from '../../planning/explain/argument.js';

/** An argument, and the pedals of which the very same can be said. */
export type AlikeArguments = { readonly argument: Argument; readonly others: readonly PedalId[] };

/** Arguments about one pedal each that differ in nothing but its name are told once. */
export function alikeArguments(all: readonly Argument[]): readonly AlikeArguments[] {
  const groups = new Map<string, { readonly argument: Argument; readonly others: PedalId[] }>();
  for (const [at, argument] of all.entries()) {
    const [pedal, second] = argument.conflict.pedals;
    const alone = pedal !== undefined && second === undefined;
    const key = alone ? withoutName(argument) : `${at}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { argument, others: [] });
    else if (pedal !== undefined) group.others.push(pedal);
  }
  return [...groups.values()];
}

const withoutName = ({ conflict, feeders, refusals, least }: Argument): string =>
  JSON.stringify([
    conflict.facts,
    conflict.size,
    feeders.map(({ supplies }) => supplies),
    refusals.map((each) => each.refusals),
    least,
  ]);
