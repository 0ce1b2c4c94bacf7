import { expect, it } from 'vitest';

import { perPedalTier } from '../../../../src/domain/pedal-tier.js';
import { stockOf } from '../../../../src/proof/stock.js';
import { itemsOf } from '../../../../src/proof/unit/items.js';
import { mostCarriedBy } from '../../../../src/proof/unit/most-carried.js';
import { classesOf } from '../../../../src/proof/unit/pedal-class.js';
import { routesOver } from '../../../../src/proof/unit/routes.js';
import { unitShape } from '../../../../src/proof/unit/unit-shape.js';
import { routeCosts } from '../../../../src/proof/unit/values.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  factor,
  partOf,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
} from '../../../support/builders.js';

it('is told exactly of a long chain, though there are too many that are nearly as good to list them', () => {
  const draws = Array.from({ length: 26 }, (_, index) => 31 + 3 * index);
  const tags = draws.map((draw, index) => 2 ** 20 * (40 * draw + ((7 * index) % 11)));
  const [rating, tails, lead] = [500, 8, 600 * 2 ** 20];
  const chain = partOf('chain', 6, { kind: 'chain', tails });
  const supply = supplyOf('wall', 20, [bankOf(1, [settingOf(9, rating)])]);
  const headroom = { alone: factor(1), chained: factor(1), supply: factor(1) };
  const board = boardOf(
    draws.map((draw, index) => pedalOf(`pedal-${index}`, draw)),
    { policy: policyOf({ headroom }) },
  );
  const { kinds } = stockOf(board, catalogueOf([supply], [chain]), false);
  const classes = classesOf(board.pedals);
  const routes = routesOver(kinds);
  const shape = unitShape(supply, null, { policy: board.policy, classes, kinds, routes });
  if (shape === null) throw new Error('the supply can carry nothing');
  const leads = kinds.map(() => lead);
  const prices = {
    leads,
    routes: routeCosts(routes.sets, leads),
    exposed: 0,
    newlyExposed: 0,
    moved: 0,
    ...perPedalTier(() => 0),
  };
  const carried = mostCarriedBy(shape, classes)(itemsOf(classes, tags), prices, 0);
  const best = bestWithin(draws, tags, rating, tails);
  expect(carried.exactly()).toBe(best - lead);
  expect(carried.bound).toBe(best - lead);
});

/** The greatest sum of the tags of at most so many draws that are within a rating. */
function bestWithin(draws: readonly number[], tags: readonly number[], rating: number, tails: number): number {
  const best = Array.from({ length: tails + 1 }, () => Array.from({ length: rating + 1 }, () => 0));
  for (const [index, draw] of draws.entries())
    for (let count = tails; count >= 1; count -= 1)
      for (let room = rating; room >= draw; room -= 1) {
        const sum = (best[count - 1]?.[room - draw] ?? 0) + (tags[index] ?? 0);
        const row = best[count];
        if (row !== undefined) row[room] = Math.max(row[room] ?? 0, sum);
      }
  return best[tails]?.[rating] ?? 0;
}
