import { groupBy } from '../domain/group-by.js';
import type { Pedal } from '../domain/pedal.js';
import type { InletSort } from './inlet-sort.js';
import { nothingToday, type Berth, type Today } from './today.js';

/** Pedals that are alike in everything that bears on a plan; they are handled once and counted. */
export type PedalClass = {
  /** Any one of the members stands for all. */
  readonly like: Pedal;
  /** In the order of the board. */
  readonly members: readonly Pedal[];
  /** Where they are plugged today; null for pedals that are not, or where nobody asks. */
  readonly berth: Berth | null;
  /** Whether they are exposed as they are plugged today. */
  readonly exposedToday: boolean;
  /** Whether they must stay where they are. */
  readonly pinned: boolean;
  /** The sort of the inlets that its members are, in place of pedals; null for pedals. */
  readonly inlet: InletSort | null;
};

/** The classes in the order of their first members on the board; pedals that are plugged differently today are not alike. */
export function pedalClasses(pedals: readonly Pedal[], today: Today = nothingToday): readonly PedalClass[] {
  const groups = groupBy(pedals, (pedal) => JSON.stringify([needsOf(pedal), standingOf(pedal, today)]));
  return groups.map((members) => {
    const [like] = members;
    return {
      like,
      members,
      berth: today.berths.get(like.id) ?? null,
      exposedToday: today.exposed.has(like.id),
      pinned: today.pinned.has(like.id),
      inlet: null,
    };
  });
}

function standingOf({ id }: Pedal, { berths, exposed, pinned }: Today): unknown {
  const berth = berths.get(id);
  const where = berth === undefined ? null : [berth.supply, berth.unit, berth.outputs, berth.millivolts];
  return [where, exposed.has(id), pinned.has(id)];
}

/** What can be told apart in JSON. */
type Plain = string | number | boolean | null | readonly Plain[] | { readonly [key: string]: Plain };

/** Whatever differs in the field is not alike. */
const all = (value: Plain): Plain => value;

type PedalField = keyof Pedal;

/** The field bears on no plan. */
const nothing = (): Plain => null;

/** What of each field must agree for pedals to be alike. */
const mustAgree: { readonly [Field in PedalField]: (value: Pedal[Field]) => Plain } = {
  id: nothing,
  name: nothing,
  power: all,
  polarity: all,
  inlet: all,
  ground: all,
  accepts: all,
  prefers: all,
  survives: all,
  draw: (draw) => (draw.kind === 'flat' ? draw.microamps : [...draw.microamps].sort(([a], [b]) => a - b)),
  startup: all,
  figure: (figure) => figure === 'guess',
  digital: all,
  highGain: all,
  alone: all,
  assumed: nothing,
  unknown: nothing,
  kept: nothing,
  adapter: all,
  battery: all,
};

const fields = Object.keys(mustAgree) as readonly PedalField[];

const needsOf = (pedal: Pedal): readonly Plain[] => fields.map((field) => needOf(field, pedal));

const needOf = <Field extends PedalField>(field: Field, pedal: Pedal): Plain => mustAgree[field](pedal[field]);
