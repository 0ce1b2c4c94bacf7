import { withGear, withPolicy } from '../../domain/changed-kit.js';
import { inletPedal, isFed } from '../../domain/inlet.js';
import { kitOf, ownedOf, type Kit } from '../../domain/kit.js';
import { drawAt } from '../../domain/load.js';
import { ownBatteryOf } from '../../domain/own-battery.js';
import type { Part } from '../../domain/part.js';
import type { Pedal } from '../../domain/pedal.js';
import { minorUnits, partId, supplyId, type Millivolts, type PartId, type PedalId } from '../../domain/quantities.js';
import type { Source } from '../../domain/source.js';
import type { Supply } from '../../domain/supply.js';
import { soughtBattery, type SoughtBattery } from '../explain/missing-battery.js';
import { conceivableLeads } from '../explain/missing-lead.js';
import { acceptsVolts } from '../../loadout/outlet.js';
import { chargeFor, spanOf } from '../explain/missing-supply.js';
import { alike, needOf, type Need } from './needs.js';

/**
 * The board with all that could be looked for, at made-up prices. One box has an isolated output for every need of a pedal, and
 * of every inlet of an owned supply that hangs on another one. Its
 * plugs are its own, so that no chain lead fits them, and from each a straight lead goes to the pedal's inlet: it is that lead
 * which costs what the output weighs. So the plan of the least money has
 *
 *     the fewest outputs of the box; of those plans the least milliamps; of those the fewest leads to look for,
 *
 * since an output weighs (outputs + milliamps) × leads, where `outputs` is more than all milliamps together and `leads` more than
 * all leads together. The box takes a supply in use and a mains socket, as the one supply would that has all those outputs; or
 * it is a power bank, which takes no socket and holds enough whatever hangs on it.
 */
export type MadeUpKit = {
  readonly kit: Kit;
  /** What the box stands on; null where there is none. */
  readonly source: Source | null;
  /** By the straight lead from it. */
  readonly needs: ReadonlyMap<PartId, Need>;
  /** What a plan may take beside outputs, by id. */
  readonly leads: ReadonlyMap<PartId, Part>;
  /** Batteries that a plan may take, by id. */
  readonly batteries: ReadonlyMap<PartId, BatteriesFor>;
};

/** A battery for one pedal, and a set of them in it. */
export type BatteriesFor = Pick<SoughtBattery, 'battery' | 'count'> & { readonly pedal: PedalId; readonly set: Supply };

/** On what the outputs to look for stand: a power bank has none of AC. */
export type Stand = 'mains' | 'charge';

/**
 * Null where the figures are so large that they cannot be weighed against one another in exact integers, and where nobody has
 * said how long a power bank must last.
 */
export function madeUpKit(bare: Kit, stand: Stand): MadeUpKit | null {
  const { board } = bare;
  const pedals = [...board.pedals, ...ownedInlets(bare)];
  const needs = pedals
    .map((pedal) => ({ need: needOf(pedal, board.policy) }))
    .filter(({ need }) => stand === 'mains' || need.power === 'DC');
  const source = stand === 'mains' ? onMains(bare) : enoughFor(pedals, needs, bare);
  if (source === null) return null;
  const weigh = weighing(needs.map(({ need }) => need));
  if (weigh === null) return null;
  const lines = alike(needs).map((same, at) => lineOf(same[0].need, same.length, at + 1, weigh(same[0].need)));
  const leads = leadsToLookFor(bare);
  const withBox = withGear(withPolicy(bare, { budget: null }), { supplies: [boxOf(lines, source)] }).board;
  const parts = [...lines.map(({ lead }) => lead), ...leads];
  return {
    source,
    kit: kitOf(withBox, { name: 'what could be looked for', currency: board.currency, supplies: [], parts }),
    needs: new Map(lines.map(({ lead, need }) => [lead.id, need])),
    leads: new Map(leads.map((lead) => [lead.id, lead])),
    batteries: new Map(),
  };
}

/**
 * The board with batteries that could be looked for, where neither a socket nor a power bank is to be had: the plan of the least
 * money has the fewest of them, and of those the fewest leads to look for. Null where no pedal could run on any, or nobody has
 * said how long they must last.
 */
export function kitWithBatteries(bare: Kit): MadeUpKit | null {
  const { board } = bare;
  const leads = leadsToLookFor(bare);
  const weight = minorUnits(1 + mostLeadsEach * board.pedals.length);
  const batteries = board.pedals.flatMap((pedal, at): readonly BatteriesFor[] => {
    const sought = soughtBattery(pedal, bare);
    if (sought === null) return [];
    const id = partId(`wanted battery ${at + 1}`);
    const name = `${sought.battery.role.type} battery (to find)`;
    const battery = { ...sought.battery, ...{ id, name, price: weight, stock: null, fits: id, gives: id } };
    const set = ownBatteryOf(pedal, battery);
    return set === null ? [] : [{ battery, count: sought.count, pedal: pedal.id, set }];
  });
  if (batteries.length === 0) return null;
  const withSets = withGear(withPolicy(bare, { budget: null }), { supplies: batteries.map(({ set }) => set) }).board;
  const parts = [...batteries.map(({ battery }) => battery), ...leads];
  return {
    source: null,
    kit: kitOf(withSets, { name: 'what could be looked for', currency: board.currency, supplies: [], parts }),
    needs: new Map(),
    leads: new Map(leads.map((lead) => [lead.id, lead])),
    batteries: new Map(batteries.map((each) => [each.battery.id, each])),
  };
}

/** The inlets of what is owned and hangs on other supplies, as pedals: each may hang on an output to look for. */
export const ownedInlets = (kit: Kit): readonly Pedal[] =>
  [...kit.supplies.values()]
    .filter(isFed)
    .flatMap((supply) => Array.from({ length: ownedOf(kit, supply) }, (_, at) => inletPedal(supply, at + 1)));

/** No pedal takes more leads than a join lead and two adapters for either way in which its label may read. */
const mostLeadsEach = 5;

/** What an output weighs; null where all of them together are beyond exact integers. */
function weighing(needs: readonly Need[]): ((need: Need) => number) | null {
  const milliamps = ({ rating }: Need): number => rating / 1000;
  const outputs = 1 + needs.reduce((sum, need) => sum + milliamps(need), 0);
  const leads = 1 + mostLeadsEach * needs.length;
  if (!Number.isSafeInteger(2 * outputs * leads * (needs.length + 1))) return null;
  return (need) => (outputs + milliamps(need)) * leads;
}

type Line = { readonly need: Need; readonly outputs: number; readonly lead: Part };

// Ids with blanks: no file can say these, so nothing that is owned has them.
export const wantedSupplyId = supplyId('wanted supply');

const lineOf = (need: Need, outputs: number, number: number, weight: number): Line => ({
  need,
  outputs,
  lead: {
    id: partId(`wanted output ${number}`),
    name: `wanted output ${number}`,
    price: minorUnits(weight),
    stock: null,
    fits: `no such plug ${number}`,
    gives: need.plug,
    reverses: false,
    role: { kind: 'adapter' },
  },
});

/** Outputs that are alike. */
type Outputs = Need & { readonly outputs: number };

const onMains = ({ board }: Kit): Source => ({ kind: 'mains', volts: spanOf(board.policy.mains) });

/** The charge of a power bank that lasts with all of them at whichever volts take the most. */
function enoughFor(
  pedals: readonly Pedal[],
  needs: readonly { readonly need: Need }[],
  { board: { policy } }: Kit,
): Source | null {
  if (policy.runtime === null) return null;
  const hanging = pedals.flatMap((pedal) => {
    const volts = needs.map(({ need }) => need.millivolts).filter((at) => acceptsVolts(pedal, at));
    const power = (at: Millivolts): number => at * drawAt(pedal, at);
    const [most] = volts.sort((one, other) => power(other) - power(one));
    return most === undefined ? [] : [{ pedal, at: most }];
  });
  return chargeFor(hanging, policy.guess, policy.runtime);
}

const boxOf = (lines: readonly Line[], source: Source): Supply =>
  supplyWith(
    'wanted supply',
    lines.map(({ need, outputs, lead }) => ({ ...need, outputs, plug: lead.fits })),
    source,
  );

/** A supply with such outputs, each isolated. */
export function supplyWith(name: string, all: readonly Outputs[], source: Source): Supply {
  let next = 1;
  const banks = all.map(({ outputs, power, plug, polarity, millivolts, rating }) => {
    const firstOutput = next;
    next += outputs;
    return {
      ...{ firstOutput, outputs, isolated: true, power, plug, polarity },
      switching: 'each',
      settings: [{ millivolts, rating, openCircuit: null }],
      joins: [],
      total: null,
    } as const;
  });
  return {
    ...{ id: wantedSupplyId, name, price: null, stock: 0, total: null, banks, assumed: {} },
    source,
  };
}

/**
 * Adapters and join leads that help what is owned, and the reversing leads of pedals whose polarity nobody has read. No chain
 * leads: they would spare an output by tying grounds together, which nobody should do who does not know what he buys.
 */
function leadsToLookFor(bare: Kit): readonly Part[] {
  const conceivable = conceivableLeads(bare).filter(({ role }) => role.kind !== 'chain');
  const reversed = [...new Set(bare.board.pedals.filter(isUnread).map(({ inlet }) => inlet))].filter(
    (inlet) => !conceivable.some((lead) => isReversing(lead, inlet)),
  );
  const shapes = [
    ...conceivable,
    ...reversed.map((inlet) => ({ fits: inlet, gives: inlet, reverses: true, role: { kind: 'adapter' } }) as const),
  ];
  return shapes.map(({ fits, gives, reverses, role }, at) => ({
    id: partId(`wanted lead ${at + 1}`),
    name: nameOf({ fits, gives, reverses, role }),
    price: minorUnits(1),
    stock: null,
    fits,
    gives,
    reverses,
    role,
  }));
}

const isUnread = ({ polarity }: Pedal): boolean => polarity === 'unknown';

const isReversing = ({ fits, gives, reverses, role }: Part, inlet: string): boolean =>
  role.kind === 'adapter' && fits === inlet && gives === inlet && reverses;

function nameOf({ fits, gives, reverses, role }: Pick<Part, 'fits' | 'gives' | 'reverses' | 'role'>): string {
  const kind = role.kind === 'join' ? `${role.mode} lead` : reverses ? 'reversing lead' : 'adapter';
  const also = role.kind === 'join' && reverses ? ' that reverses' : '';
  return `${kind}${also}${fits === gives ? '' : ` to ${gives}`} (to find)`;
}
