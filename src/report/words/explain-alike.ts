import { groupBy } from '../../domain/group-by.js';
import type { PedalId } from '../../domain/quantities.js';
import type { Argument } from '../../planning/explain/argument.js';

/** An argument, and the pedals of which the very same can be said. */
type AlikeArguments = { readonly argument: Argument; readonly others: readonly PedalId[] };

/** Arguments about one pedal each that differ in nothing but its name are told once. */
export function alikeArguments(all: readonly Argument[]): readonly AlikeArguments[] {
  const groups = groupBy(all, (argument, at) =>
    argument.conflict.pedals.length === 1 ? withoutName(argument) : `${at}`,
  );
  return groups.map(([argument, ...others]) => ({
    argument,
    others: others.flatMap(({ conflict }) => conflict.pedals),
  }));
}

const withoutName = ({ conflict, feeders, refusals, least }: Argument): string =>
  JSON.stringify([
    conflict.facts,
    conflict.size,
    feeders.map(({ supplies }) => supplies),
    refusals.map((each) => each.refusals),
    least,
  ]);
