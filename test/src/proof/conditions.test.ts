import { describe, expect, it } from 'vitest';

import type { ProofBranch } from '../../../src/domain/proof.js';
import { pedalId, supplyId } from '../../../src/domain/quantities.js';
import { bankOf, catalogueOf, euros, settingOf, supplyOf } from '../../support/builders.js';
import { triple, trio, tripleOfTwo, type HandMade } from './hand-made.js';
import { reasonOf, test, verdictOn, withBranch, withStep } from './tampering.js';

describe('a proof with a branch on the leads of the whole plan', () => {
  it('holds', () => {
    expect(verdictOn(trio)).toMatchObject({ kind: 'holds', cases: 4 });
  });

  test(
    'does not hold when it is about the leads of one supply instead of all',
    withBranch(trio, { supply: supplyId('late') }),
    'in the case fewer, a case is left open',
  );
  test(
    'does not hold when it is about the leads of owned units instead of all',
    withBranch(trio, { source: 'owned' }),
    'in the case fewer, a case is left open',
  );
  test('does not hold at another number', withBranch(trio, { most: 2 }), 'in the case fewer, a case is left open');
  test(
    'does not hold when a tag of the condition is lowered',
    withBranch(trio, { more: { tags: { pedals: {}, conditions: [6] } } }),
    'in the case more, a case is left open',
  );
});

describe('a proof with a branch on the units of a set of supplies', () => {
  const fewerOpen = 'in the case fewer, a case is left open';
  const [twin, pair, late] = [supplyId('twin'), supplyId('pair'), supplyId('late')];
  const changed = (change: Partial<ProofBranch>): HandMade => withBranch(tripleOfTwo, change);

  it('holds', () => {
    expect(verdictOn(tripleOfTwo)).toMatchObject({ kind: 'holds', cases: 4 });
    expect(verdictOn(changed({ source: 'bought' }))).toMatchObject({ kind: 'holds', cases: 4 });
  });

  test('does not hold when a supply of the set is left out', changed({ among: [twin] }), fewerOpen);
  test('does not hold when another one stands for it', changed({ among: [twin, late] }), fewerOpen);
  test('does not hold when owned units count', changed({ source: 'owned' }), fewerOpen);
  test('does not hold at another number', changed({ most: 2 }), fewerOpen);
  test('does not hold when a half is left empty', changed({ more: {} }), 'it has neither tags nor a branch');
  it.each([
    ['fewer', -1, 3],
    ['fewer', -3, 3],
    ['more', 1, 1],
  ] as const)('does not hold when in the case %s the condition is tagged %d', (side, tag, pedal) => {
    const tags = { pedals: { a: pedal, b: pedal, c: pedal }, conditions: [tag] };
    expect(reasonOf(changed({ [side]: { tags } }))).toContain(`in the case ${side}, a case is left open`);
  });
  test(
    'does not hold when it names what there is not',
    changed({ among: [twin, pair, supplyId('twim')] }),
    'it names the supply "twim", which there is not',
  );
  test(
    'does not hold when one of its supplies is meant alone as well',
    changed({ supply: twin }),
    'it counts units of "twin" and of a set at once',
  );
  test('does not hold when a unit of it is told apart', changed({ slot: 1 }), 'which is not told apart');
});

/**
 * Three pedals, one output for 10 euros, two for 15: one of each is the best, for 25 euros. In fives they are 2 and 3, in
 * quarters of that 8 and 12, and no plan below 25 euros costs more than 20, which is 16. Either the pair of outputs does not
 * have the first pedal: then that may be tagged 10 and the others 6, as two single outputs lower the 22 by 4 at the most; with
 * the first pedal a pair would lower it by 4 more. Or it has: then the last may be tagged 8 and the others 6, and one pair
 * lowers the 20 by 2.
 */
describe('a proof with a branch on the pedals of a supply', () => {
  const tags = (a: number, b: number, c: number) => Object.fromEntries(Object.entries({ a, b, c }));
  const supplies = [
    supplyOf('single', 10, [bankOf(1, [settingOf(9, 100)])]),
    supplyOf('pair', 15, [bankOf(2, [settingOf(9, 100)])]),
  ];
  const branch: ProofBranch = {
    ...{ count: 'pedals', supply: supplyId('pair'), source: 'bought', of: [pedalId('a')], most: 0 },
    fewer: { tags: { pedals: tags(10, 6, 6), conditions: [0] } },
    more: { tags: { pedals: tags(6, 6, 8), conditions: [0] } },
  };
  const made = withStep(triple, 0, { value: 5, scale: 4, tree: { branch } });
  const mixed: HandMade = {
    ...made,
    catalogue: catalogueOf(supplies),
    score: { ...made.score, money: euros(25) },
  };

  it('holds, since no unit has a pedal that all of them together have not', () => {
    expect(verdictOn(mixed)).toMatchObject({ kind: 'holds' });
  });

  const fewerOpen = 'in the case fewer, a case is left open';
  test('does not hold at another number', withBranch(mixed, { most: 1 }), fewerOpen);
  test('does not hold of another pedal', withBranch(mixed, { of: [pedalId('b')] }), fewerOpen);
  test('does not hold of owned units', withBranch(mixed, { source: 'owned' }), fewerOpen);
});
