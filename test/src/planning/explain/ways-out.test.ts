import { describe, expect, it } from 'vitest';

import { audit } from '../../../../src/audit/audit.js';
import { everyFeed } from '../../../../src/domain/plan.js';
import { factorOfThousandths, minorUnits } from '../../../../src/domain/quantities.js';
import { explain } from '../../../../src/planning/explain/explain.js';
import { at } from '../../../../src/planning/explain/demand-ways.js';
import { withMore } from '../../../../src/planning/explain/stock-ways.js';
import type { Change, WayOut } from '../../../../src/planning/explain/way-out.js';
import { withPolicy } from '../../../../src/domain/changed-kit.js';
import { kitOf, type Kit } from '../../../../src/domain/kit.js';
import { bruteForce } from '../../../support/brute-force.js';
import { caseFor, impossibleCases } from '../../../support/impossible-cases.js';

const patient = { shrinkMs: 100_000 };

function planOf({ board, catalogue }: Kit) {
  if (catalogue === null) throw new Error('there is no shop');
  return bruteForce(board, catalogue, { aim: 'cost', partial: false });
}

const isPossible = (kit: Kit): boolean => planOf(kit).kind === 'plan';

const stepped = ['budget', 'bricks', 'sockets', 'factor', 'hours', 'stock'] as const;
type Stepped = Extract<Change, { readonly kind: (typeof stepped)[number] }>;
const isStepped = (change: Change): change is Stepped => stepped.some((kind) => kind === change.kind);

/** The same change, one step less of it; null where it has no steps. */
const oneStepLess = ({ change }: WayOut, kit: Kit): Kit | null => (isStepped(change) ? lessOf(change, kit) : null);

function lessOf(change: Stepped, kit: Kit): Kit {
  switch (change.kind) {
    case 'budget':
      return withPolicy(kit, { budget: minorUnits(change.to - 1) });
    case 'bricks':
    case 'sockets':
      return withPolicy(kit, { [change.kind]: change.to - 1 });
    case 'factor': {
      const thousandths = (change.to.numerator * 1000) / change.to.denominator;
      expect(factorOfThousandths(thousandths)).toEqual(change.to);
      return at(thousandths + 1, change.factor, kit);
    }
    case 'hours': {
      const thousandths = (change.to.numerator * 1000) / change.to.denominator;
      return at(thousandths + 1, change.of, kit);
    }
    case 'stock':
      return withMore(change, change.units - 1, kit);
  }
}

/** The least money of any plan, by brute force; the noise price would count as money. */
function leastMoney(kit: Kit): number {
  const best = planOf(withPolicy(kit, { noisePrice: minorUnits(0) }));
  return best.kind === 'plan' ? best.score.money : Infinity;
}

describe.each(impossibleCases)('$why', (one) => {
  const { board: given, catalogue: shop } = caseFor(one);
  const kit = kitOf(given, shop);

  it('has ways out that each give a plan by itself, and would not by less', async () => {
    const explanation = await explain(kit, patient);
    if (explanation.kind !== 'impossible') throw new Error(`it is ${explanation.kind}`);
    const { ways, whole } = explanation;
    expect(whole).toBe(true);
    expect(ways.map(({ change }) => change.kind).sort()).toEqual([...one.ways].sort());
    expect(isPossible(kit)).toBe(false);
    for (const way of ways) {
      const { board, catalogue } = way.kit;
      const { violations, malformed } = audit(board, catalogue, everyFeed(way.wiring), { partial: false });
      expect([...violations, ...malformed]).toEqual([]);
      expect(way.wiring.feeds).toHaveLength(board.pedals.length);
      expect(isPossible(way.kit)).toBe(true);
      const less = oneStepLess(way, kit);
      if (less !== null) expect(isPossible(less)).toBe(false);
      if (way.cheapest === true) expect(way.wiring.score.money).toBe(leastMoney(way.kit));
    }
  });
});
