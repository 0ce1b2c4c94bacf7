import type { Board, Catalogue, Policy } from '../../../src/domain/board.js';
import type { Part, PartRole } from '../../../src/domain/part.js';
import type { Pedal } from '../../../src/domain/pedal.js';
import { audit } from '../../../src/audit/audit.js';
import type { JudgedPlan } from '../../../src/domain/judged-plan.js';
import type { Feed } from '../../../src/domain/plan.js';
import {
  factorOfThousandths,
  microamps,
  millivolts,
  minorUnits,
  partId,
  pedalId,
  supplyId,
} from '../../../src/domain/quantities.js';
import type { Bank, Supply } from '../../../src/domain/supply.js';

export const euro = { code: 'EUR', decimals: 2 } as const;

export const policy: Policy = {
  headroom: { alone: factorOfThousandths(1200), chained: factorOfThousandths(2000), supply: factorOfThousandths(1200) },
  guess: factorOfThousandths(1500),
  chains: 'allow',
  noisePrice: minorUnits(2000),
  mains: millivolts(230_000),
  sockets: null,
  budget: null,
  bricks: null,
};

/** A plain 9 V pedal of 10 mA that says nothing special, but for what is given. */
export const pedalOf = (id: string, fields: Partial<Pedal> = {}): Pedal => ({
  id: pedalId(id),
  name: id,
  power: 'DC',
  polarity: 'centre-negative',
  inlet: 'barrel-2.1',
  ground: 'negative',
  accepts: { kind: 'listed', millivolts: [millivolts(9000)] },
  prefers: null,
  survives: null,
  draw: { kind: 'flat', microamps: microamps(10_000) },
  startup: null,
  figure: 'label',
  digital: false,
  highGain: false,
  alone: false,
  assumed: {},
  ...fields,
});

export const settingOf = (volts: number, milliamps: number, openCircuit: number | null = null) => ({
  millivolts: millivolts(volts * 1000),
  rating: microamps(milliamps * 1000),
  openCircuit: openCircuit === null ? null : millivolts(openCircuit * 1000),
});

/** Isolated 9 V outputs of 100 mA, but for what is given. */
export const bankFrom = (firstOutput: number, outputs: number, fields: Partial<Bank> = {}): Bank => ({
  firstOutput,
  outputs,
  isolated: true,
  power: 'DC',
  plug: 'barrel-2.1',
  polarity: 'centre-negative',
  switching: 'each',
  settings: [settingOf(9, 100)],
  joins: [],
  total: null,
  ...fields,
});

export const supplyOf = (id: string, banks: readonly Bank[], fields: Partial<Supply> = {}): Supply => ({
  id: supplyId(id),
  name: id,
  price: minorUnits(5000),
  stock: null,
  mains: { from: millivolts(100_000), to: millivolts(240_000) },
  total: null,
  banks,
  assumed: {},
  ...fields,
});

export const partOf = (id: string, role: PartRole, fields: Partial<Part> = {}): Part => ({
  id: partId(id),
  name: id,
  price: minorUnits(400),
  stock: null,
  fits: 'barrel-2.1',
  gives: 'barrel-2.1',
  reverses: false,
  role,
  ...fields,
});

export const feedOf = (pedal: string, supply: string, output: number, fields: Partial<Feed> = {}): Feed => ({
  pedal: pedalId(pedal),
  supply: supplyId(supply),
  unit: 1,
  outputs: [output],
  settings: [millivolts(9000)],
  polarity: 'centre-negative',
  join: null,
  chain: null,
  adapters: [],
  ...fields,
});

export const boardOf = (pedals: readonly Pedal[], fields: Partial<Board> = {}): Board => ({
  name: 'Test board',
  currency: euro,
  policy,
  pedals,
  gear: { supplies: [], parts: [] },
  owned: { supplies: new Map(), parts: new Map() },
  wiring: [],
  ...fields,
});

export const catalogueOf = (supplies: readonly Supply[], parts: readonly Part[] = []): Catalogue => ({
  name: 'Test shop',
  currency: euro,
  supplies,
  parts,
});

/** What the audit measures of feeds, and what is said of them otherwise. */
export const planOf = (
  board: Board,
  catalogue: Catalogue,
  feeds: readonly Feed[],
  fields: Partial<JudgedPlan> = {},
): JudgedPlan => ({ ...audit(board, catalogue, feeds, { partial: true }).wiring, ...fields });

const tidewayInputs = {
  board: boardOf(
    [
      pedalOf('estuary-echo', {
        name: 'Estuary echo',
        draw: { kind: 'flat', microamps: microamps(180_000) },
        startup: microamps(350_000),
        digital: true,
        assumed: { inlet: 'barrel-2.1', power: 'DC', ground: 'negative', polarity: 'centre-negative' },
      }),
      pedalOf('tarn-fuzz', {
        name: 'Tarn fuzz',
        draw: { kind: 'flat', microamps: microamps(4000) },
        ground: 'positive',
        highGain: true,
        figure: 'measured',
        assumed: { power: 'DC', polarity: 'centre-negative', inlet: 'barrel-2.1' },
      }),
      pedalOf('chapel-drive', {
        name: 'Chapel drive',
        accepts: { kind: 'listed', millivolts: [millivolts(9000), millivolts(18_000)] },
        prefers: millivolts(18_000),
        survives: millivolts(20_000),
        draw: { kind: 'flat', microamps: microamps(15_000) },
        highGain: true,
        alone: true,
        assumed: { power: 'DC', polarity: 'centre-negative', inlet: 'barrel-2.1', ground: 'negative' },
      }),
    ],
    {
      name: 'Tideway four-piece',
      owned: { supplies: new Map([[supplyId('quay-6'), 1]]), parts: new Map([[partId('flip'), 1]]) },
    },
  ),
  catalogue: catalogueOf([
    supplyOf(
      'quay-6',
      [
        bankFrom(1, 4),
        bankFrom(5, 2, { settings: [settingOf(9, 400), settingOf(12, 300), settingOf(18, 200)], joins: ['series'] }),
      ],
      { name: 'Quay 6', price: minorUnits(11_900), total: { kind: 'current', microamps: microamps(1_800_000) } },
    ),
  ]),
} as const;

/** Three pedals on a supply that is owned: the plainest board with a digital, a high-gain and an 18 V pedal. */
export const tideway = {
  ...tidewayInputs,
  wiring: planOf(tidewayInputs.board, tidewayInputs.catalogue, [
    feedOf('estuary-echo', 'quay-6', 5),
    feedOf('tarn-fuzz', 'quay-6', 1),
    feedOf('chapel-drive', 'quay-6', 6, { settings: [millivolts(18_000)] }),
  ]),
} as const;
