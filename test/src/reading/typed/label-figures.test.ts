import { describe, expect, it } from 'vitest';

import { typedDraw, typedVoltage, typedVolts } from '../../../../src/reading/typed/label-figures.js';
import { isUnknown } from '../../../../src/reading/typed/typed.js';

describe('volts as they are typed off a label', () => {
  it.each([
    ['9V', 9, null, null],
    ['9', 9, null, null],
    ['9 V DC', 9, 'DC', null],
    ['9VDC', 9, 'DC', null],
    ['DC 9V', 9, 'DC', null],
    ['9V (DC)', 9, 'DC', null],
    ['9V ⎓ 300mA', 9, 'DC', '300mA'],
    ['9V 300 mA max.', 9, null, '300 mA'],
    ['5V @ 2.1A', 5, null, '2.1A'],
    ['12V AC 1A', 12, 'AC', '1A'],
    ['9V~', 9, 'AC', null],
    ['9,5 V', 9.5, null, null],
    ['9-18V DC', { from: 9, to: 18 }, 'DC', null],
    ['9v – 12v', { from: 9, to: 12 }, null, null],
    ['9 to 18', { from: 9, to: 18 }, null, null],
    ['9/12/18', [9, 12, 18], null, null],
    ['18 or 9 V', [9, 18], null, null],
    ['9, 12', [9, 12], null, null],
  ])('%s', (text, volts, power, draw) => {
    expect(typedVolts(text)).toEqual({ kind: 'said', value: { volts, power, draw } });
  });

  it.each(['9,12', '-9V', '0V', '9V DC AC', 'plenty', '18-9V', '9//12', '2000 V', '9.1234', '9e1'])(
    '%s is not clear',
    (text) => {
      expect(typedVolts(text)).toMatchObject({ kind: 'unclear' });
    },
  );
});

it('a single voltage is no list and no range', () => {
  expect(typedVoltage('230 V', 'Write one.')).toEqual({ kind: 'said', value: 230 });
  expect(typedVoltage('?', 'Write one.')).toEqual({ kind: 'unknown' });
  for (const text of ['9/12 V', '100-240 V', 'plenty'])
    expect(typedVoltage(text, 'Write one.')).toEqual({ kind: 'unclear', remedy: 'Write one.' });
});

describe('a draw as it is typed off a label', () => {
  it.each([
    ['300 mA', 300],
    ['300mA max', 300],
    ['0.3 A', 300],
    ['0,3A', 300],
    ['0,015 A', 15],
    ['0.125 mA', 0.125],
    ['1.800 A', 1800],
    ['1 amp', 1000],
    ['4.5 milliamps', 4.5],
    ['250 µA', 0.25],
    ['2.7 W', 300],
    ['2,7W', 300],
    // Rounded up: 3 VA at 9 V are 333.333… mA.
    ['3 VA', 333.334],
    ['1 mW', 0.112],
  ])('%s at 9 V', (text, milliamps) => {
    expect(typedDraw(text, 9)).toMatchObject({ kind: 'said', value: { milliamps } });
  });

  it('counts watts at the lowest of the volts, where the current is the highest', () => {
    expect(typedDraw('9 W', [12, 9, 18])).toMatchObject({ value: { milliamps: 1000, workings: '9 W at 9 V' } });
    expect(typedDraw('9 W', { from: 9, to: 18 })).toMatchObject({ value: { milliamps: 1000 } });
  });

  it.each(['300', '0.3', '1,800 A', '0 mA', '0 W', '-3 mA', 'a lot', '200 A', '9999 W'])('%s is not clear', (text) => {
    expect(typedDraw(text, 9)).toMatchObject({ kind: 'unclear' });
  });

  it.each(['1,800 mA', '1.800 mA', '1.800mA max', '1.800 milliamps'])('%s may be two currents', (text) => {
    expect(typedDraw(text, 9)).toEqual({
      kind: 'unclear',
      remedy: 'It may mean 1800 mA or 1.8 mA: write 1800 mA if that is what it is.',
    });
  });

  it('watts without volts are not clear', () => {
    expect(typedDraw('2.7 W', null)).toMatchObject({ kind: 'unclear' });
  });
});

it.each(['', ' ', '?', '??', '-', "don't know", 'don’t know', 'I do not know', 'Unknown', 'n/a', 'not sure'])(
  '%j is not knowing',
  (text) => {
    expect(isUnknown(text)).toBe(true);
    expect(typedVolts(text)).toEqual({ kind: 'unknown' });
    expect(typedDraw(text, 9)).toEqual({ kind: 'unknown' });
  },
);
