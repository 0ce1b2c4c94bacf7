import { gathered } from '../../solver/gathered.js';
import type { Kit } from '../domain/kit.js';
import type { Criterion } from '../domain/aim.js';
import type { PedalId, SupplyId } from '../domain/quantities.js';
import { withoutDominated } from '../loadout/dominance.js';
import type { SupplyUses } from '../loadout/supply-uses.js';
import { nothingToday } from '../loadout/today.js';
import { questionOf, type Question } from './question.js';
import type { Tables } from './tables.js';

/** Where one pedal has to hang: on a unit of this supply and, unless the bank is null, on outputs of this bank alone. */
export type Pin = { readonly pedal: PedalId; readonly supply: SupplyId; readonly bank: number | null };

type Terms = { readonly tiers: readonly Criterion[]; readonly partial: boolean };

/**
 * The question with one pedal kept to a place: every other use of it is struck out. Units of one supply are alike, and so are
 * the outputs of a bank, so that no finer place is needed. The pedal is a class of its own, so that none like it stands in.
 * A plan that may be partial may leave it out, unless it is required.
 */
export function pinnedQuestion(kit: Kit, terms: Terms, pin: Pin, tables?: Tables): Question {
  const apart = { ...nothingToday, pinned: new Set([pin.pedal]) };
  const question = questionOf(kit, { ...terms, today: apart }, tables);
  const pedal = question.bench.classes.findIndex(({ pinned }) => pinned);
  return {
    ...question,
    supplies: question.supplies.flatMap((uses) => pinnedUses(uses, pedal, pin) ?? []),
    spared: pin.supply,
  };
}

/** What is left of a supply; null when that is nothing. Of a join, one of its outputs has to be in the bank. */
function pinnedUses(uses: SupplyUses, pedal: number, pin: Pin): SupplyUses | null {
  const isPlace = (bank: number): boolean => uses.supply.id === pin.supply && (pin.bank === null || bank === pin.bank);
  const solos = uses.solos.filter((use) => use.pedal !== pedal || use.outputs.some(({ bank }) => isPlace(bank)));
  const chains = gathered(uses.chains, (pool) => {
    if (isPlace(pool.output.bank)) return [pool];
    const places = pool.places.filter((place) => place.pedal !== pedal);
    return places.length === 0 ? [] : [{ ...pool, places }];
  });
  return solos.length === 0 && chains.length === 0 ? null : { ...uses, solos, chains };
}

/**
 * The supplies that a search has to look at: those that another one matches in every respect are left out. Where a pedal is
 * kept to a supply, no other one stands in for that, nor does it for others; where ways were struck out, none does for any.
 */
export function worthwhileSupplies({ supplies, bench, spared, narrowed }: Question): readonly SupplyUses[] {
  if (narrowed === true) return supplies;
  const isSpared = ({ supply }: SupplyUses): boolean => supply.id === spared;
  return [
    ...supplies.filter(isSpared),
    ...withoutDominated(
      supplies.filter((uses) => !isSpared(uses)),
      bench,
    ),
  ];
}
