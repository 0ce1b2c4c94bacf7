import type { PedalId } from '../../domain/quantities.js';
import { pedalClasses } from '../../loadout/pedal-class.js';
import { smallestHitting } from './smallest-hitting.js';
import type { Kit } from '../../domain/kit.js';
import { sameFact } from './facts.js';
import type { Demand, Inquiry, MeetingPlan } from './inquiry.js';

/** Whether two demands can stand in for one another: pedals with the same needs, or one and the same fact. */
export type Likeness = (one: Demand, other: Demand) => boolean;

export function likeness({ board }: Kit): Likeness {
  const classes = new Map<PedalId, number>();
  for (const [index, { members }] of pedalClasses(board.pedals).entries())
    for (const { id } of members) classes.set(id, index);
  return (one, other) => {
    if (one.kind === 'pedal') return other.kind === 'pedal' && classes.get(one.pedal) === classes.get(other.pedal);
    return other.kind === 'fact' && sameFact(one.fact, other.fact);
  };
}

/** How often a smaller set is sought, and how large a set may be for that to be of any use; of pedals alone guesses are cheap. */
const mostGuesses = { withFacts: 25, pedalsAlone: 60 };
const mostDemands = { withFacts: 10, pedalsAlone: Infinity };

/** The known set, or a smaller one, and whether it is shown that none is smaller still. */
export async function smallestOf(
  known: readonly Demand[],
  inquiry: Inquiry,
  alike: Likeness,
): Promise<{ readonly demands: readonly Demand[]; readonly smallest: boolean }> {
  // One pedal by itself, with nothing to take back, is as small as can be.
  if (known.length === 1) return { demands: known, smallest: true };
  const scope = inquiry.facts.length === 0 ? 'pedalsAlone' : 'withFacts';
  if (known.length > mostDemands[scope]) return { demands: known, smallest: false };
  const kinds = kindsOf(inquiry, alike);
  for (let guess = 0; guess < mostGuesses[scope]; guess += 1) {
    const counts = smallestHitting(
      kinds.map(({ length }) => length),
      inquiry.plans.map((plan) => kinds.map((kind) => metOf(kind, plan))),
      known.length,
    );
    if (counts === 'none') return { demands: known, smallest: true };
    if (counts === 'unknown') break;
    const candidate = kinds.flatMap((kind, index) => kind.slice(0, counts[index] ?? 0));
    const plan = await inquiry.planFor(candidate, 'largest');
    if (plan === null) return { demands: candidate, smallest: true };
    if (plan === 'unknown') break;
  }
  return { demands: known, smallest: false };
}

const metOf = (kind: readonly Demand[], plan: MeetingPlan): number =>
  kind.filter((demand) => plan.meets(demand)).length;

/** All demands, those that are alike together. */
function kindsOf({ facts, pedals }: Inquiry, alike: Likeness): readonly (readonly Demand[])[] {
  const kinds: Demand[][] = facts.map((fact) => [{ kind: 'fact', fact }]);
  for (const pedal of pedals) {
    const demand: Demand = { kind: 'pedal', pedal };
    const kind = kinds.find(([first]) => first !== undefined && alike(first, demand));
    if (kind === undefined) kinds.push([demand]);
    else kind.push(demand);
  }
  return kinds;
}
