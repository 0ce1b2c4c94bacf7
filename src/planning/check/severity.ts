import { highestMillivolts } from '../../domain/pedal.js';
import { rulesBySeverity, type Rule } from '../../domain/rules.js';
import { hasTooFewVolts, type Violation } from '../../domain/violation.js';

/** The worst first: by rule, then by how far beyond what is allowed; those that are as bad stay in their order. */
export const worstFirst = (violations: readonly Violation[]): readonly Violation[] =>
  violations
    .map((violation) => ({ violation, rank: rankOf(violation), excess: excessOf(violation) }))
    .sort((first, second) => first.rank - second.rank || second.excess - first.excess)
    .map(({ violation }) => violation);

/** Too few volts destroy nothing: such a pedal is as badly off as one that cannot start. */
const rankOf = (violation: Violation): number =>
  rulesBySeverity.indexOf(hasTooFewVolts(violation) ? ('startup' satisfies Rule) : violation.rule);

/** What there is over what is allowed; it only puts findings in order. 1 where no numbers were compared. */
function excessOf({ numbers }: Violation): number {
  switch (numbers?.kind) {
    case 'load':
      return Number(numbers.planned.numerator) / Number(numbers.planned.denominator) / numbers.limit;
    case 'volts':
      return Math.max(numbers.given, numbers.openCircuit ?? 0) / highestMillivolts(numbers.accepted);
    case 'count':
      return numbers.used / numbers.allowed;
    case 'money':
      return numbers.needed / numbers.allowed;
    case 'mains':
    case undefined:
      return 1;
  }
}
