import { readFile } from 'node:fs/promises';
import { join } from 'node:path';

import { expect, it } from 'vitest';

import { circuitKinds } from '../../../src/domain/circuit-kinds.js';

it('the page of start shows the planning figures', async () => {
  const page = await readFile(join(import.meta.dirname, '../../../docs/start.md'), 'utf8');
  const table = /\| kind of circuit \|.*\n\| --- .*\n((?:\|.*\n)+)/.exec(page)?.[1] ?? '';
  const rows = circuitKinds.map(({ label, planningMilliamps, digital, highGain }) => {
    const traits = [...(digital ? ['digital'] : []), ...(highGain ? ['high-gain'] : [])];
    return `| ${label} | ${planningMilliamps} | ${traits.join(', ')} |\n`;
  });
  expect(table).toBe(rows.join(''));
});

it('every kind has a key and a label of its own, and a figure', () => {
  expect(new Set(circuitKinds.map(({ key }) => key)).size).toBe(circuitKinds.length);
  expect(new Set(circuitKinds.map(({ label }) => label)).size).toBe(circuitKinds.length);
  for (const { planningMilliamps } of circuitKinds) expect(planningMilliamps).toBeGreaterThan(0);
});

it('only a fuzz may have a positive ground, which is worth a question', () => {
  const asked = circuitKinds.filter(({ mayHavePositiveGround }) => mayHavePositiveGround);
  expect(asked.map(({ key }) => key)).toEqual(['fuzz']);
});
