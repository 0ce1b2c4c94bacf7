import { expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { microampHours, millivolts } from '../../../../src/domain/quantities.js';
import { readingsOf } from '../../../../src/planning/ask/label-readings.js';
import { bankOf, boardOf, catalogueOf, partOf, pedalOf, settingOf, supplyOf } from '../../../support/builders.js';

it('takes the plugs of supplies and leads for what an inlet may be, and no battery', () => {
  const pedal = pedalOf('one', 10, { assumed: { inlet: 'barrel-2.1' } });
  const battery = {
    kind: 'battery',
    type: '9V-block',
    millivolts: millivolts(9000),
    microampHours: microampHours(550_000),
  } as const;
  const shop = catalogueOf(
    [supplyOf('quay', 9, [bankOf(1, [settingOf(9, 100)])])],
    [partOf('mini', 5, { kind: 'adapter' }, { gives: 'jack-3.5' }), partOf('block', 3, battery)],
  );
  const readings = readingsOf({ pedal, field: 'inlet', standing: 'assumed' }, kitOf(boardOf([pedal]), shop));
  expect(readings.map(({ reads }) => reads)).toEqual(['jack-3.5']);
});
