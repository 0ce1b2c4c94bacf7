import { gathered } from '../../solver/gathered.js';
import { unitOfInlet } from '../domain/inlet.js';
import type { Feed, Readings } from '../domain/plan.js';
import type { Pedal } from '../domain/pedal.js';
import type { Millivolts, PartId } from '../domain/quantities.js';
import { isOfOnePedal } from '../domain/source.js';
import type { Supply } from '../domain/supply.js';
import type { LeadKind } from '../loadout/lead-kinds.js';
import type { InletSort } from '../loadout/inlet-sort.js';
import type { Hung, Loadout } from '../loadout/loadout.js';
import { readRoutes, type Exit, type Route } from '../loadout/routes.js';
import type { OutputSetting } from '../loadout/uses.js';
import { inletBerth, inletNamer, type InletNamer } from './named-inlets.js';
import { outputNumbers } from './output-numbers.js';
import type { Question } from './question.js';

/**
 * One unit of a supply with all that hangs on it, before outputs are numbered; which unit it is, where that matters for what
 * is plugged into it today.
 */
export type LoadedUnit = Pick<Loadout, 'supply' | 'unit' | 'hung'>;

/**
 * Puts names to what was counted: which pedal of its class, which unit, which output, which part. Pedals come in the
 * order of the board; units of a model are numbered by their first pedal, outputs of a bank likewise, save where pedals can
 * keep today's; leads that do the same are taken owned ones first, then the cheapest. Last come the inlets of fed units.
 */
export function namedFeeds(units: readonly LoadedUnit[], question: Question): readonly Feed[] {
  const seats = seatPedals(units, question);
  const pick = partPicker(question.bench.kinds);
  const tailOf = tailMaker(question.bench.kinds, pick);
  const numberOf = unitNumbers(seats);
  const numbered = seats.map((unit) => ({ ...unit, number: numberOf(unit) }));
  const nameInlet = inletNamer(numbered, question.board, question.today);
  const feeds = gathered(numbered, (unit) =>
    unitFeeds(withInlets(unit, nameInlet), unit.number, { pick, tailOf }, question),
  );
  const order = new Map(question.board.pedals.map(({ id }, index) => [id, index]));
  const rankOf = ({ pedal }: Feed): number => order.get(pedal) ?? order.size;
  return feeds.sort((a, b) => rankOf(a) - rankOf(b));
}

/** A pedal with its place on the board, or an inlet of a sort; none of a sort is an inlet that has its name already. */
type Seated = { readonly pedal: Pedal; readonly rank: number; readonly inlet: InletSort | null };
type SeatedHung = { readonly hung: Hung; readonly pedals: readonly Seated[]; readonly rank: number };
type SeatedUnit = {
  readonly supply: Supply;
  readonly unit: number | null;
  readonly hung: readonly SeatedHung[];
  readonly rank: number;
};

/** Units that are told apart keep their numbers; the others take those that are left, from 1. */
function unitNumbers(seats: readonly SeatedUnit[]): (unit: SeatedUnit) => number {
  const taken = new Map<Supply, Set<number>>();
  for (const { supply, unit } of seats) {
    const numbers = taken.get(supply) ?? new Set();
    taken.set(supply, unit === null ? numbers : numbers.add(unit));
  }
  return ({ supply, unit }) => {
    if (unit !== null) return unit;
    const numbers = taken.get(supply) ?? new Set();
    let number = 1;
    while (numbers.has(number)) number += 1;
    numbers.add(number);
    return number;
  };
}

function seatPedals(units: readonly LoadedUnit[], { board, bench }: Question): readonly SeatedUnit[] {
  const waiting = bench.classes.map(({ members }) => [...members]);
  const ranks = new Map(board.pedals.map((pedal, index) => [pedal, index]));
  const seat = (index: number): Seated => {
    const pedal = waiting[index]?.shift();
    if (pedal === undefined) throw new RangeError(`more pedals of class ${index} are fed than there are`);
    const { inlet = null, pinned = false } = bench.classes[index] ?? {};
    return { pedal, rank: ranks.get(pedal) ?? ranks.size, inlet: pinned ? null : inlet };
  };
  return units
    .filter(({ hung }) => hung.length > 0)
    .map(({ supply, hung, unit }) => {
      const seated = hung.map((each) => {
        const pedals = each.kind === 'solo' ? [seat(each.use.pedal)] : each.places.map(({ pedal }) => seat(pedal));
        return { hung: each, pedals, rank: Math.min(...pedals.map(({ rank }) => rank)) };
      });
      const sorted = seated.sort((a, b) => a.rank - b.rank);
      return { supply, unit, hung: sorted, rank: Math.min(...sorted.map(({ rank }) => rank)) };
    })
    .sort((a, b) => a.rank - b.rank);
}

/** The unit with the inlets that hang on it named. */
const withInlets = (unit: SeatedUnit & { readonly number: number }, name: InletNamer): SeatedUnit => ({
  ...unit,
  hung: unit.hung.map((each) => ({
    ...each,
    pedals: each.pedals.map((seated) =>
      seated.inlet === null ? seated : { ...seated, pedal: name(seated.inlet, unit) },
    ),
  })),
});

type PartPicker = (kind: number) => PartId;

/** Takes the pieces of each lead kind in their order: owned ones first, then the cheapest. */
function partPicker(kinds: readonly LeadKind[]): PartPicker {
  const taken = new Map<number, number>();
  return (kind) => {
    let ahead = taken.get(kind) ?? 0;
    taken.set(kind, ahead + 1);
    for (const { part, pieces } of kinds[kind]?.supplyOf ?? []) {
      if (ahead < pieces) return part;
      ahead -= pieces;
    }
    throw new RangeError(`more leads of kind ${kind} are used than there are`);
  };
}

/** What a pedal's own tail is made of. */
type Tail = Pick<Feed, 'adapters' | 'readings'>;
type TailMaker = (route: Route, exit: Exit, pedal: Pedal) => Tail;

/** Where either polarity must be served, the readings share the pieces that were taken. */
const tailMaker =
  (kinds: readonly LeadKind[], pick: PartPicker): TailMaker =>
  (route, exit, pedal) => {
    const pieces = route.map((kind) => ({ kind, part: pick(kind) }));
    const adapters = pieces.map(({ part }) => part);
    if (pedal.polarity !== 'unknown') return { adapters };
    const ways = readRoutes(route, exit, pedal, kinds);
    const partsOf = (way: readonly number[]): readonly PartId[] => {
      const left = [...pieces];
      return gathered(way, (kind) =>
        left.splice(
          left.findIndex((piece) => piece.kind === kind),
          1,
        ),
      ).map(({ part }) => part);
    };
    const readings: Readings = {
      'centre-negative': partsOf(ways['centre-negative']),
      'centre-positive': partsOf(ways['centre-positive']),
    };
    return { adapters, readings };
  };

/** What belongs to the pedal goes in as it is, however its label reads. */
const noTail = ({ polarity }: Pedal): Tail => ({
  adapters: [],
  ...(polarity === 'unknown' && { readings: { 'centre-negative': [], 'centre-positive': [] } }),
});

type Leads = { readonly pick: PartPicker; readonly tailOf: TailMaker };

function unitFeeds(
  unit: SeatedUnit,
  number: number,
  { pick, tailOf }: Leads,
  { today, board }: Question,
): readonly Feed[] {
  const contents = unit.hung.map(({ hung, pedals }) => ({
    hung,
    residents: pedals.map(({ pedal: { id } }) => ({
      berth: today.berths.get(id) ?? inletBerth(id, board),
      pinned: today.pinned.has(id),
    })),
  }));
  const inUse = [...today.berths.values()].filter((berth) => berth.supply === unit.supply.id && berth.unit === number);
  const numbers = outputNumbers(
    { supply: unit.supply, unit: number, contents },
    new Set(gathered(inUse, ({ outputs }) => outputs)),
  );
  return gathered(unit.hung, ({ hung, pedals }, at): Feed[] => {
    const place = { supply: unit.supply.id, unit: number };
    const withVolts = (uses: readonly OutputSetting[]) =>
      uses.map((use, index) => ({ output: numbers[at]?.[index] ?? 0, volts: voltsOf(unit.supply, use) }));
    if (hung.kind === 'solo') {
      const { use } = hung;
      const outputs = withVolts(use.outputs);
      const join = use.join === null ? null : { mode: use.join.mode, part: pick(use.join.lead) };
      return pedals.map(({ pedal }) => {
        const tail = isOfOnePedal(unit.supply.source) ? noTail(pedal) : tailOf(use.route, use.exit, pedal);
        return { join, chain: null, ...place, ...feedOf(pedal, outputs, tail) };
      });
    }
    const outputs = withVolts([hung.pool.output]);
    const chain = pick(hung.lead);
    return pedals.map(({ pedal }, index) => {
      const tail = tailOf(hung.places[index]?.route ?? [], hung.pool.exit, pedal);
      return { join: null, chain, ...place, ...feedOf(pedal, outputs, tail) };
    });
  });
}

function feedOf(
  pedal: Pedal,
  outputs: readonly { output: number; volts: Millivolts }[],
  tail: Tail,
): Pick<Feed, 'pedal' | 'outputs' | 'settings' | 'polarity' | 'inletOf' | keyof Tail> {
  const inletOf = unitOfInlet(pedal.id);
  return {
    pedal: pedal.id,
    outputs: outputs.map(({ output }) => output),
    settings: outputs.map(({ volts }) => volts),
    polarity: pedal.polarity,
    ...tail,
    ...(inletOf !== null && { inletOf }),
  };
}

function voltsOf(supply: Supply, { bank, setting }: OutputSetting): Millivolts {
  const volts = supply.banks[bank]?.settings[setting]?.millivolts;
  if (volts === undefined) throw new RangeError(`${supply.id} has no setting ${setting} in bank ${bank}`);
  return volts;
}
