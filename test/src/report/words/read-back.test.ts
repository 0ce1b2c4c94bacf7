import { expect, test } from 'vitest';

import { typedLine } from '../../../../src/reading/typed/pedal-line.js';
import { readBack } from '../../../../src/report/words/read-back.js';

test.each([
  ['about 90 mA', '90 mA, a guess'],
  ['90 mA', '90 mA'],
  ['50-80 mA', '80 mA (the most of 50-80 mA)'],
])('%s is read back as %s', (draw, told) => {
  const typed = typedLine(`wren 9v neg ${draw}`, true);
  if (typed.kind === 'unclear') throw new Error(typed.faults.join(' '));
  expect(readBack({ line: typed.line, kind: null })).toBe(`wren: 9 V, ${told}, centre-negative.`);
});

test('the volts that it prefers are read back beside those that it takes', () => {
  const typed = typedLine('tremolo 9-12v 40 c- likes 12v', true);
  if (typed.kind === 'unclear') throw new Error(typed.faults.join(' '));
  expect(readBack({ line: typed.line, kind: null })).toBe('tremolo: 9 to 12 V, prefers 12 V, 40 mA, centre-negative.');
});
