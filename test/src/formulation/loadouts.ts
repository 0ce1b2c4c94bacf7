/** Loadouts by hand: what hangs on a unit, by the ids of pedals and leads. */
import type { LoadoutMeasures } from '../../../src/formulation/loadout-measures.js';
import type { Question } from '../../../src/formulation/question.js';
import type { GroundMode } from '../../../src/loadout/ground-mode.js';
import type { Hung, Loadout } from '../../../src/loadout/loadout.js';
import type { SupplyUses } from '../../../src/loadout/supply-uses.js';

/** A pedal by itself, or a chain lead with its pedals. */
export type Hanging = string | readonly [lead: string, ...pedals: readonly string[]];

/** A unit whose pedals hang on the first outputs that will do. @throws RangeError when one cannot hang like that. */
export function loadoutOf(question: Question, supply: string, ...hanging: readonly Hanging[]): Loadout {
  return loadoutIn(question, supply, null, ...hanging);
}

/** The same, of a common ground in the given mode. */
export function loadoutIn(
  question: Question,
  supply: string,
  mode: GroundMode | null,
  ...hanging: readonly Hanging[]
): Loadout {
  const uses = found(
    question.supplies.find((each) => each.supply.id === supply),
    supply,
  );
  return {
    supply: uses.supply,
    unit: uses.unit,
    mode,
    hung: hanging.map((each) => hungOf(each, uses, mode, question)),
  };
}

function hungOf(hanging: Hanging, uses: SupplyUses, mode: GroundMode | null, question: Question): Hung {
  if (typeof hanging === 'string') {
    const pedal = classOf(hanging, question);
    const use = uses.solos.find((each) => each.pedal === pedal);
    return { kind: 'solo', use: found(use, `${hanging} alone`) };
  }
  const [lead, ...pedals] = hanging;
  const kind = kindOf(lead, question);
  const pool = found(
    uses.chains.find(
      (each) =>
        each.leads.some((other) => other.kind === kind) &&
        (mode === null || each.mode === mode) &&
        pedals.every((id) => each.places.some(({ pedal }) => pedal === classOf(id, question))),
    ),
    `a chain of ${pedals.join(' and ')}`,
  );
  const places = pedals.flatMap((id) => pool.places.find(({ pedal }) => pedal === classOf(id, question)) ?? []);
  return { kind: 'chain', pool, lead: kind, places };
}

const classOf = (id: string, { bench }: Question): number =>
  bench.classes.findIndex(({ members }) => members.some((pedal) => pedal.id === id));

const kindOf = (id: string, { bench }: Question): number =>
  bench.kinds.findIndex(({ supplyOf }) => supplyOf.some(({ part }) => part === id));

function found<Value>(value: Value | undefined, what: string): Value {
  if (value === undefined) throw new RangeError(`there is no ${what}`);
  return value;
}

/** What is counted, by the ids of the pedals and leads that stand for their kinds. */
export const named = ({ pedals, leads, measures }: LoadoutMeasures, { bench }: Question) => ({
  pedals: Object.fromEntries([...pedals].map(([pedal, count]) => [bench.classes[pedal]?.like.id ?? '', count])),
  leads: Object.fromEntries([...leads].map(([kind, count]) => [bench.kinds[kind]?.supplyOf[0]?.part ?? '', count])),
  ...measures,
});
