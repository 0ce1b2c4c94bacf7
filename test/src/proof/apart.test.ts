import { describe, expect, it } from 'vitest';

import type { ProofBranch, ProofNode } from '../../../src/domain/proof.js';
import { supplyId } from '../../../src/domain/quantities.js';
import { triple, type HandMade } from './hand-made.js';
import { reasonOf, test, verdictOn, withStep } from './tampering.js';

describe('a proof in which units are told apart', () => {
  const twin = supplyId('twin');
  /** Three pedals take two twins: either the first one is not in use, or it is, and then there is another or not. */
  const apart = { supply: twin, source: 'bought', units: 1 } as const;
  const told = (change: Partial<ProofBranch> = {}, units = 1): HandMade =>
    withStep(triple, 0, {
      apart: [{ ...apart, units }],
      tree: {
        branch: {
          ...{ count: 'units', supply: twin, source: 'bought', slot: 1, most: 0 },
          // Without the first unit: the others, each at 2, still need not be more than one for all that the tags say.
          fewer: restOf(0),
          more: restOf(1),
          ...change,
        },
      },
    });

  /** The cases of the units that are not told apart, below a condition on the one that is. */
  function restOf(used: number): ProofNode {
    const pedals = (tag: number) => Object.fromEntries(['a', 'b', 'c'].map((id) => [id, tag]));
    const [few, many] = [3, 1];
    return {
      branch: {
        ...{ count: 'units', supply: twin, source: 'bought', most: 1 - used },
        fewer: { tags: { pedals: pedals(few), conditions: [used === 0 ? -2 : 0, used === 0 ? -2 : -2].slice(0, 2) } },
        more: { tags: { pedals: pedals(many), conditions: [used === 0 ? 0 : 2, 2] } },
      },
    };
  }

  it('holds', () => {
    expect(verdictOn(told())).toMatchObject({ kind: 'holds', cases: 8 });
  });

  test('does not hold when a unit counts that is not told apart', told({ slot: 2 }), 'unit 2 of "twin", which is not');
  test('does not hold when a unit of any supply counts', told({ supply: null }), 'unit 1 of "any supply"');
  test('does not hold when the unit is an owned one', told({ source: 'owned' }), 'which is not told apart');
  test(
    'does not hold when units are told apart twice',
    withStep(told(), 0, { apart: [apart, apart] }),
    'tells the bought units of "twin" apart twice',
  );
  test(
    'does not hold when units of no supply are told apart',
    withStep(told(), 0, { apart: [{ ...apart, supply: supplyId('twim') }] }),
    'the supply "twim"',
  );
  test('does not hold when a case is left open', told({ more: {} }), 'in the case more, a case is left open');
});

describe('a proof in which units that are told apart are taken for alike', () => {
  const twin = supplyId('twin');
  const pedals = (tag: number) => Object.fromEntries(['a', 'b', 'c'].map((id) => [id, tag]));
  const of = { count: 'units', supply: twin, source: 'bought', most: 0 } as const;
  /** The first unit is in use, and then the second one is not, nor the third, or it is. */
  const second: ProofBranch = {
    ...{ ...of, slot: 2, likewise: [3] },
    fewer: { tags: { pedals: pedals(3), conditions: [0, -2] } },
    more: { tags: { pedals: pedals(1), conditions: [2, 2] } },
  };
  const made = (change: Partial<ProofBranch> = {}, below: Partial<ProofBranch> = {}): HandMade =>
    withStep(triple, 0, {
      apart: [{ supply: twin, source: 'bought', units: 3 }],
      tree: {
        branch: {
          ...{ ...of, slot: 1, likewise: [2, 3] },
          // Without any of these units each pedal takes one for 15 euros, 6 in quarters of ten.
          fewer: { tags: { pedals: pedals(6), conditions: [-8] } },
          more: { branch: { ...second, ...below } },
          ...change,
        },
      },
    });

  it('holds', () => {
    expect(verdictOn(made())).toMatchObject({ kind: 'holds', cases: 6 });
  });

  it('leaves a case open where one of them is left out', () => {
    expect(reasonOf(made({}, { likewise: [] }))).toContain('in the case more > fewer, a case is left open');
  });

  const notAlike = 'for alike, which are decided otherwise';
  test('does not hold of a unit that is not told apart', made({ likewise: [2, 4] }), 'unit 4 of "twin" for unit 1');
  test('does not hold where an earlier one stands for it', made({ slot: 2, likewise: [1, 3] }), 'unit 1 of "twin" for');
  test('does not hold where one is decided otherwise', made({}, { slot: 1, likewise: [2] }), notAlike);
  test('does not hold where several are in the count', made({ most: 1 }), 'it takes units for alike where');
  test(
    'does not hold where no unit is named',
    withStep(made(), 0, { tree: { branch: { ...of, likewise: [2, 3], fewer: {}, more: {} } } }),
    'it takes units for alike where',
  );
  test('does not hold of a unit in use today', made({ unit: 1 }), 'it counts on unit 1 of "twin"');
  test('does not hold of owned units', made({ source: 'owned' }), 'which is not told apart');
});
