import { isMoney } from '../../domain/aim.js';
import { withBoard, withPolicy, withThings } from '../../domain/changed-kit.js';
import { bankOfOutput, forSaleOf, ownedOf, type Kit } from '../../domain/kit.js';
import { inletId, inletIn, unitOfInlet, type UnitRef } from '../../domain/inlet.js';
import { everyFeed } from '../../domain/plan.js';
import { minorUnits, type MinorUnits, type PedalId, type SupplyId } from '../../domain/quantities.js';
import { hasEnded, type Effort } from '../../formulation/optimiser.js';
import { nothingToday, type Berth, type Today } from '../../loadout/today.js';
import type { Answer, Gap } from '../answer.js';
import { ask } from '../asking/ask.js';
import { audited } from '../asking/audited.js';
import { effortOf } from '../asking/search-options.js';
import { answerTo } from './answer-to.js';
import type { ChooseOptions } from './choose.js';

/**
 * Where somebody wants a pedal to hang, or the inlet of a fed unit by what stands for it (`inletId`). Units that are not owned
 * are alike: only which pedals share one counts.
 */
export type PinnedPlace = Berth & { readonly pedal: PedalId };

export type AroundPins =
  | Answer
  /** There are plans, but none that keeps every pin. */
  | {
      readonly kind: 'held up';
      /** The pedals or inlets of which to let go of any one is enough, as far as that was settled; in the order of the pins. */
      readonly letGo: readonly PedalId[];
    };

/**
 * As `choose`, among the plans that have these pedals and inlets at these places: proven when no such plan is better. A unit
 * whose inlet is pinned is in use. Units of the pins that are not owned have to be bought, so their price is spent before
 * anything else; the rest is planned as if they were owned. Pins of what is not there are left aside.
 * @throws Error when a plan fails its own audit: a defect of boardfeed, never of the input.
 */
export async function chooseAround(
  kit: Kit,
  pins: readonly PinnedPlace[],
  { aim = 'cost', ...options }: Omit<ChooseOptions, 'partial' | 'method' | 'proof'> = {},
): Promise<AroundPins> {
  const known = pins.filter(({ pedal }) => isThere(kit, pedal));
  const effort = effortOf(options);
  const job = { aim, partial: false, effort };
  const around = aroundOf(kit, known);
  if (around === null || !(await mayHold(around, effort))) {
    const free = await ask(kit, { tiers: [] }, silent(effort));
    if (free.kind === 'impossible') return answerTo({ ...job, kit, today: nothingToday });
    return { kind: 'held up', letGo: await letGoOf(kit, known, effort) };
  }
  const answer = await answerTo({ ...job, kit: around.kit, today: around.today });
  if (answer.kind !== 'plan') return answer;
  const wiring = audited({ kit, partial: false }, everyFeed(answer.wiring));
  return { ...answer, wiring, gap: answer.gap === null ? null : withSpent(answer.gap, around.spent) };
}

const isThere = (kit: Kit, id: PedalId): boolean =>
  kit.board.pedals.some((pedal) => pedal.id === id) || inletIn(kit, id) !== null;

/** The kit in which the units that pins are on are owned, and what that takes in minor units. */
type Around = { readonly kit: Kit; readonly today: Today; readonly spent: MinorUnits };

/** Null when the pins are on what there is not, or on more units than can be had. */
function aroundOf(kit: Kit, pins: readonly PinnedPlace[]): Around | null {
  if (!pins.every((pin) => isPlace(kit, pin))) return null;
  const units = unitNumbers(kit, pins);
  const bought = new Map<SupplyId, number>();
  for (const [id, numbers] of units) {
    const supply = kit.supplies.get(id);
    const beyond = supply === undefined ? 0 : Math.max(0, ...numbers.values()) - ownedOf(kit, supply);
    if (supply === undefined || beyond > forSaleOf(supply)) return null;
    if (beyond > 0) bought.set(id, beyond);
  }
  const spent = minorUnits(
    [...bought].reduce((sum, [id, beyond]) => sum + beyond * (kit.supplies.get(id)?.price ?? 0), 0),
  );
  const { budget } = kit.board.policy;
  if (budget !== null && spent > budget) return null;
  const numbered = pins.map((pin) => numberedPin(pin, units));
  return {
    kit: withPolicy(withBought(kit, bought), { budget: budget === null ? null : minorUnits(budget - spent) }),
    today: {
      berths: new Map(numbered.map((pin) => [pin.pedal, pin])),
      exposed: new Set(),
      pinned: new Set(numbered.map(({ pedal }) => pedal)),
    },
    spent,
  };
}

type UnitNumbers = ReadonlyMap<SupplyId, ReadonlyMap<number, number>>;

function numberedPin<Pin extends PinnedPlace>(pin: Pin, units: UnitNumbers): Pin {
  const numbered = <Of extends UnitRef>(of: Of): Of => ({ ...of, unit: units.get(of.supply)?.get(of.unit) ?? of.unit });
  const fed = unitOfInlet(pin.pedal);
  return { ...numbered(pin), pedal: fed === null ? pin.pedal : inletId(numbered(fed)) };
}

/** The pins as a plan around them has them: inlets by the numbers that their units have there. */
export function pinsInPlan<Pin extends PinnedPlace>(kit: Kit, pins: readonly Pin[]): readonly Pin[] {
  const units = unitNumbers(kit, pins);
  return pins.map((pin) => numberedPin(pin, units));
}

function isPlace({ supplies }: Kit, { supply: id, outputs, millivolts }: PinnedPlace): boolean {
  const supply = supplies.get(id);
  return (
    supply !== undefined &&
    outputs.every((output) => {
      const bank = bankOfOutput(supply, output);
      // What a join gives is no setting of either output.
      return bank !== undefined && (outputs.length > 1 || bank.settings.some((set) => set.millivolts === millivolts));
    })
  );
}

/** Of each supply, the numbers that its pinned units get: owned ones keep theirs, the others take the least that are left. */
function unitNumbers(kit: Kit, pins: readonly PinnedPlace[]): UnitNumbers {
  const numbers = new Map<SupplyId, Map<number, number>>();
  const units: readonly UnitRef[] = [...pins, ...pins.flatMap(({ pedal }) => unitOfInlet(pedal) ?? [])];
  for (const { supply, unit } of [...units].sort((one, other) => one.unit - other.unit)) {
    const known = numbers.get(supply) ?? new Map<number, number>();
    numbers.set(supply, known);
    const described = kit.supplies.get(supply);
    const isOwned = described !== undefined && unit <= ownedOf(kit, described);
    if (!known.has(unit)) known.set(unit, isOwned ? unit : leastLeft(known));
  }
  return numbers;
}

function leastLeft(numbers: ReadonlyMap<number, number>): number {
  const taken = new Set(numbers.values());
  return Array.from({ length: taken.size + 1 }, (_, at) => at + 1).find((number) => !taken.has(number)) ?? 1;
}

/** So many units are owned besides, and no longer for sale. */
function withBought(kit: Kit, bought: ReadonlyMap<SupplyId, number>): Kit {
  const { owned } = kit.board;
  const supplies = new Map(owned.supplies);
  for (const [id, units] of bought) supplies.set(id, (supplies.get(id) ?? 0) + units);
  const sold = withThings(kit, (supply) => {
    const { stock, id } = supply;
    return stock === null ? supply : { ...supply, stock: stock - (bought.get(id) ?? 0) };
  });
  return withBoard(sold, { ...sold.board, owned: { ...owned, supplies } });
}

/** Whether a plan keeps all pins, or the time ran out before that was known. */
async function mayHold({ kit, today }: Around, effort: Effort): Promise<boolean> {
  return (await ask(kit, { tiers: [], today }, silent(effort))).kind !== 'impossible';
}

async function letGoOf(kit: Kit, pins: readonly PinnedPlace[], effort: Effort): Promise<readonly PedalId[]> {
  const found: PedalId[] = [];
  for (const pin of pins) {
    if (hasEnded(effort)) break;
    const around = aroundOf(
      kit,
      pins.filter((other) => other !== pin),
    );
    if (around === null) continue;
    if ((await ask(around.kit, { tiers: [], today: around.today }, silent(effort))).kind === 'plan')
      found.push(pin.pedal);
  }
  return found;
}

const silent = (effort: Effort): Effort => ({ ...effort, onProgress: undefined });

/** What is spent on the units of pins is in every plan. */
const withSpent = ({ tier, value, bound }: Gap, spent: MinorUnits): Gap =>
  isMoney(tier) ? { tier, value: value + spent, bound: bound === null ? null : bound + spent } : { tier, value, bound };
