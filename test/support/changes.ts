/** Cases with one rule, or one way out, taken away: where the answer changes, the rule has bitten. */
import type { Policy } from '../../src/domain/board.js';
import type { Part } from '../../src/domain/part.js';
import type { Pedal } from '../../src/domain/pedal.js';
import { isFed } from '../../src/domain/inlet.js';
import {
  microampHours,
  microamps,
  milliwattHours,
  minorUnits,
  type MicroampHours,
  type MinorUnits,
} from '../../src/domain/quantities.js';
import { natureOf, type Inlet, type Source } from '../../src/domain/source.js';
import type { Bank, Setting, Supply } from '../../src/domain/supply.js';
import type { Case } from './arbitraries.js';
import { euros, factor, milliamps, volts } from './builders.js';

export type Change = {
  readonly name: string;
  readonly changed: (given: Case) => Case;
};

const one = factor(1);

const ofPolicy = (name: string, change: (policy: Policy) => Partial<Policy>): Change => ({
  name,
  changed: ({ board, catalogue }) => ({
    board: { ...board, policy: { ...board.policy, ...change(board.policy) } },
    catalogue,
  }),
});

const ofPedals = (name: string, change: (pedal: Pedal) => Partial<Pedal>): Change => ({
  name,
  changed: ({ board, catalogue }) => ({
    board: { ...board, pedals: board.pedals.map((pedal) => ({ ...pedal, ...change(pedal) })) },
    catalogue,
  }),
});

const ofSupplies = (name: string, change: (supply: Supply) => Partial<Supply>): Change => {
  const changedAll = (supplies: readonly Supply[]) => supplies.map((supply) => ({ ...supply, ...change(supply) }));
  return {
    name,
    changed: ({ board, catalogue }) => ({
      board: { ...board, gear: { ...board.gear, supplies: changedAll(board.gear.supplies) } },
      catalogue: { ...catalogue, supplies: changedAll(catalogue.supplies) },
    }),
  };
};

const ofBanks = (name: string, change: (bank: Bank) => Partial<Bank>): Change =>
  ofSupplies(name, ({ banks }) => ({ banks: banks.map((bank) => ({ ...bank, ...change(bank) })) }));

const ofSettings = (name: string, change: (setting: Setting) => Partial<Setting>): Change =>
  ofBanks(name, ({ settings }) => ({ settings: settings.map((setting) => ({ ...setting, ...change(setting) })) }));

const ofParts = (name: string, change: (part: Part) => readonly Part[]): Change => ({
  name,
  changed: ({ board, catalogue }) => ({
    board: { ...board, gear: { ...board.gear, parts: board.gear.parts.flatMap(change) } },
    catalogue: { ...catalogue, parts: catalogue.parts.flatMap(change) },
  }),
});

const ofSources = <Kind extends Source['kind']>(
  kind: Kind,
  name: string,
  change: (source: Extract<Source, { readonly kind: Kind }>) => Partial<Extract<Source, { readonly kind: Kind }>>,
): Change =>
  ofSupplies(name, ({ source }) => {
    const isOfKind = (of: Source): of is Extract<Source, { readonly kind: Kind }> => of.kind === kind;
    return isOfKind(source) ? { source: { ...source, ...change(source) } } : {};
  });

/** A battery is described twice: as what is bought, and as the set that is in a pedal. */
const ofBatteries = (name: string, factorOfCharge: number): Change => {
  const held = (charge: MicroampHours): MicroampHours => microampHours(charge * factorOfCharge);
  const ofSets = ofSources('battery', name, (source) => ({ microampHours: held(source.microampHours) }));
  const ofBought = ofParts(name, (part) => [
    part.role.kind === 'battery'
      ? { ...part, role: { ...part.role, microampHours: held(part.role.microampHours) } }
      : part,
  ]);
  return { name, changed: (given) => ofBought.changed(ofSets.changed(given)) };
};

const pricedBatteries = (name: string, priced: (price: MinorUnits) => MinorUnits): Change =>
  ofParts(name, (part) => [
    part.role.kind === 'battery' && part.price !== null ? { ...part, price: priced(part.price) } : part,
  ]);

const ofInlets = (name: string, change: (inlet: Inlet) => Partial<Inlet>): Change =>
  ofSources('fed', name, ({ inlet }) => ({ inlet: { ...inlet, ...change(inlet) } }));

/** Rules taken away, each side of a rule by itself: no answer may get worse. */
export const relaxations: readonly Change[] = [
  ofSettings('voltage: no open-circuit volts', () => ({ openCircuit: null })),
  ofPolicy('current: headroom alone', ({ headroom }) => ({ headroom: { ...headroom, alone: one } })),
  ofPolicy('current: headroom chained', ({ headroom }) => ({ headroom: { ...headroom, chained: one } })),
  ofPolicy('current: guesses', () => ({ guess: one })),
  ofPedals('startup', () => ({ startup: null })),
  ofBanks('total: of banks', () => ({ total: null })),
  ofSupplies('total: of supplies', () => ({ total: null })),
  ofPolicy('total: headroom', ({ headroom }) => ({ headroom: { ...headroom, supply: one } })),
  ofBanks('setting: switched together', () => ({ switching: 'each' })),
  ofPedals('ground: all alike', () => ({ ground: 'negative' })),
  ofBanks('ground: all isolated', () => ({ isolated: true })),
  ofPedals('chain: none alone', () => ({ alone: false })),
  ofPolicy('chain: allowed', () => ({ chains: 'allow' })),
  ofParts('chain: more tails', (part) => [
    part.role.kind === 'chain' ? { ...part, role: { kind: 'chain', tails: 9 } } : part,
  ]),
  ofPolicy('mains', () => ({ mains: [] })),
  ofPolicy('runtime', ({ runtime }) => (runtime === null ? {} : { runtime: { hours: factor(0.001), usable: one } })),
  ofSupplies('stock: of supplies', ({ price }) => (price === null ? {} : { stock: null })),
  ofParts('stock: of parts', (part) => [part.price === null ? part : { ...part, stock: null }]),
  ofPolicy('limit: budget', () => ({ budget: null })),
  ofPolicy('limit: bricks', () => ({ bricks: null })),
  ofPolicy('limit: sockets', () => ({ sockets: null })),
  ofPolicy('noise: free', () => ({ noisePrice: euros(0) })),
  ofPolicy('supplies in use: free', () => ({ supplyPrice: euros(0) })),
  ofPedals('noise: none', () => ({ highGain: false })),
  ofPedals('preferred volts', () => ({ prefers: null })),
];

const endless = milliwattHours(1_000_000_000);

/** The same of what pedals stand on beside mains; none of it matters to a board on which nothing else is. */
export const sourceRelaxations: readonly Change[] = [
  ofPolicy('battery: hours to last', ({ batteries }) =>
    batteries === null ? {} : { batteries: { ...batteries, change: factor(0.001) } },
  ),
  ofPolicy('battery: hours to pay', ({ batteries }) =>
    batteries === null ? {} : { batteries: { ...batteries, pay: factor(0.001) } },
  ),
  ofBatteries('battery: more charge', 100),
  pricedBatteries('battery: free', () => euros(0)),
  ofSources('charge', 'runtime: more charge', () => ({ milliwattHours: endless })),
  ofSources('adapter', 'mains: of adapters', () => ({ volts: { from: volts(1), to: volts(1000) } })),
  ofInlets('inlet: draws next to nothing', () => ({ microamps: milliamps(1), startup: null })),
  ofInlets('inlet: takes any volts', () => ({ accepts: { kind: 'range', from: volts(1), to: volts(100) } })),
  {
    name: 'inlet: none needed',
    changed: (given) => {
      const stood = ofSupplies('', ({ source }) =>
        source.kind === 'fed' ? { source: { kind: 'charge', milliwattHours: endless } } : {},
      );
      const allowed = ofPolicy('', ({ runtime }) => ({ runtime: runtime ?? { hours: factor(0.001), usable: one } }));
      return given.board.gear.supplies.concat(given.catalogue.supplies).some(isFed)
        ? allowed.changed(stood.changed(given))
        : given;
    },
  },
  ofSupplies('inlet: one more output', ({ banks, source }) =>
    natureOf(source).feedsInlets
      ? { banks: banks.map((bank, at) => (at === banks.length - 1 ? { ...bank, outputs: bank.outputs + 1 } : bank)) }
      : {},
  ),
];

/** Ways out taken away: no answer may get better. */
export const restrictions: readonly Change[] = [
  ofBanks('power: no AC outputs', ({ power }) => (power === 'AC' ? { joins: [], outputs: 0 } : {})),
  ofPedals('voltage: a stated maximum', () => ({ survives: null })),
  ofBanks('polarity: no switches', ({ polarity }) => (polarity === 'either' ? { polarity: 'centre-negative' } : {})),
  ofParts('polarity: no reversing leads', (part) => (part.reverses && part.role.kind === 'adapter' ? [] : [part])),
  ofParts('plug: no adapters', (part) => (part.fits !== part.gives && part.role.kind === 'adapter' ? [] : [part])),
  ofPolicy('chain: never', () => ({ chains: 'never' })),
  ofParts('chain: none that turns', (part) => (part.role.kind === 'chain' && part.reverses ? [] : [part])),
  ofParts('chain: none with another plug', (part) =>
    part.role.kind === 'chain' && part.fits !== part.gives ? [] : [part],
  ),
  ofParts('join: no series', (part) => (part.role.kind === 'join' && part.role.mode === 'series' ? [] : [part])),
  ofParts('join: no parallel', (part) => (part.role.kind === 'join' && part.role.mode === 'parallel' ? [] : [part])),
];

/** The same of what pedals stand on beside mains. */
export const sourceRestrictions: readonly Change[] = [
  ofPolicy('battery: none', () => ({ batteries: null })),
  ofBatteries('battery: less charge', 0.01),
  pricedBatteries('battery: dear', (price) => minorUnits(price * 10)),
  ofPolicy('runtime: no power banks', () => ({ runtime: null })),
  ofSources('charge', 'runtime: less charge', () => ({ milliwattHours: milliwattHours(1) })),
  ofSources('adapter', 'mains: adapters for no venue', () => ({ volts: null })),
  ofInlets('inlet: draws much', ({ microamps: drawn }) => ({ microamps: microamps(drawn * 10) })),
  ofInlets('inlet: fits nothing', () => ({ plug: 'no such plug' })),
];
