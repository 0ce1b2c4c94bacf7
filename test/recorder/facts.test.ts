import { describe, expect, it, test } from 'vitest';

import { lineOf } from './answer.js';
import { factsOf } from './facts/facts.js';
import type { Ran } from './host.js';

const formats = ['plan', 'check', 'check-output', 'comparison', 'explain', 'spare', 'spare-add', 'verdict'];

describe.each(formats)('the facts of %s', (format) => {
  const printed = { format: `boardfeed/${format}/1` };

  it('are told where keys are absent', () => {
    expect(() => factsOf(printed)).not.toThrow();
  });

  it('are told where keys hold something else', () => {
    const keys = [
      'status',
      'buy',
      'reasons',
      'findings',
      'options',
      'conflicts',
      'ways',
      'plan',
      'seat',
      'units',
      'trials',
    ];
    for (const odd of [null, 1, 'text', [null, 1], { supplies: 1 }])
      expect(() => factsOf({ ...printed, ...Object.fromEntries(keys.map((key) => [key, odd])) })).not.toThrow();
  });
});

const question = { name: 'choose cost', parameters: ['choose'] };
const ran = (code: number, output: unknown): Ran => ({ id: 1, code, output: JSON.stringify(output), crash: null });
const plan = { format: 'boardfeed/plan/1', status: 'proven', score: { money: '1.00' } };

test('which output feeds which pedal is none of the facts', () => {
  const [one, other] = [1, 2].map((output) => lineOf('0001', question, ran(0, { ...plan, feeds: [{ output }] })));
  expect(one?.facts).toEqual({ code: 0, status: 'proven', score: { money: '1.00' } });
  expect(one?.facts).toEqual(other?.facts);
  expect(one?.printed).not.toBe(other?.printed);
});

test('a run that time has stopped says nothing else', () => {
  const stopped = { case: '0001', question: 'choose cost', facts: { stopped: true }, printed: '' };
  expect(lineOf('0001', question, ran(5, plan))).toEqual(stopped);
  expect(lineOf('0001', question, ran(0, { format: 'boardfeed/explain/1', complete: false }))).toEqual(stopped);
  expect(lineOf('0001', question, null)).toEqual(stopped);
});
