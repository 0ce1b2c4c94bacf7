/** Short ways to what the modules of src/loadout hand to one another. */
import type { Policy } from '../../src/domain/board.js';
import type { Part } from '../../src/domain/part.js';
import type { Pedal } from '../../src/domain/pedal.js';
import type { PartId } from '../../src/domain/quantities.js';
import type { Supply } from '../../src/domain/supply.js';
import { chainExitsBy } from '../../src/loadout/chain-exits.js';
import { groundModes } from '../../src/loadout/ground-mode.js';
import { leadKinds, type LeadKind } from '../../src/loadout/lead-kinds.js';
import { pedalClasses } from '../../src/loadout/pedal-class.js';
import { router } from '../../src/loadout/routes.js';
import type { Bench } from '../../src/loadout/bench.js';
import { supplyUses, type SupplyUses } from '../../src/loadout/supply-uses.js';
import { policyOf } from './builders.js';

/** Some of a part that are owned, beside those that its stock lets one buy. */
export const kindsOf = (parts: readonly Part[], owned: Readonly<Record<string, number>> = {}): readonly LeadKind[] =>
  leadKinds(
    parts.map((part) => ({
      part,
      owned: owned[part.id] ?? 0,
      forSale: part.price === null ? 0 : (part.stock ?? Infinity),
    })),
  );

export function benchOf(pedals: readonly Pedal[], parts: readonly Part[] = [], policy: Policy = policyOf()): Bench {
  const classes = pedalClasses(pedals);
  const kinds = kindsOf(parts);
  return {
    policy,
    classes,
    modes: groundModes(classes),
    kinds,
    routes: router(kinds),
    chainExits: chainExitsBy(kinds),
  };
}

/** What a supply can do for a bench. @throws Error when that is nothing. */
export function usesOf(supply: Supply, bench: Bench, owned = 0): SupplyUses {
  const uses = supplyUses(
    { supply, owned, forSale: supply.price === null ? 0 : (supply.stock ?? Infinity), unit: null },
    bench,
  );
  if (uses === null) throw new Error(`${supply.id} can do nothing`);
  return uses;
}

/** The ids of the parts that stand first in each lead kind. */
export const idsOf = (kinds: readonly number[], all: readonly LeadKind[]): readonly (PartId | undefined)[] =>
  kinds.map((kind) => all[kind]?.supplyOf[0]?.part);
