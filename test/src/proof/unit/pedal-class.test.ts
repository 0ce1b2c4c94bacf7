import { describe, expect, it } from 'vitest';

import { nowhere } from '../../../../src/proof/today.js';
import { classesOf } from '../../../../src/proof/unit/pedal-class.js';
import { pedalOf } from '../../../support/builders.js';
import { alike, inOrders, unlike } from '../../../support/unlike-pedals.js';

describe('pedals that may stand in for one another', () => {
  it.each(alike)('may differ in the %s', (_, pedals) => {
    expect(classesOf(pedals)).toEqual([
      { pedal: pedals[0], standing: nowhere, members: pedals.map((_each, index) => index) },
    ]);
  });

  it('may have their figures in any order, and from anywhere but a guess', () => {
    expect(classesOf(inOrders).map(({ members }) => members)).toEqual([[0, 1], [2]]);
    expect(classesOf([pedalOf('one', 10), pedalOf('two', 10, { figure: 'measured' })])).toHaveLength(1);
  });

  it.each(unlike)('agree in the %s', (_, pedals) => {
    expect(classesOf(pedals)).toHaveLength(pedals.length);
  });
});
