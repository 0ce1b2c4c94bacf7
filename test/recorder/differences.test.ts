import { expect, test } from 'vitest';

import type { Line } from './answer.js';
import type { Data } from './data.js';
import { comparedText } from './difference-text.js';
import { compared } from './differences.js';

const line = (name: string, facts: Data, printed = 'as ever', question = 'choose cost'): Line => ({
  case: name,
  question,
  facts,
  printed,
});

test('every place that differs is told, by command, and the lines are counted', () => {
  const one = [
    line('0001', { code: 0, score: { money: '1.00', bricks: 1 }, buy: ['1 x a'] }),
    line('0002', { code: 0 }),
    line('0003', { code: 0 }),
    line('0003', { code: 4 }, 'as ever', 'check'),
  ];
  const other = [
    line('0003', { code: 4 }, 'in other words', 'check'),
    line('0003', { code: 0 }),
    line('0002', { code: 0 }),
    line('0001', { code: 0, score: { money: '2.00', bricks: 1 }, buy: ['1 x a', '1 x b'] }),
  ];
  expect(comparedText(compared(one, other))).toBe(
    [
      'choose cost: 1 differ',
      '  0001 score.money: "1.00" → "2.00"',
      '  0001 buy.1: nothing → "1 x b"',
      '',
      'The same, but printed otherwise:',
      '  check: 1',
      '',
      '1 differ, 3 are the same (1 printed otherwise), 0 stopped',
      '',
    ].join('\n'),
  );
});

test('a question that one recording lacks is a difference, a case that it lacks is not', () => {
  const one = [line('0001', { code: 0 }), line('0001', { code: 0 }, '', 'spare'), line('0002', { code: 0 })];
  const { differences, same } = compared(one, [line('0001', { code: 0 })]);
  expect(differences).toEqual([{ case: '0001', question: 'spare', places: null }]);
  expect(same).toBe(1);
});

test('what either had no time for is not compared', () => {
  const { differences, stopped } = compared([line('0001', { code: 0 })], [line('0001', { stopped: true })]);
  expect(differences).toEqual([]);
  expect(stopped).toBe(1);
});
