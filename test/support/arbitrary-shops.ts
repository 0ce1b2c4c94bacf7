import fc from 'fast-check';

import type { Board, Catalogue } from '../../src/domain/board.js';
import { minorUnits, supplyId } from '../../src/domain/quantities.js';
import type { Supply } from '../../src/domain/supply.js';
import { caseOf, type Case } from './arbitraries.js';
import { numbered } from './builders.js';

/** A model that is like another one but for its price, its stock and perhaps the outputs of its first bank. */
type Cousin = { readonly dearer: number; readonly stock: number | null; readonly fewer: boolean };

const cousins = fc.array(
  fc.record({
    dearer: fc.integer({ min: 1, max: 30 }).map((step) => step * 50),
    stock: fc.constantFrom(null, null, 1, 2),
    fewer: fc.boolean(),
  }),
  { minLength: 1, maxLength: 2 },
);

/** One to three pedals and a shop that has everything in several makes, so that there are many purchases to tell apart. */
export const shoppingCase: fc.Arbitrary<Case> = fc
  .record({
    of: caseOf({ min: 1, max: 3 }, { min: 1, max: 2 }, 2),
    cousins,
    owns: fc.integer({ min: 0, max: 3 }).map((die) => die === 0),
    limited: fc.integer({ min: 0, max: 3 }).map((die) => die === 0),
  })
  .map(({ of: { board, catalogue }, cousins: made, owns, limited }) => ({
    board: customer(board, owns, limited),
    catalogue: stocked(catalogue, board, made),
  }));

/**
 * Pedals that expose one another wherever they share a ground, and a shop with every model on a common ground, dearer with
 * isolated outputs, and cheaper with a single output: both quiet and few supplies cost money.
 */
export const noisyCase: fc.Arbitrary<Case> = fc
  .record({ of: caseOf({ min: 2, max: 3 }, { min: 1, max: 2 }, 1), dearer: fc.integer({ min: 1, max: 9 }) })
  .map(({ of: { board, catalogue }, dearer }) => ({
    board: {
      ...customer(board, false, false),
      pedals: board.pedals.map((pedal, at) => ({
        ...pedal,
        adapter: null,
        battery: null,
        digital: at === 0,
        highGain: at > 0,
        ground: 'negative' as const,
      })),
    },
    catalogue: {
      ...catalogue,
      supplies: [...catalogue.supplies, ...board.gear.supplies.filter(isBox)].flatMap((supply) =>
        threeMakes(supply, 300 * dearer),
      ),
    },
  }));

function threeMakes(supply: Supply, dearer: number): readonly Supply[] {
  const price = 1000 + dearer;
  const shared = supply.banks.map((bank) => ({ ...bank, isolated: false, joins: [] }));
  const make = (name: string, at: number, banks: Supply['banks']): Supply =>
    renamed(supply, name, { price: minorUnits(at), stock: null, banks: numbered(banks.map(withoutNumber)) });
  return [
    make('shared', price, shared),
    make(
      'isolated',
      price + dearer,
      shared.map((bank) => ({ ...bank, isolated: true })),
    ),
    make(
      'single',
      700,
      shared.slice(0, 1).map((bank) => ({ ...bank, outputs: 1 })),
    ),
  ];
}

/** Who owns a supply mostly needs no other; who has tight limits cannot choose. */
function customer(board: Board, owns: boolean, limited: boolean): Board {
  const { policy, owned, gear } = board;
  return {
    ...board,
    // What a pedal came with would leave less to buy.
    pedals: board.pedals.map((pedal) => ({ ...pedal, adapter: null, battery: null })),
    policy: limited ? policy : { ...policy, budget: null, bricks: null, sockets: null },
    owned: owns ? owned : { ...owned, supplies: new Map() },
    gear: { ...gear, supplies: owns ? gear.supplies.filter(isBox) : [] },
  };
}

/** Not the adapter that a pedal came with. */
const isBox = ({ source }: Supply): boolean => source.kind === 'mains';

/** Also what was gear is for sale, as another model. */
function stocked(catalogue: Catalogue, { gear }: Board, made: readonly Cousin[]): Catalogue {
  const models = [...catalogue.supplies, ...gear.supplies.filter(isBox).map((supply) => renamed(supply, 'new', {}))];
  const others = models.flatMap((supply) => made.map((cousin, at) => cousinOf(supply, cousin, at)));
  return { ...catalogue, supplies: [...models, ...others].map(forSale) };
}

const forSale = (supply: Supply): Supply => ({
  ...supply,
  price: supply.price ?? minorUnits(1500),
  stock: supply.stock === 0 ? 1 : supply.stock,
});

function cousinOf(supply: Supply, { dearer, stock, fewer }: Cousin, at: number): Supply {
  const price = minorUnits((supply.price ?? 1000) + dearer * (at + 1));
  const banks = supply.banks.map((bank, index) => {
    const outputs = fewer && index === 0 ? Math.max(1, bank.outputs - 1) : bank.outputs;
    return { ...bank, outputs };
  });
  return renamed(supply, `make-${at + 2}`, { price, stock, banks: numbered(banks.map(withoutNumber)) });
}

const withoutNumber = ({ firstOutput: _, ...bank }: Supply['banks'][number]) => bank;

const renamed = (supply: Supply, suffix: string, more: Partial<Supply>): Supply => ({
  ...supply,
  ...more,
  id: supplyId(`${supply.id}-${suffix}`),
  name: `${supply.name} ${suffix}`,
});
