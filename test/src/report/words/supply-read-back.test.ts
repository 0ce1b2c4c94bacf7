import { expect, test } from 'vitest';

import { supplyLine } from '../../../../src/reading/typed/supply-line.js';
import { supplyReadBack } from '../../../../src/report/words/supply-read-back.js';

const readBack = (text: string): string => {
  const read = supplyLine(text);
  if (read.kind === 'unclear') throw new Error(read.faults.join(' '));
  return supplyReadBack(read.draft, read.taken);
};

test('a supply is read back with all that was taken without being said', () => {
  expect(readBack('Old box 6 isolated 9v 150, 9/12v 300/250, total 1500, mains 100-240')).toBe(
    'Old box: 6 isolated outputs of 9 V 150 mA, 1 output of 9 V 300 mA or 12 V 250 mA, 1500 mA in all, mains of 100 to 240 V.\n' +
      'Taken as most have it, until its label says otherwise: minus on the pin (else write pos), a 2.1 mm barrel plug (else 3.5 mm jack) and regulated (else unregulated and its volts with nothing on it).',
  );
  expect(readBack('Barge 74 Wh 2 isolated 9v 500 neg barrel-2.1 regulated')).toBe(
    'Barge: 2 isolated outputs of 9 V 500 mA, a power bank of 74 Wh.',
  );
  expect(readBack('Hum 2 x 9v AC 1000 barrel-2.1')).toBe('Hum: 2 outputs on one ground of 9 V AC 1000 mA.');
});
