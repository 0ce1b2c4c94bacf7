import { describe, expect, it } from 'vitest';

import { audit } from '../../../../src/audit/audit.js';
import type { Board, Catalogue, Policy } from '../../../../src/domain/board.js';
import { factorOfThousandths, minorUnits } from '../../../../src/domain/quantities.js';
import { explain } from '../../../../src/planning/explain/explain.js';
import { at } from '../../../../src/planning/explain/factor-ways.js';
import { withMore } from '../../../../src/planning/explain/stock-ways.js';
import type { WayOut } from '../../../../src/planning/explain/way-out.js';
import type { Situation } from '../../../../src/planning/solve.js';
import { bruteForce } from '../../../support/brute-force.js';
import { sharedEngines } from '../../../support/choosing.js';
import { caseFor, impossibleCases } from '../../../support/impossible-cases.js';

const engines = sharedEngines();
const patient = { engines, shrinkMs: 100_000 };

const isPossible = ({ board, catalogue }: Situation): boolean =>
  bruteForce(board, catalogue, { aim: 'cost', partial: false }).kind === 'plan';

const withPolicy = ({ board, catalogue }: Situation, policy: Partial<Policy>): Situation => ({
  board: { ...board, policy: { ...board.policy, ...policy } },
  catalogue,
});

/** The same change, one step less of it; null where it has no steps. */
function oneStepLess({ change }: WayOut, situation: Situation): Situation | null {
  switch (change.kind) {
    case 'budget':
      return withPolicy(situation, { budget: minorUnits(change.to - 1) });
    case 'bricks':
    case 'sockets':
      return withPolicy(situation, { [change.kind]: change.to - 1 });
    case 'factor': {
      const thousandths = (change.to.numerator * 1000) / change.to.denominator;
      expect(factorOfThousandths(thousandths)).toEqual(change.to);
      return at(thousandths + 1, change.factor, situation);
    }
    case 'stock':
      return withMore(change, change.units - 1, situation);
    case 'limits':
    case 'chains':
    case 'lead':
    case 'supply':
    case 'pedal':
    case 'pedals':
      return null;
  }
}

/** The least money of any plan, by brute force; the noise price would count as money. */
function leastMoney(board: Board, catalogue: Catalogue): number {
  const quiet = { ...board, policy: { ...board.policy, noisePrice: minorUnits(0) } };
  const best = bruteForce(quiet, catalogue, { aim: 'cost', partial: false });
  return best.kind === 'plan' ? best.score.money : Infinity;
}

describe.each(impossibleCases)('$why', (one) => {
  const situation = caseFor(one);

  it('has ways out that each give a plan by itself, and would not by less', async () => {
    const explanation = await explain(situation.board, situation.catalogue, patient);
    if (explanation.kind !== 'impossible') throw new Error(`it is ${explanation.kind}`);
    const { ways, whole } = explanation;
    expect(whole).toBe(true);
    expect(ways.map(({ change }) => change.kind).sort()).toEqual([...one.ways].sort());
    expect(isPossible(situation)).toBe(false);
    for (const way of ways) {
      const { board, catalogue } = way.situation;
      const { violations, malformed } = audit(board, catalogue, way.wiring.feeds, { partial: false });
      expect([...violations, ...malformed]).toEqual([]);
      expect(way.wiring.feeds).toHaveLength(board.pedals.length);
      expect(isPossible(way.situation)).toBe(true);
      const less = oneStepLess(way, situation);
      if (less !== null) expect(isPossible(less)).toBe(false);
      if (way.cheapest === true) expect(way.wiring.score.money).toBe(leastMoney(board, catalogue));
    }
  });
});
