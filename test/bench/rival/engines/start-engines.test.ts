import { expect, test } from 'vitest';

import { closeEngines } from '../../../../bench/rival/engines/engines.js';
import { startEngines } from '../../../../bench/rival/engines/start-engines.js';

const program = {
  columns: [{ name: 'x', upper: 3 }],
  rows: [{ name: 'least', terms: [{ column: 0, coefficient: 2 }], lower: 3, upper: null }],
};
const objective = { name: 'cost', terms: [{ column: 0, coefficient: 5 }], constant: 0 };

test('both engines answer from their threads', async () => {
  const engines = startEngines();
  const limits = { timeoutMs: 1e8 };
  expect(await engines.trusted.solve(program, objective, limits)).toEqual({ kind: 'optimal', point: [2] });
  expect(await engines.trusted.relaxationDuals?.(program, objective, limits)).toEqual([2.5]);
  expect(await engines.second?.solve(program, objective, limits)).toEqual({ kind: 'optimal', point: [2] });
  await closeEngines(engines);
  expect(await engines.trusted.solve(program, objective, limits)).toMatchObject({ kind: 'failed' });
});
