import { expect, test } from 'vitest';

import { supplyLine } from '../../../../src/reading/typed/supply-line.js';

const inletOf = (text: string) => {
  const line = supplyLine(text);
  if (line.kind === 'unclear') throw new Error(line.faults.join(' '));
  return line.draft.inlet;
};

test.each<[string, object]>([
  ['fed from 18 V 500 mA neg 2.1 mm barrel', { volts: 18, milliamps: 500, polarity: 'centre-negative' }],
  ['fed from 18v DC 0.5 A, centre-negative, barrel-2.1', { volts: 18, milliamps: 500, power: 'DC' }],
  ['fed by 5v 900 pos usb-a startup 1200', { volts: 5, plug: 'usb-a', startup: 1200 }],
  ['fed from 9-12v 600 neg barrel 2.1', { volts: { from: 9, to: 12 } }],
  ['fed from 9v AC 800 barrel-2.1', { power: 'AC', polarity: null }],
])('a supply that hangs on another one: %s', (clause, says) => {
  expect(inletOf(`Lock 4 isolated 9v 250 pos jack-3.5; ${clause}`)).toMatchObject(says);
});

test('what it takes is nothing of what its outputs give', () => {
  expect(supplyLine('Step 9v 300 neg barrel-2.1 regulated, fed from 5v 900 pos usb-a')).toMatchObject({
    kind: 'supply',
    draft: { name: 'Step', banks: [{ polarity: 'centre-negative', plug: 'barrel-2.1' }] },
    taken: [],
  });
  expect(inletOf('Well fed box 9v 300')).toBeNull();
});

test.each([
  'Step 9v 300, fed from 5v 900 usb-a',
  'Step 9v 300, fed from 5v 900 pos',
  'Step 9v 300, fed from 5v pos usb-a',
  'Step 9v 300, fed from 900 mA pos usb-a',
  'Step 9v 300, fed from 5v 900 pos usb-a digital',
  'Step 9v 300, fed from 5v AC 900 pos usb-a',
  'Step 9v 300, fed from 5v 900 pos usb-a total 500',
])('nothing of its inlet is assumed or passed over: %s', (text) => {
  const read = supplyLine(text);
  expect(read.kind === 'unclear' ? read.faults.at(-1) : '').toContain('Write all that is said at its inlet');
});

test.each(['Step 74 Wh 9v 300, fed from 5v 900 pos usb-a', 'Step 9v 300, mains 230, fed from 5v 900 pos usb-a'])(
  'it stands on one thing: %s',
  (text) => {
    expect(supplyLine(text)).toEqual({
      kind: 'unclear',
      faults: ['It hangs on another supply, on the mains or is a power bank: leave out what it is not.'],
    });
  },
);
