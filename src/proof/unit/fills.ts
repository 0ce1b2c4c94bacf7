import type { CaseModel } from './case-model.js';
import { chainWorth, rentOf, type Bound } from './rents.js';
import { searchChains } from './search-chains.js';
import type { CaseValues } from './values.js';

/** What may stand on an output, or on two that are joined. */
export type Fill = {
  /** One entry a pedal. */
  readonly items: readonly number[];
  readonly banks: readonly number[];
  readonly burdens: readonly number[];
  /** By how much it is worth less than the rents of what it takes; at least 0, in steps. */
  readonly loss: number;
};

/** Everything that loses at most `spare` against its rents; null when there are more than `mostFills` of it. */
export function fillsWithin(
  model: CaseModel,
  values: CaseValues,
  { rents }: Bound,
  spare: number,
  mostFills: number,
): readonly Fill[] | null {
  const fills = new Map<string, Fill>();
  const keep = (fill: Fill): void => {
    const key = `${fill.items.join()}|${fill.banks.join()}|${fill.burdens.join()}`;
    const known = fills.get(key);
    if (known === undefined || fill.loss < known.loss) fills.set(key, fill);
  };
  for (const [index, { item, banks, burdens }] of model.places.entries()) {
    const worth = values.places[index] ?? -Infinity;
    const outputs = banks.reduce((sum, bank) => sum + (rents.banks[bank] ?? 0), 0);
    const loss = outputs + (rents.items[item] ?? 0) + rentOf(burdens, rents.caps) - worth;
    if (worth > 0 && loss <= spare) keep({ items: [item], banks, burdens, loss });
  }
  for (const [index, chain] of model.chains.entries()) {
    const rent = rents.banks[chain.bank] ?? 0;
    searchChains(chain, chainWorth(model, values, rents, index), rent - spare, (links, adds) => {
      const taken = links.flatMap((link) => chain.links[link] ?? []);
      keep({
        items: taken.map(({ item }) => item).sort((first, second) => first - second),
        banks: [chain.bank],
        burdens: model.caps.map((_, cap) =>
          taken.reduce((sum, link) => sum + (link.burdens[cap] ?? 0), chain.burdens[cap] ?? 0),
        ),
        loss: rent - adds,
      });
      // Nothing is asked for any more once there is too much.
      return fills.size > mostFills ? Infinity : rent - spare;
    });
    if (fills.size > mostFills) return null;
  }
  return [...fills.values()].sort((first, second) => first.loss - second.loss);
}
