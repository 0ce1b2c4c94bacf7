import { describe, expect, it } from 'vitest';
import * as z from 'zod/mini';

import { boardSchema } from '../../../../src/reading/schema/schema-board.js';
import { catalogueSchema } from '../../../../src/reading/schema/schema-catalogue.js';
import { wordings } from '../../../../src/reading/schema/schema-fields.js';
import { boardText, boardWithPedals, catalogueText, expectFault } from '../texts.js';

type Json = Readonly<Record<string, unknown>>;
const isJson = (value: unknown): value is Json => typeof value === 'object' && value !== null;

/** Every property of every object in a JSON Schema, by its path. */
function* propertiesOf(schema: Json, path = ''): Generator<readonly [string, Json]> {
  for (const [key, value] of Object.entries(schema)) {
    if (!isJson(value)) continue;
    if (key === 'properties') {
      for (const [name, property] of Object.entries(value)) if (isJson(property)) yield [`${path}.${name}`, property];
    }
    yield* propertiesOf(value, `${path}.${key}`);
  }
}

/** Every value that a file may hold, by its path; of several options only what is inside them. */
function* valuesOf(schema: z.core.$ZodType, path: string): Generator<readonly [string, z.core.$ZodType]> {
  if (schema instanceof z.ZodMiniOptional) {
    yield* valuesOf(schema.def.innerType, path);
    return;
  }
  yield [path, schema];
  yield* insideOf(schema, path);
}

function* insideOf(schema: z.core.$ZodType, path: string): Generator<readonly [string, z.core.$ZodType]> {
  if (schema instanceof z.ZodMiniUnion) for (const option of schema.def.options) yield* insideOf(option, path);
  if (schema instanceof z.ZodMiniArray) yield* valuesOf(schema.def.element, `${path}[]`);
  if (schema instanceof z.ZodMiniRecord) {
    yield* valuesOf(schema.def.keyType, `${path}{}`);
    yield* valuesOf(schema.def.valueType, `${path}.*`);
  }
  if (!(schema instanceof z.ZodMiniObject)) return;
  for (const [key, value] of Object.entries<z.core.$ZodType>(schema.shape)) yield* valuesOf(value, `${path}.${key}`);
}

describe.each([
  ['board', boardSchema],
  ['catalogue', catalogueSchema],
])('the schema of a %s', (_name, schema) => {
  const json = z.toJSONSchema(schema) as Json;
  const properties = [...propertiesOf(json)];

  it('describes every field', () => {
    expect(properties.length).toBeGreaterThan(30);
    expect(properties.filter(([, property]) => typeof property.description !== 'string').map(([path]) => path)).toEqual(
      [],
    );
  });

  it('names the unit of every number that has one', () => {
    const units = { volts: /volts/i, milliamps: /milliamps/i, startup: /milliamps/i, watts: /watts/i };
    let checked = 0;
    for (const [path, { description }] of properties) {
      const unit = Object.entries(units).find(([field]) => path.endsWith(`.${field}`))?.[1];
      if (unit === undefined) continue;
      expect(String(description)).toMatch(unit);
      checked += 1;
    }
    expect(checked).toBeGreaterThan(5);
  });

  it('has words for what each value may be, and the unit of each number', () => {
    const values = [...valuesOf(schema, '')];
    expect(values.length).toBeGreaterThan(30);
    const worded = values.filter(([, value]) => (wordings.get(value)?.allowed ?? '') !== '');
    expect(values.filter((value) => !worded.includes(value)).map(([path]) => path)).toEqual([]);
    const mayBeNumber = (value: z.core.$ZodType): boolean =>
      value instanceof z.ZodMiniNumber || (value instanceof z.ZodMiniUnion && value.def.options.some(mayBeNumber));
    const numbers = values.filter(([, value]) => mayBeNumber(value));
    expect(numbers.length).toBeGreaterThan(8);
    expect(numbers.filter(([, value]) => typeof wordings.get(value)?.unit !== 'string').map(([path]) => path)).toEqual(
      [],
    );
  });

  it('allows no other keys', () => {
    expect(json.additionalProperties).toBe(false);
    expect(JSON.stringify(json)).not.toContain('"allowed"');
  });
});

describe('what a section or a list may be is told', () => {
  const policy = (fields: string) => boardText({ policy: `policy: {chains: allow, ${fields}}` });
  const headroom = 'headroom: {alone: 1, chained: 1, supply: 1}';
  const wiring = (fields: string) => ({
    board: boardText({
      owned: 'owned: {supplies: [quay]}',
      wiring: `wiring:\n  - {pedal: echo, supply: quay, unit: 1, ${fields}}`,
    }),
    catalogue: catalogueText(),
  });

  it.each([
    ['policy', boardText({ policy: 'policy: ‸strict' }), 'a map with headroom, chains …'],
    ['policy.headroom', policy('headroom: ‸1.2'), 'a map {alone: 1.2, chained: 2, supply: 1.2} of factors'],
    ['policy.chains', policy(headroom).replace('allow', '‸sometimes'), 'allow or never'],
    ['gear', boardText({ gear: 'gear: ‸none' }), 'a map {supplies: […], parts: […], batteries: […]}'],
    ['gear.supplies', boardText({ gear: 'gear: {supplies: ‸none}' }), 'a list of up to 5000 supplies'],
    ['gear.parts', boardText({ gear: 'gear: {parts: ‸none}' }), 'a list of up to 5000 parts'],
    ['owned', boardText({ owned: 'owned: ‸nothing' }), 'a map {supplies: […], parts: {…}}'],
    ['owned.parts', boardText({ owned: 'owned: {parts: ‸[flip]}' }), 'a map from ids to counts, such as {flip: 1}'],
    ['wiring', boardText({ wiring: 'wiring: ‸none' }), 'a list with one entry a pedal that is plugged'],
    ['wiring[0]', boardText({ wiring: 'wiring: [‸echo]' }), 'a map with pedal, supply, unit, output, volts …'],
    ['assume', boardText({ assume: 'assume: ‸DC' }), 'a map with any of power, polarity, inlet, ground, volts'],
    ['pedals[0]', boardWithPedals('‸Echo'), 'a map with name, volts, milliamps …'],
    [
      'pedals[0].volts',
      boardWithPedals('{name: Echo, volts: ‸true, milliamps: 1}'),
      'a number of volts, a list such as [9, 12], a range {from: 9, to: 18} or unknown',
    ],
    [
      'pedals[0].milliamps',
      boardWithPedals('{name: Echo, volts: 9, milliamps: ‸true}'),
      'a number of milliamps, one for each voltage as in {9: 300, 12: 230}, or unknown',
    ],
    [
      'pedals[0].figure',
      boardWithPedals('{name: Echo, volts: 9, milliamps: 1, figure: ‸rumour}'),
      'label, manual, measured or guess',
    ],
  ])('%s of a board', (key, board, words) => {
    expectFault({ board }, key, `Allowed: ${words}.`, '');
  });

  it.each([
    ['outputs', 'outputs: ‸[1, 2, 3], volts: 9', 'a list of two output numbers'],
    ['outputs', 'outputs: ‸[1], volts: 9', 'a list of two output numbers'],
    ['join', 'outputs: [1, 2], volts: 9, join: ‸series', 'a map {mode: series, part: …}'],
    ['join.mode', 'outputs: [1, 2], volts: 9, join: {mode: ‸both, part: flip}', 'series or parallel'],
    ['parts', 'output: 1, volts: 9, parts: ‸flip', 'a list of ids of adapters'],
  ])('%s of a wiring (%s)', (key, fields, words) => {
    expectFault(wiring(fields), `wiring[0].${key}`, `Allowed: ${words}.`, '');
  });

  it.each([
    ['assume', catalogueText({ assume: 'assume: ‸DC' }), 'a map with any of power, plug, polarity, regulated'],
    ['supplies', catalogueText({ supplies: 'supplies: ‸none' }), 'a list of up to 5000 supplies'],
    ['parts', catalogueText({ parts: 'parts: ‸none' }), 'a list of up to 5000 parts'],
    ['supplies[0]', catalogueText({ supplies: 'supplies: [‸Quay]' }), 'a map with name, banks …'],
    ['parts[0]', catalogueText({ parts: 'parts: [‸Flip]' }), 'a map with name, fits, gives …'],
  ])('%s of a catalogue', (key, catalogue, words) => {
    expectFault({ catalogue }, key, `Allowed: ${words}.`, '');
  });

  it.each([
    ['banks', 'name: Quay, price: 5, banks: ‸one', 'a list of 1 to 100 banks'],
    ['banks', 'name: Quay, price: 5, regulated: true, banks: ‸[]', 'a list of 1 to 100 banks'],
    ['mains', 'id: quay, mains: ‸true', 'a number of volts, or a range {from: 100, to: 240}'],
    ['total', 'id: quay, total: ‸1800', 'a map {milliamps: …} or {watts: …}'],
    ['banks[0]', 'name: Quay, price: 5, banks: [‸six]', 'a map with outputs, isolated, settings …'],
  ])('%s of a supply (%s)', (key, fields, words) => {
    const catalogue = fields.startsWith('id')
      ? catalogueText().replace('id: quay', fields)
      : catalogueText({ supplies: `supplies:\n  - {${fields}}` });
    expectFault({ catalogue }, `supplies[0].${key}`, `Allowed: ${words}.`, '');
  });

  it.each([
    ['settings', 'settings: ‸9', 'a list of 1 to 100 settings such as {volts: 9, milliamps: 100}'],
    ['settings[0]', 'settings: [‸9]', 'a map {volts: …, milliamps: …}'],
    ['switch', 'switch: ‸all, settings: [{volts: 9, milliamps: 500}]', 'each or together'],
    ['joins', 'joins: ‸5, settings: [{volts: 9, milliamps: 500}]', 'series, parallel, both, or a list of these'],
  ])('%s of a bank', (key, fields, words) => {
    const catalogue = catalogueText().replace('settings: [{volts: 9, milliamps: 500}]', fields);
    expectFault({ catalogue }, `supplies[0].banks[0].${key}`, `Allowed: ${words}.`, '');
  });

  it('how a part joins', () => {
    const catalogue = catalogueText().replace('reverses: true', 'joins: ‸both');
    expectFault({ catalogue }, 'parts[0].joins', 'Allowed: series or parallel.', '');
  });
});
