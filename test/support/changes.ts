/** Cases with one rule, or one way out, taken away: where the answer changes, the rule has bitten. */
import type { Policy } from '../../src/domain/board.js';
import type { Part } from '../../src/domain/part.js';
import type { Pedal } from '../../src/domain/pedal.js';
import type { Bank, Setting, Supply } from '../../src/domain/supply.js';
import type { Case } from './arbitraries.js';
import { euros, factor } from './builders.js';

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
