import { kitOf } from '../../../../src/domain/kit.js';
import { describe, expect, test } from 'vitest';

import type { Tier } from '../../../../src/domain/aim.js';
import { minorUnits } from '../../../../src/domain/quantities.js';
import type { Verdict } from '../../../../src/planning/verify/verify.js';
import { verdictJson } from '../../../../src/report/json/verdict-codec.js';
import { verdictText } from '../../../../src/report/screen/verdict.js';
import { tideway } from '../samples.js';

const { board, catalogue } = tideway;
const plain = { width: 80, colour: false, unicode: true };

/** As shown, with every run of white space as one space. */
const shown = (verdict: Verdict): string => verdictText(kitOf(board, catalogue), verdict, plain).replace(/\s+/g, ' ');

const proven = (...tiers: readonly (readonly [Tier, number])[]): Extract<Verdict, { kind: 'proven' }> => ({
  kind: 'proven',
  aim: 'cost',
  tiers: tiers.map(([tier, value]) => ({ tier, value })),
  cases: 1,
});

describe('a verdict on a screen', () => {
  test('says of a proven plan in what it cannot be beaten, in the order of the aim', () => {
    const text = shown(proven(['cost', 3650], ['bricks', 4], ['parts', 1]));
    expect(text).toContain(`${board.name}: proven Every hard rule holds`);
    expect(text).toContain('No plan costs less than 36.50 EUR, with 20.00 EUR counted for each exposed pedal.');
    expect(text).toContain(
      'none uses fewer than 4 supplies. • Of those that are as good so far, none takes fewer than',
    );
    expect(text).toContain('none takes fewer than 1 extra lead.');
    expect(text).toContain('Checked 1 case in whole numbers');
  });

  test.each([
    ['unpowered', 'It leaves no pedal without power:'],
    ['cost', 'It costs nothing:'],
    ['money', 'It costs nothing:'],
    ['exposed', 'It exposes no pedal to digital noise:'],
    ['bricks', 'It uses no supply:'],
    ['parts', 'It takes no extra leads:'],
    ['offPreferred', 'It has no pedal off the preferred volts:'],
  ] as const)('says of nothing of %s that there is no less', (tier, says) => {
    expect(shown(proven([tier, 0]))).toContain(`${says} there is no less than that.`);
  });

  test('says how many pedals stay without power where no plan exists', () => {
    expect(shown({ kind: 'impossible', unpowered: 1, cases: 3 })).toContain(
      'no plan exists, proven Every plan leaves at least 1 pedal without power. Checked 3 cases',
    );
  });

  test('says of which plans alone it is told', () => {
    const [first, second] = board.pedals;
    if (first === undefined || second === undefined) throw new RangeError('the board has too few pedals');
    const wishes = { keep: [first.id, second.id], buy: 'never', budget: minorUnits(2000) } as const;
    const says =
      `Of all plans with which ${'─'.repeat(23)} • ${first.name} and ${second.name} stay where plugged today. ` +
      '• Nothing is bought. • No more than 20.00 EUR is spent. Checked';
    expect(shown({ ...proven(['cost', 3650]), wishes })).toContain(says);
    expect(shown({ kind: 'impossible', unpowered: 1, cases: 1, wishes: { keep: [first.id] } })).toContain(
      `• ${first.name} stays where plugged today. Checked`,
    );
    expect(shown(proven(['cost', 3650]))).not.toContain('Of all plans');
  });

  test('tells an unsafe plan from a proof that shows nothing', () => {
    expect(shown({ kind: 'refused', what: 'plan', reasons: ['it sparks'] })).toContain(
      'not proven The plan does not hold. Do not plug it in. Why ─── • It sparks.',
    );
    expect(shown({ kind: 'refused', what: 'proof', reasons: ['it is about another board'] })).toContain(
      'The proof does not hold. The plan may still be the best, but this does not show it.',
    );
  });

  test('passes no control on from a proof', () => {
    const text = verdictText(
      kitOf(board, catalogue),
      { kind: 'refused', what: 'proof', reasons: ['a\u001b[31mb'] },
      plain,
    );
    expect(text).not.toContain('\u001b');
  });
});

describe('a verdict in JSON', () => {
  const parsed = (verdict: Verdict): unknown => JSON.parse(verdictJson(kitOf(board, catalogue), verdict));

  test('has money as text and the rest as numbers', () => {
    expect(parsed(proven(['cost', 3650], ['bricks', 4]))).toEqual({
      format: 'boardfeed/verdict/1',
      board: board.name,
      verdict: 'proven',
      aim: 'cost',
      tiers: [
        { tier: 'cost', value: '36.50' },
        { tier: 'bricks', value: 4 },
      ],
      unpowered: null,
      cases: 1,
      refused: null,
      reasons: [],
      wishes: null,
    });
    const wishes = { keep: board.pedals.slice(0, 1).map(({ id }) => id), budget: minorUnits(2000) };
    expect(parsed({ ...proven(['cost', 3650]), wishes })).toMatchObject({
      wishes: { keep: wishes.keep, buyNothing: false, budget: '20.00' },
    });
  });

  test('has the reasons for which it is refused', () => {
    expect(parsed({ kind: 'refused', what: 'plan', reasons: ['one', 'two'] })).toMatchObject({
      verdict: 'refused',
      refused: 'plan',
      reasons: ['one', 'two'],
      cases: null,
    });
  });

  test('has how many pedals stay without power where no plan exists', () => {
    expect(parsed({ kind: 'impossible', unpowered: 2, cases: 1 })).toMatchObject({
      verdict: 'impossible',
      unpowered: 2,
    });
  });
});
