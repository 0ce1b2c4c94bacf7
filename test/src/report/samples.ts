import type { Board, Catalogue } from '../../../src/domain/board.js';
import type { Part, PartRole } from '../../../src/domain/part.js';
import type { Pedal } from '../../../src/domain/pedal.js';
import { audit } from '../../../src/audit/audit.js';
import type { JudgedPlan } from '../../../src/domain/judged-plan.js';
import type { Feed } from '../../../src/domain/plan.js';
import { microamps, millivolts, minorUnits, partId, supplyId } from '../../../src/domain/quantities.js';
import type { Bank, Supply } from '../../../src/domain/supply.js';
import * as builders from '../../support/builders.js';
import { catalogueOf, factor, feedOf, settingOf, volts } from '../../support/builders.js';

export { catalogueOf, feedOf, settingOf };

export const euro = { code: 'EUR', decimals: 2 } as const;

export const policy = builders.policyOf({
  headroom: { alone: factor(1.2), chained: factor(2), supply: factor(1.2) },
  guess: factor(1.5),
  mains: [volts(230)],
});

/** A plain 9 V pedal of 10 mA that says nothing special, but for what is given. */
export const pedalOf = (id: string, fields: Partial<Pedal> = {}): Pedal => builders.pedalOf(id, 10, fields);

/** Isolated 9 V outputs of 100 mA, but for what is given. */
export const bankFrom = (firstOutput: number, outputs: number, fields: Partial<Bank> = {}): Bank => ({
  firstOutput,
  ...builders.bankOf(outputs, [settingOf(9, 100)], fields),
});

/** A supply for 50 euros that takes any usual mains, with banks that are numbered already. */
export const supplyOf = (id: string, banks: readonly Bank[], fields: Partial<Supply> = {}): Supply => ({
  ...builders.supplyOf(id, 50, [], { ...builders.onMains(100, 240), ...fields }),
  banks,
});

export const partOf = (id: string, role: PartRole, fields: Partial<Part> = {}): Part =>
  builders.partOf(id, 4, role, fields);

export const boardOf = (pedals: readonly Pedal[], fields: Partial<Board> = {}): Board =>
  builders.boardOf(pedals, { policy, ...fields });

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
