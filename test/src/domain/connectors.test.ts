import { expect, test } from 'vitest';

import { connectorSpelled } from '../../../src/domain/connectors.js';

test.each([
  ['barrel 2.1', 'barrel-2.1'],
  ['Barrel 2,1 mm', 'barrel-2.1'],
  ['2.5mm barrel', 'barrel-2.5'],
  ['JACK_3.5', 'jack-3.5'],
])('%j is %s', (text, connector) => {
  expect(connectorSpelled(text)).toBe(connector);
});

test.each(['barrel', 'barrel 2.15', 'usb-a', ''])('%j is none that is known', (text) => {
  expect(connectorSpelled(text)).toBeNull();
});
