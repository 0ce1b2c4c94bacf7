import type { Part } from '../domain/part.js';
import type { Line, Parts } from './line.js';

/** The parts between an output and a pedal, from the supply's side; null when one of them does not exist. */
export function leadsOf(line: Line, parts: Parts): readonly Part[] | null {
  const { join, chain, adapters } = line.feed;
  const ids = [...(join === null ? [] : [join.part]), ...(chain === null ? [] : [chain]), ...adapters];
  const found = ids.map((id) => parts.get(id));
  const known = found.filter((part) => part !== undefined);
  return known.length === ids.length ? known : null;
}
