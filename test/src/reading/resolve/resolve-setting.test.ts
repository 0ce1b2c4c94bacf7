import { describe, expect, it } from 'vitest';

import { boardText, catalogueWithSupplies, expectFault, expectRefused, expectToldOnce, readOf } from '../texts.js';

const supply = (regulated: string, settings: string, power = 'power: DC, polarity: either') => ({
  catalogue: catalogueWithSupplies(
    `{name: Quay, price: 5, ${regulated} banks: [{outputs: 1, isolated: true, ${power}, plug: x, switch: each, settings: [${settings}]}]}`,
  ),
});
const openCircuits = (texts: { readonly catalogue: string }) =>
  readOf(boardText(), texts.catalogue).catalogue?.supplies[0]?.banks[0]?.settings.map((setting) => setting.openCircuit);
const key = (setting: number, field: string) => `supplies[0].banks[0].settings[${setting}].${field}`;

describe('open-circuit volts', () => {
  it('are needed on each setting of an unregulated supply', () => {
    expectFault(
      supply('regulated: false,', '{volts: 9, milliamps: 1, openCircuitVolts: 12}, ‸{volts: 12, milliamps: 1}'),
      key(1, 'openCircuitVolts'),
      ['missing', 'not regulated'],
      'add `openCircuitVolts`',
    );
  });

  it('are never below the volts', () => {
    for (const regulated of ['false', 'true']) {
      expectFault(
        supply(`regulated: ${regulated},`, '{volts: 9, milliamps: 1, openCircuitVolts: ‸8.999}'),
        key(0, 'openCircuitVolts'),
        ['8.999', "below the setting's 9 V"],
        'Measure again',
      );
    }
  });

  it('are not above the volts of a regulated supply', () => {
    expectFault(
      supply('regulated: true,', '{volts: 9, milliamps: 1, openCircuitVolts: ‸9.001}'),
      key(0, 'openCircuitVolts'),
      ['9.001', 'regulated'],
      '`regulated: false`',
    );
  });

  it('are kept for an unregulated supply, and null for a regulated one', () => {
    const setting = '{volts: 9, milliamps: 1, openCircuitVolts: 9}';
    expect(openCircuits(supply('regulated: false,', setting))).toEqual([9000]);
    expect(openCircuits(supply('regulated: true,', setting))).toEqual([null]);
  });

  it('count for an AC supply that states them, which need not say whether it is regulated', () => {
    expect(openCircuits(supply('', '{volts: 9, milliamps: 1, openCircuitVolts: 11}', 'power: AC'))).toEqual([11_000]);
    expect(openCircuits(supply('', '{volts: 9, milliamps: 1}', 'power: AC'))).toEqual([null]);
  });
});

describe('the settings of a bank', () => {
  it('have different volts', () => {
    expectFault(
      supply('regulated: true,', '{volts: 9, milliamps: 1}, {volts: ‸9.0, milliamps: 2}'),
      key(1, 'volts'),
      ['found 9', 'as on line 4', 'one setting for each voltage'],
      'remove the other',
    );
  });

  it('are at least one', () => {
    const { catalogue } = supply('regulated: true,', '');
    expectFault({ catalogue: catalogue.replace('[]', '‸[]') }, 'supplies[0].banks[0].settings', 'an empty list', 'Add');
  });
});

describe('a setting of which something is wrong', () => {
  const right = '{volts: 12, milliamps: 1}';

  it.each([
    ['its volts', 'volts', '{milliamps: 1}'],
    ['its milliamps', 'milliamps', '{volts: 9}'],
    ['possible volts', 'volts', '{volts: 0, milliamps: 1}'],
    ['possible milliamps', 'milliamps', '{volts: 9, milliamps: -1}'],
    ['possible open-circuit volts', 'openCircuitVolts', '{volts: 9, milliamps: 1, openCircuitVolts: 8.999}'],
    [
      'open-circuit volts of a regulated supply',
      'openCircuitVolts',
      '{volts: 9, milliamps: 1, openCircuitVolts: 9.001}',
    ],
  ])('lacks %s: the catalogue is not read', (_what, field, setting) => {
    expectRefused(supply('regulated: true,', setting), key(0, field));
    expectRefused(supply('regulated: true,', `${right}, ${setting}`), key(1, field));
    expectRefused(supply('regulated: true,', `${setting}, ${right}`), key(0, field));
  });

  it('lacks the open-circuit volts that an unregulated supply needs: the catalogue is not read', () => {
    const open = '{volts: 9, milliamps: 1, openCircuitVolts: 12}';
    expectRefused(supply('regulated: false,', `${open}, ${right}`), key(1, 'openCircuitVolts'));
    const impossible = right.replace('}', ', openCircuitVolts: 0}');
    expectToldOnce(supply('regulated: false,', `${open}, ${impossible}`), key(1, 'openCircuitVolts'));
  });

  it('lacks its volts: it is not taken for another one without volts', () => {
    expectRefused(supply('regulated: true,', '{milliamps: 1}, {milliamps: 2}'), key(0, 'volts'), key(1, 'volts'));
  });
});
