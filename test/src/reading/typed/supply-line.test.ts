import { expect, test } from 'vitest';

import { supplyLine } from '../../../../src/reading/typed/supply-line.js';

const read = (text: string) => {
  const line = supplyLine(text);
  if (line.kind === 'unclear') throw new Error(line.faults.join(' '));
  return line;
};

test('a box with two kinds of outputs and what they give together', () => {
  const { draft, taken } = read('Old box 6 isolated 9v 150, 2 isolated 9/12/18v 300/250/150, total 1500, mains 230');
  expect(draft).toMatchObject({ name: 'Old box', total: { milliamps: 1500 }, mains: 230, regulated: true });
  expect(draft.banks).toMatchObject([
    { outputs: 6, isolated: true, switch: null, settings: [{ volts: 9, milliamps: 150 }] },
    {
      ...{ outputs: 2, isolated: true, switch: 'each' },
      settings: [
        { volts: 9, milliamps: 300 },
        { volts: 12, milliamps: 250 },
        { volts: 18, milliamps: 150 },
      ],
    },
  ]);
  expect(taken).toEqual(['polarity', 'plug', 'regulated']);
});

test.each([
  'box 1-6 isolated 9V 150 mA, 7-8 isolated 9/12/18V 300/250/150 mA, 1500 mA in all',
  'box outputs 1 to 6 isolated 9 V 150 mA, 7 and 8 isolated switchable 9 or 12 or 18 V, 300, 250, 150 mA; 1500 mA in all',
  'box, 6 x 9V 150mA isolated, 2 x 9/12/18V 300/250/150mA isolated, 1500mA total',
  'box 6 outputs of 9 V DC, 150 mA each, isolated, 2 outputs of 9/12/18 V DC, 300/250/150 mA, isolated; 1500 mA in all',
  'box 6x9v, 150mA isolated and 2x 9/12/18v 300/250/150 switchable isolated, total 1500',
  'box 6 isolated outputs of 9 V DC, 150 mA and 2 isolated switched outputs 9/12/18 V 300/250/150 mA, total 1500 mA',
])('%s', (text) => {
  const { draft } = read(text);
  expect(draft).toMatchObject({ name: 'box', total: { milliamps: 1500 } });
  expect(draft.banks).toMatchObject([
    { outputs: 6, isolated: true, switch: null, settings: [{ volts: 9, milliamps: 150 }] },
    { outputs: 2, isolated: true, switch: 'each', settings: [{ volts: 9 }, { volts: 12 }, { milliamps: 150 }] },
  ]);
});

test('an adapter has one output; several outputs of which nothing is said are not isolated', () => {
  expect(read('Alder nine 500, 9v 500 mA').draft.banks).toMatchObject([{ outputs: 1, isolated: true }]);
  expect(read('Wall wart 9 V 0.5 A').draft.banks[0]?.settings).toMatchObject([{ volts: 9, milliamps: 500 }]);
  expect(read('Wall wart 9 V, 500 mA').draft).toMatchObject({ name: 'Wall wart', banks: [{ outputs: 1 }] });
  expect(read('Five way 5 x 9v 100').draft.banks).toMatchObject([{ outputs: 5, isolated: null }]);
});

test('a power bank says its watt-hours, wherever they stand', () => {
  for (const line of [
    'Barge 74 Wh 2 isolated 9v 500',
    'Barge 2 isolated 9v 500, 74wh',
    'Barge, 2 isolated 9v 500 74Wh',
  ])
    expect(read(line).draft, line).toMatchObject({ name: 'Barge', charge: 74, mains: null, banks: [{ outputs: 2 }] });
  expect(read('Barge 9v 500').draft.charge).toBeNull();
  expect(supplyLine('Barge 0 Wh 9v 500')).toMatchObject({ kind: 'unclear' });
});

test('words say what is not as most supplies have it', () => {
  const { draft, taken } = read('Brown 9v 300 pos jack-3.5, unregulated 13.5v');
  expect(draft).toMatchObject({ regulated: false });
  expect(draft.banks).toMatchObject([
    { polarity: 'centre-positive', plug: 'jack-3.5', settings: [{ volts: 9, milliamps: 300, openCircuitVolts: 13.5 }] },
  ]);
  expect(taken).toEqual([]);
});

test('AC has neither polarity nor regulation', () => {
  const { draft, taken } = read('Hum 9v AC 1000');
  expect(draft).toMatchObject({ regulated: null, banks: [{ power: 'AC', polarity: null }] });
  expect(taken).toEqual(['plug']);
});

test.each([
  ['', 'Begin with what it is called'],
  ['Old box', 'Write the volts'],
  ['9v 300', 'Begin with what it is called'],
  ['Box 9/12v 300', 'write a current for each of the volts'],
  ['Box 9v 300 blue, blue', '"blue" is not understood'],
  ['Box 9v 300, total much', '"total much" is not understood'],
  ['Box 9v 300 blue, red, blue', '"blue" and "red" are not understood. Say it such as'],
  ['Box 9v 300 or 12v 250', '2 isolated 9/12/18v 300/250/150'],
  ['Box eight outputs 9v 300', 'how many outputs there are in figures'],
  ['Box 3-8 isolated 9v 300', 'Tell the outputs in their order: 1 comes before 3'],
  ['Box 9v 150, 1500', '"1500" is not understood'],
  ['Box 0 x 9v 300', 'at least one output'],
  ['Box 0v 300', 'write them such as'],
])('%j is not clear', (text, fault) => {
  const line = supplyLine(text);
  expect(line.kind === 'unclear' && line.faults.join(' ')).toContain(fault);
});
