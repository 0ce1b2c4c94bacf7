import type { Board, Catalogue, Policy } from '../../../src/domain/board.js';
import type { Part } from '../../../src/domain/part.js';
import type { Pedal } from '../../../src/domain/pedal.js';
import { partId, supplyId } from '../../../src/domain/quantities.js';
import type { Supply } from '../../../src/domain/supply.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  partOf,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
} from '../../support/builders.js';

/** A board and a shop in a few words; what is left out is empty, and nothing is limited. */
export type Given = {
  readonly pedals: readonly Pedal[];
  readonly supplies: readonly Supply[];
  readonly parts?: readonly Part[];
  readonly policy?: Partial<Policy>;
  /** How many are owned, by the id of a supply or part. */
  readonly owned?: Readonly<Record<string, number>>;
  readonly gear?: Partial<Board['gear']>;
};

export function caseOf({ pedals, supplies, parts = [], policy = {}, owned = {}, gear = {} }: Given): {
  readonly board: Board;
  readonly catalogue: Catalogue;
} {
  const ownedOf = <Id>(things: readonly { readonly id: string }[], idOf: (id: string) => Id): ReadonlyMap<Id, number> =>
    new Map(things.flatMap(({ id }) => (owned[id] === undefined ? [] : [[idOf(id), owned[id]] as const])));
  const allGear = { supplies: [], parts: [], ...gear };
  return {
    board: boardOf(pedals, {
      policy: policyOf(policy),
      gear: allGear,
      owned: {
        supplies: ownedOf([...supplies, ...allGear.supplies], supplyId),
        parts: ownedOf([...parts, ...allGear.parts], partId),
      },
    }),
    catalogue: catalogueOf(supplies, parts),
  };
}

type BankChange = Parameters<typeof bankOf>[2];

/** For 10 euros: so many 9 V outputs of 100 mA, changed as given. */
export const box = (outputs: number, change: BankChange = {}, more: Parameters<typeof supplyOf>[3] = {}): Supply =>
  supplyOf('box', 10, [bankOf(outputs, [settingOf(9, 100)], change)], more);

/** For 10 euros: a supply of the given banks. */
export const boxOf = (banks: readonly ReturnType<typeof bankOf>[], more: Parameters<typeof supplyOf>[3] = {}): Supply =>
  supplyOf('box', 10, banks, more);

/** A 9 V pedal that draws the milliamps, changed as given. */
export const one = (draw = 50, change: Parameters<typeof pedalOf>[2] = {}): readonly Pedal[] => [
  pedalOf('one', draw, change),
];

/** Two 9 V pedals of 40 mA, the second changed as given. */
export const pairWith = (change: Parameters<typeof pedalOf>[2] = {}): readonly Pedal[] => [
  pedalOf('one', 40),
  pedalOf('two', 40, change),
];

/** A five-way chain lead for 1 euro. */
export const fan = partOf('fan', 1, { kind: 'chain', tails: 5 });
/** A reversing lead for 4 euros. */
export const flip = partOf('flip', 4, { kind: 'adapter' }, { reverses: true });
/** A series lead for 9 euros. */
export const stack = partOf('stack', 9, { kind: 'join', mode: 'series' });
/** A parallel lead for 9 euros. */
export const twin = partOf('twin', 9, { kind: 'join', mode: 'parallel' });

/** An adapter for 2 euros. */
export const adapter = (id: string, fits: string, gives: string, reverses = false): Part =>
  partOf(id, 2, { kind: 'adapter' }, { fits, gives, reverses });
