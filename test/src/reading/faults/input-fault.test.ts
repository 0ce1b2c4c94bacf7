import { describe, expect, it } from 'vitest';

import { faultText } from '../../../../src/reading/faults/input-fault.js';
import { boardWithPedals, faultsOf } from '../texts.js';

const fault = {
  file: 'board.yaml',
  line: 12,
  column: 5,
  key: 'pedals[2].volts',
  message: 'found "9V".',
  remedy: 'Write 9.',
};

describe('faultText', () => {
  it('says where, what, what is allowed and how to mend it', () => {
    expect(faultText(fault)).toBe('board.yaml:12:5 pedals[2].volts: found "9V". Write 9.');
    expect(faultText({ ...fault, key: '' })).toBe('board.yaml:12:5: found "9V". Write 9.');
  });

  it('escapes what a terminal would act on, in names of files too', () => {
    expect(faultText({ ...fault, file: '\u001b[31m.yaml' })).toContain('\\x1b[31m.yaml:12:5');
  });
});

describe('hostile names', () => {
  const escaped = [
    ['"\\e[2J"', '\\x1b[2J'],
    ['"\\u202etxt"', '\\u202etxt'],
    ['"a\\nb"', 'a\\x0ab'],
    ['"\\ud800"', '\\ud800'],
    ['"\\u2028"', '\\u2028'],
    ['"\\U000e0001"', '\\u{e0001}'],
  ] as const;
  it.each(escaped)('%s is shown as %s', (name, shown) => {
    const [inMessage] = faultsOf(boardWithPedals(`{name: A, volts: 9, milliamps: 1, figure: ${name}}`));
    expect(faultText(inMessage ?? fault)).toContain(`found "${shown}"`);
    const [inKey] = faultsOf(boardWithPedals(`{name: A, volts: 9, milliamps: 1, ${name}: 1}`));
    expect(inKey?.key).toBe(`pedals[0]["${shown}"]`);
  });

  it('a long one is cut', () => {
    const [found] = faultsOf(boardWithPedals(`{name: A, volts: 9, milliamps: 1, figure: ${'😀'.repeat(2000)}}`));
    expect(found?.message).toContain(`"${'😀'.repeat(60)}…"`);
  });
});
