import { readFile } from 'node:fs/promises';
import { join } from 'node:path';

import { expect, test } from 'vitest';

import { choosingAims, rankedTiersOf } from '../../src/domain/aim.js';
import { rulesBySeverity } from '../../src/domain/rules.js';
import { bankColumns, partColumns, supplyColumns } from '../../src/reading/csv/columns.js';
import { policyOf } from '../support/builders.js';
import { checkout } from '../support/pack.js';
import { codeWordsOf, documents } from './documents.js';

test.each([
  { kind: 'board', known: 'guess' },
  { kind: 'catalogue', known: 'openCircuitVolts' },
])('docs/files.md tells every key of a $kind', async ({ kind, known }) => {
  const text = documents.find(({ path }) => path === 'docs/files.md')?.text ?? '';
  const schema: unknown = JSON.parse(await readFile(join(checkout, 'schemas', `${kind}.schema.json`), 'utf8'));
  const keys = [...new Set(keysOf(schema))];
  expect(keys).toContain(known);
  const told = new Set(codeWordsOf(text).flatMap((word) => word.split(/\W+/)));
  expect(keys.filter((key) => !told.has(key))).toEqual([]);
});

test.each([
  { row: 'supplies', columns: [...supplyColumns, ...bankColumns] },
  { row: 'leads', columns: partColumns },
])('docs/tables.md tells every column of a table of $row', ({ row, columns }) => {
  const text = documents.find(({ path }) => path === 'docs/tables.md')?.text ?? '';
  const [, cells = ''] = new RegExp(`^\\| ${row}, [^|]*\\|([^|]*)\\|$`, 'm').exec(text) ?? [];
  expect(new Set(cells.match(/\w+/g))).toEqual(new Set(columns));
});

test('docs/checking-a-wiring.md tells every rule, the worst first', () => {
  const text = documents.find(({ path }) => path === 'docs/checking-a-wiring.md')?.text ?? '';
  const rows = text.match(/^\| `[^|]*\|/gm) ?? [];
  expect(rows.flatMap((cell) => cell.match(/\w+/g) ?? [])).toEqual(rulesBySeverity);
});

test.each(choosingAims)('docs/choosing.md tells every tier of the aim %s', (aim) => {
  const text = documents.find(({ path }) => path === 'docs/choosing.md')?.text ?? '';
  const [, order = ''] = new RegExp(`^\\| \`${aim}\` \\| (.*) \\|$`, 'm').exec(text) ?? [];
  expect(order.split(';')).toHaveLength(rankedTiersOf(aim, policyOf()).length);
});

/** The keys that a JSON Schema describes, at every depth. */
function keysOf(schema: unknown): readonly string[] {
  if (typeof schema !== 'object' || schema === null) return [];
  const own = 'properties' in schema && typeof schema.properties === 'object' ? (schema.properties ?? {}) : {};
  return [...Object.keys(own), ...Object.values(schema).flatMap(keysOf)];
}
