import { describe, expect, it } from 'vitest';

import type { PedalId } from '../../../../src/domain/quantities.js';
import { explain, type Explanation } from '../../../../src/planning/explain/explain.js';
import { factsOf, relaxed, sameFact, type Fact } from '../../../../src/planning/conflict/facts.js';
import { kitOf, type Kit } from '../../../../src/domain/kit.js';
import { conflictsOf } from '../../../support/conflicts.js';
import { caseFor, impossibleCases } from '../../../support/impossible-cases.js';

/** A busy machine must not end the search for a smallest set early. */
const patient = { shrinkMs: 100_000 };

async function impossible(kit: Kit): Promise<Extract<Explanation, { kind: 'impossible' }>> {
  const explanation = await explain(kit, patient);
  if (explanation.kind !== 'impossible') throw new Error(`it is ${explanation.kind}`);
  return explanation;
}

/** By brute force: whether these pedals cannot all have power while these facts hold, and no others. */
function cannotHold(pedals: readonly PedalId[], facts: readonly Fact[], kit: Kit): boolean {
  const others = factsOf(kit).filter((fact) => !facts.some((each) => sameFact(each, fact)));
  const { board, catalogue } = relaxed(kit, others);
  if (catalogue === null) throw new Error('there is no shop');
  return conflictsOf(board, catalogue).isConflict(pedals);
}

describe.each(impossibleCases)('$why', (one) => {
  const { board, catalogue } = caseFor(one);
  const kit = kitOf(board, catalogue);

  it('is explained by the smallest set, from which nothing can be taken away', async () => {
    const { conflicts, whole } = await impossible(kit);
    expect(whole).toBe(true);
    const [first] = conflicts;
    if (first === undefined) throw new Error('nothing is explained');
    const { pedals, facts, size } = first.conflict;
    expect(facts.map(({ kind }) => kind).sort()).toEqual([...one.facts].sort());
    expect(pedals).toEqual(one.pedals);
    expect(size).toBe('smallest');
    expect(cannotHold(pedals, facts, kit)).toBe(true);
    for (const gone of pedals)
      expect(
        cannotHold(
          pedals.filter((id) => id !== gone),
          facts,
          kit,
        ),
      ).toBe(false);
    for (const gone of facts)
      expect(
        cannotHold(
          pedals,
          facts.filter((fact) => fact !== gone),
          kit,
        ),
      ).toBe(false);
  });
});
