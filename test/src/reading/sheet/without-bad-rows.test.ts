import { expect, test } from 'vitest';

import { convertTable } from '../../../../src/reading/csv/convert-table.js';

const assume = { power: 'DC', polarity: 'centre-negative', inlet: 'barrel-2.1', ground: 'negative' };

/** The notes and the pedals that are left of these rows, which begin in line 4. */
function left(rows: readonly string[]) {
  const text = ['# board: Twice', '# currency: EUR', 'Name;Volts;Milliamps', ...rows].join('\n');
  const named = { file: 'twice.csv', text: { kind: 'text', text } as const };
  const read = convertTable(named, () => ({ currency: 'EUR', assume }), { skipBadRows: true });
  if (read.kind === 'faulty') throw new Error(JSON.stringify(read.faults));
  const pedals = [...read.value.yaml.matchAll(/^ {2}- \{(.*)\}/gm)].map(([, pedal]) => pedal);
  return { pedals, notes: (read.notes ?? []).filter((note) => note.includes('left out')) };
}

test('a row whose name only a row has that is left out counts', () => {
  const { pedals, notes } = left(['Echo;nine or so;50', 'Echo;9;60', 'Fuzz;9;5']);
  expect(pedals).toEqual(['name: Echo, volts: 9, milliamps: 60', 'name: Fuzz, volts: 9, milliamps: 5']);
  expect(notes).toEqual([expect.stringContaining('left out "Echo" (line 4)')]);
});

test('of rows of one name that are right the first counts, and each of those that are wrong is told', () => {
  const { pedals, notes } = left(['Echo;nine;50', 'Echo;ten;60', 'Echo;9;70', 'Echo;9;80']);
  expect(pedals).toEqual(['name: Echo, volts: 9, milliamps: 70']);
  expect(notes.map((note) => /\(line \d\)/.exec(note)?.[0])).toEqual(['(line 4)', '(line 5)', '(line 7)']);
});

test('of many rows of one name that are wrong each is told', () => {
  const { pedals, notes } = left([...Array.from({ length: 400 }, () => 'Echo;nine;50'), 'Fuzz;9;5']);
  expect(pedals).toEqual(['name: Fuzz, volts: 9, milliamps: 5']);
  expect(notes).toHaveLength(400);
});
