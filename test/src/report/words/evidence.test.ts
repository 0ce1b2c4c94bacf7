import { kitOf } from '../../../../src/domain/kit.js';
import { describe, expect, it } from 'vitest';

import type { ChoosingAim } from '../../../../src/domain/aim.js';
import type { Policy } from '../../../../src/domain/board.js';
import type { Score } from '../../../../src/domain/plan.js';
import { minorUnits } from '../../../../src/domain/quantities.js';
import type { Evidence } from '../../../../src/planning/answer.js';
import { evidenceText } from '../../../../src/report/words/evidence.js';
import { speechOf } from '../../../../src/report/words/speech.js';
import { tideway } from '../samples.js';

const tags = { kind: 'tags', cases: 1, limits: false } as const;

/** The paragraph; null where there is none. */
function paragraph(
  aim: ChoosingAim,
  evidence: Evidence | undefined,
  score: Partial<Score>,
  policy: Partial<Policy> = {},
): string | null {
  const { catalogue, wiring } = tideway;
  const board = { ...tideway.board, policy: { ...tideway.board.policy, ...policy } };
  const of = { ...wiring, score: { ...wiring.score, ...score } };
  return evidenceText(speechOf(kitOf(board, catalogue)), aim, of, evidence);
}

describe('why no plan is better', () => {
  it('says nothing where nothing is proven', () => {
    expect(paragraph('cost', undefined, {})).toBeNull();
  });

  it('needs no tags to show that nothing costs less than nothing', () => {
    const free = { money: minorUnits(0), exposed: 0 };
    expect(paragraph('cost', tags, free)).toBe('The cheapest possible: it costs nothing, and no pedal is exposed.');
    expect(paragraph('quiet', tags, free)).toMatch(/: no pedal is exposed, and nothing has to be bought\.$/);
    expect(paragraph('bricks', tags, { ...free, bricks: 0 })).toMatch(/: no supply is in use\.$/);
    expect(paragraph('bricks', tags, { ...free, bricks: 2 })).toMatch(/the tags make 2 supplies and 0\.00 EUR in all/);
    expect(paragraph('cost', tags, { ...free, exposed: 1 })).toMatch(
      /noise counted in; the tags make 20\.00 EUR in all/,
    );
  });

  it('counts supplies in use where they have a price: even an owned one is then not for nothing', () => {
    const owned = { money: minorUnits(0), exposed: 0, bricks: 2 };
    const priced = (aim: ChoosingAim) => paragraph(aim, tags, owned, { supplyPrice: minorUnits(800) });
    expect(priced('cost')).toMatch(
      /a price tag on every pedal, supplies in use counted in; the tags make 16\.00 EUR.* more than it counts for/,
    );
    expect(priced('quiet')).toMatch(
      /at the least money, with 8\.00 EUR counted for each supply in use: .* 0 exposed pedals and 16\.00 EUR in all/,
    );
  });

  it('takes off what limited things save, where that counts', () => {
    const score = { money: minorUnits(3650), exposed: 0 };
    expect(paragraph('cost', tags, score)).toBe(
      'The cheapest possible: put a price tag on every pedal; the tags make 36.50 EUR in all. No unit at Test shop ' +
        'can carry pedals whose tags come to more than it costs with its leads. So no plan does with less.',
    );
    expect(paragraph('cost', { ...tags, limits: true }, score)).toMatch(
      /let what is limited \(.*\) save as much as it ever could; 36\.50 EUR is left\. No other unit/,
    );
  });

  it('tells how many cases there are, and for how many pedals a partial plan is the best', () => {
    const score = { money: minorUnits(3650), exposed: 0, unpowered: 1 };
    expect(paragraph('cost', { ...tags, cases: 3 }, score)).toMatch(
      /^The cheapest possible for 2 pedals: .* That holds in each of 3 cases that together leave nothing out\.$/,
    );
  });
});
