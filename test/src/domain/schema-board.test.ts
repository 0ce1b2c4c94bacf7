import { describe, expect, it } from 'vitest';
import { z } from 'zod';

import { boardSchema } from '../../../src/domain/schema-board.js';
import { catalogueSchema } from '../../../src/domain/schema-catalogue.js';

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

  it('allows no other keys', () => {
    expect(json.additionalProperties).toBe(false);
    expect(JSON.stringify(json)).not.toContain('"allowed"');
  });
});
