import { expect, it } from 'vitest';

import { supplyId } from '../../../../src/domain/quantities.js';
import { coarse, refined } from '../../../../bench/rival/formulation/detail.js';

const box = supplyId('box');

it('more is told apart each time, of what was found too coarse and of nothing else', () => {
  const once = refined(coarse, [
    { kind: 'units', supply: box, count: 2 },
    { kind: 'chains', key: 'pool', count: 1 },
  ]);
  expect([...once.units, ...once.chains]).toEqual([
    ['box', 2],
    ['pool', 1],
  ]);
  const twice = refined(once, [{ kind: 'units', supply: box, count: 3 }]);
  expect([...twice.units, ...twice.chains]).toEqual([
    ['box', 5],
    ['pool', 1],
  ]);
  expect([...coarse.units, ...coarse.chains]).toEqual([]);
});
