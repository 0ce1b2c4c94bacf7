import { prove } from '../../../solver/compact/prove.js';
import { ProgramBuilder, Sum } from '../../formulation/program-builder.js';
import type { Effort } from '../../formulation/optimiser.js';

/**
 * The smallest set of pedals, counted by class, that asks of every known plan for at least one pedal more than it powers:
 * minimise Σ chosen(k) subject to, for every plan p, Σ beyond(p, k) ≥ 1 and chosen(k) ≥ (powered(p, k) + 1) · beyond(p, k).
 * Null when there is none, the time ran out, or there are no engines.
 */
export async function smallestHitting(
  members: readonly number[],
  plans: readonly (readonly number[])[],
  effort: Effort,
): Promise<readonly number[] | null> {
  const { engines, timing, remainingMs, signal } = effort;
  if (engines === null) return null;
  const builder = new ProgramBuilder();
  const chosen = members.map((count) => builder.column('chosen', count));
  for (const powered of plans) {
    const any = new Sum();
    for (const [index, column] of chosen.entries()) {
      const needed = (powered[index] ?? 0) + 1;
      if (needed > (members[index] ?? 0)) continue;
      const beyond = builder.column('beyond', 1);
      any.add(beyond);
      builder.atMost('beyond', new Sum().add(beyond, needed).add(column, -1), 0);
    }
    builder.atLeast('one more', any, 1);
  }
  const size = new Sum();
  for (const column of chosen) size.add(column);
  const objective = { name: 'pedals', terms: size.terms(), constant: 0 };
  const options = { engines, timing, remainingMs, ...(signal === undefined ? {} : { signal }) };
  const outcome = await prove(builder.build(), objective, options);
  return outcome.kind === 'optimal' ? chosen.map((column) => outcome.point[column] ?? 0) : null;
}
