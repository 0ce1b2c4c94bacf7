import { expect, test } from 'vitest';

import { connectorNamed, connectorsIn } from '../../../../src/reading/typed/connectors.js';

test.each([
  ['barrel-2.1', 'barrel-2.1'],
  ['2.1 mm barrel', 'barrel-2.1'],
  ['2,5mm Barrel', 'barrel-2.5'],
  ['2.1mm', 'barrel-2.1'],
  ['2,5 mm plug', 'barrel-2.5'],
  ['5.5 x 2.1 mm', 'barrel-2.1'],
  ['5,5mm/2,5mm', 'barrel-2.5'],
  ['2.1×5.5', 'barrel-2.1'],
  ['3.5 mm', '3.5 mm'],
  ['5.5 mm barrel', 'barrel-5.5'],
  ['jack 3.5', 'jack-3.5'],
  ['3.5 mm jack', 'jack-3.5'],
  ['USB-C', 'usb-c'],
  ['usb a', 'usb-a'],
  ['micro USB', 'usb-micro'],
  ['Micro-USB-B', 'usb-micro'],
  ['usb mini', 'usb-mini'],
  ['Din-5', 'Din-5'],
])('%s', (text, name) => {
  expect(connectorNamed(text)).toBe(name);
});

test('they are found among other words, and taken out', () => {
  const { connectors, rest } = connectorsIn('lead 2.1 mm barrel to jack-3.5, 9v');
  expect(connectors).toEqual(['barrel-2.1', 'jack-3.5']);
  expect(rest.replaceAll(/\s+/g, ' ')).toBe('lead to , 9v');
  expect(connectorsIn('Barrelhouse drive 2').connectors).toEqual([]);
  expect(connectorsIn('drive 2.1 9v 12.1mm').connectors).toEqual([]);
});
