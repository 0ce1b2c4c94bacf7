import { resolve } from 'node:path';

import { expect, test } from 'vitest';

import { readInputs } from '../../../../src/node/disk/read-inputs.js';
import { remarksIn, toldColumns, toldThings } from '../../../../src/web/worker/told-shelf.js';

const shop = { file: 'laden.csv', text: 'Bezeichnung;Price;Strom mA\nErle;9 €;500\n' };

test('columns to be matched come with what they may hold, and what is missing', () => {
  const told = toldColumns(shop, {});
  expect(told?.columns.map(({ heading, meaning }) => [heading, meaning])).toEqual([
    ['Bezeichnung', null],
    ['Strom mA', null],
  ]);
  expect(told?.missing).toEqual([
    'what it is called',
    'how many outputs',
    'volts of an output',
    'most current of an output',
  ]);
  expect(told?.choices.map(({ meaning }) => meaning)).not.toContain('price');
  expect(told?.choices.at(-1)).toEqual({ meaning: 'nothing', words: 'nothing that limits it' });
});

test('what was said of a column is told with it, so that it can be said otherwise', () => {
  const told = toldColumns(shop, { Bezeichnung: 'name', 'Strom mA': 'milliamps' });
  expect(told?.columns.map(({ meaning }) => meaning)).toEqual(['name', 'milliamps']);
  expect(told?.choices.map(({ meaning }) => meaning)).toContain('name');
});

test('what a table remarks on each thing is told by its name', () => {
  const text =
    'Name;Price;Outputs;Volts;Output current;Remark\nErle;9 €;1;9 V;500 mA;\nUlme;9 €;10;9 V;500 mA;the big one\n';
  expect([...remarksIn({ file: 'laden.csv', text }, {})]).toEqual([
    ['Erle', ''],
    ['Ulme', 'the big one'],
  ]);
  expect(remarksIn({ file: 'shop.yaml', text }, {}).size).toBe(0);
});

test('what is no table has no columns', () => {
  expect(toldColumns(null, {})).toBeNull();
  expect(toldColumns({ file: 'shop.yaml', text: 'catalogue: A\n' }, {})).toBeNull();
});

test('batteries can be owned, and what is a pedal’s own is not picked', async () => {
  const fixture = (path: string): string => resolve(import.meta.dirname, '../../../../fixtures', path);
  const read = await readInputs(fixture('boards/mixed-stage.yaml'), fixture('shops/slipway.yaml'));
  if (read.kind === 'faulty') throw new Error('the example is faulty');
  const things = toldThings(read.value);
  expect(things.filter(({ units }) => units > 0).map(({ kind, name }) => [kind, name])).toEqual([
    ['supply', 'Punt 3'],
    ['battery', 'Nine-volt block'],
  ]);
  expect(things.filter(({ kind }) => kind === 'battery')).toHaveLength(2);
  expect(things.map(({ name }) => name).join()).not.toMatch(/Own adapter|Nine-volt block in/);
});
