import { kitOf } from '../../../../src/domain/kit.js';
import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';

import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';

import { jsonSchema, jsonSchemaText, schemaKinds, type SchemaKind } from '../../../../src/report/json/schemas.js';
import { inputsFromText } from '../../../../src/reading/inputs-from-text.js';
import { answerJson } from '../../../../src/report/json/plan-codec.js';
import { boardFileOf, catalogueFileOf } from '../../../support/as-files.js';
import { largerCase } from '../../../support/arbitraries.js';
import { marramCatalogue, tidewayBoard } from '../../../support/documented.js';
import { everything } from '../everything.js';
import { trying } from '../../../support/runs.js';

const root = join(import.meta.dirname, '../../../..');

/** Strict: a keyword that the draft does not know is an error, not a no-op. */
const validatorOf = (kind: SchemaKind): ValidateFunction =>
  new Ajv2020({ strict: true, allErrors: true, allowUnionTypes: true }).compile({ ...jsonSchema(kind) });

const refuses = (validate: ValidateFunction, data: unknown): boolean => !validate(data);

/** The data with the value at a path replaced, or taken out when it is undefined. */
function edited(data: unknown, [step, ...rest]: readonly (string | number)[], value: unknown): unknown {
  if (step === undefined) return value;
  const copy: Record<string | number, unknown> = structuredClone(data) as Record<string, unknown>;
  copy[step] = edited(copy[step], rest, value);
  return copy;
}

const fixtures = async (folder: string): Promise<readonly string[]> =>
  (await readdir(join(root, 'fixtures', folder))).map((name) => join(root, 'fixtures', folder, name));

describe.each(schemaKinds)('the JSON Schema of a %s', (kind) => {
  it('is draft 2020-12 with a title, and the file in the package is the same', async () => {
    expect(jsonSchema(kind)).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      title: `boardfeed ${kind}`,
    });
    expect(await readFile(join(root, 'schemas', `${kind}.schema.json`), 'utf8')).toBe(jsonSchemaText(kind));
  });

  it('describes every value that a file may hold', () => {
    const nodes = [...valuesOf(jsonSchema(kind))];
    expect(nodes.length).toBeGreaterThan(kind === 'verdict' ? 15 : 40);
    expect(nodes.filter(([, { description }]) => typeof description !== 'string').map(([path]) => path)).toEqual([]);
  });
});

type Json = Readonly<Record<string, unknown>>;

/** Every schema below a schema that stands for a value, with its path. */
function* valuesOf(schema: Json, path = '#'): Generator<readonly [string, Json]> {
  yield [path, schema];
  const inner = (key: string): readonly Json[] => (typeof schema[key] === 'object' ? [schema[key] as Json] : []);
  for (const key of ['items', 'additionalProperties', 'propertyNames'])
    for (const one of inner(key)) yield* valuesOf(one, `${path}/${key}`);
  for (const properties of inner('properties'))
    for (const [name, one] of Object.entries(properties)) yield* valuesOf(one as Json, `${path}/${name}`);
  const options = (schema['anyOf'] ?? []) as readonly Json[];
  const others = options.filter(({ type }) => type !== 'null');
  // Of something or null the whole is described: there is no more to say of the something.
  const [only] = others.length === 1 && others.length < options.length ? others : [];
  if (only !== undefined) yield* valuesOf({ description: schema['description'], ...only }, `${path}/anyOf`);
  else for (const [index, one] of others.entries()) yield* valuesOf(one, `${path}/anyOf/${index}`);
}

it('names the unit of every number in a board and a catalogue', () => {
  const numbers = (['board', 'catalogue'] as const)
    .flatMap((kind) => [...valuesOf(jsonSchema(kind))])
    .filter(([, { type }]) => type === 'number' || type === 'integer');
  expect(numbers.length).toBeGreaterThan(50);
  const unit = /(Unit: (V|mA|W|Wh|mAh|h), |A factor, |A whole number\.|Unit: the file's currency)/;
  expect(numbers.filter(([, { description }]) => !unit.test(String(description))).map(([path]) => path)).toEqual([]);
});

describe('files that boardfeed reads are accepted', () => {
  const board = validatorOf('board');
  const catalogue = validatorOf('catalogue');

  it('all fixtures', async () => {
    for (const file of await fixtures('boards')) {
      expect(board(parse(await readFile(file, 'utf8'))), `${file}: ${JSON.stringify(board.errors)}`).toBe(true);
    }
    for (const file of await fixtures('shops')) {
      expect(catalogue(parse(await readFile(file, 'utf8'))), `${file}: ${JSON.stringify(catalogue.errors)}`).toBe(true);
    }
  });

  it('the documented ones, which use nearly every field', () => {
    expect(board(parse(tidewayBoard)), JSON.stringify(board.errors)).toBe(true);
    expect(catalogue(parse(marramCatalogue)), JSON.stringify(catalogue.errors)).toBe(true);
  });

  it('generated ones', () => {
    fc.assert(
      fc.property(largerCase(8, 6), (drawn) => {
        const files = { board: boardFileOf(drawn.board), catalogue: catalogueFileOf(drawn.catalogue) };
        const read = inputsFromText(
          { file: 'board.json', text: JSON.stringify(files.board) },
          { file: 'shop.json', text: JSON.stringify(files.catalogue) },
        );
        expect(read).toMatchObject({ kind: 'read' });
        expect(board(files.board), JSON.stringify(board.errors)).toBe(true);
        expect(catalogue(files.catalogue), JSON.stringify(catalogue.errors)).toBe(true);
      }),
      trying(200),
    );
  });
});

describe('wrong files are refused', () => {
  const cases: readonly (readonly [SchemaKind, readonly (string | number)[], unknown])[] = [
    ['board', ['board'], undefined],
    ['board', ['currency'], 'euro'],
    ['board', ['policy', 'headroom', 'alone'], 0.9],
    ['board', ['policy', 'headroom', 'chained'], undefined],
    ['board', ['policy', 'chains'], 'sometimes'],
    ['board', ['policy', 'noisePrize'], 20],
    ['board', ['pedals'], []],
    ['board', ['pedals', 0, 'milliamp'], 9],
    ['board', ['pedals', 0, 'milliamps'], '180 mA'],
    ['board', ['pedals', 0, 'milliamps'], { '9 V': 180 }],
    ['board', ['pedals', 0, 'volts'], 0],
    ['board', ['pedals', 0, 'volts'], '9V'],
    ['board', ['pedals', 0, 'volts'], { from: 9 }],
    ['board', ['pedals', 0, 'polarity'], 'negative'],
    ['board', ['pedals', 0, 'figure'], 'estimate'],
    ['board', ['pedals', 0, 'digital'], 'yes'],
    ['board', ['pedals', 0, 'id'], 'two words'],
    ['board', ['owned', 'parts', 'flip'], 1.5],
    ['board', ['wiring', 0, 'unit'], 0],
    ['catalogue', ['supplies'], undefined],
    ['catalogue', ['supplies', 0, 'price'], -1],
    ['catalogue', ['supplies', 0, 'price'], undefined],
    ['catalogue', ['supplies', 0, 'banks', 0, 'isolated'], undefined],
    ['catalogue', ['supplies', 0, 'banks', 0, 'settings'], []],
    ['catalogue', ['supplies', 0, 'banks', 0, 'switch'], 'all'],
    ['catalogue', ['supplies', 0, 'banks', 1, 'joins'], ['sideways']],
    ['catalogue', ['supplies', 0, 'banks', 0, 'outputs'], 101],
    ['catalogue', ['parts', 0, 'tails'], 1],
    ['catalogue', ['parts', 0, 'fits'], ''],
  ];
  const texts = { board: tidewayBoard, catalogue: marramCatalogue };

  it.each(cases)('%s, %j: %j', (kind, path, value) => {
    const data: unknown = parse(kind === 'board' ? texts.board : texts.catalogue);
    const wrong = edited(data, path, value);
    // A key that is undefined is none: that is what the round through JSON makes of it.
    expect(refuses(validatorOf(kind), JSON.parse(JSON.stringify(wrong)))).toBe(true);
  });
});

describe('plans', () => {
  const { board, catalogue, wiring, reasons } = everything((id) => id);
  const answers = [
    { kind: 'plan', aim: 'cost', wiring, gap: null, reasons },
    { kind: 'plan', aim: 'quiet', wiring, gap: { tier: 'money', value: 22_400, bound: 20_000 }, reasons: [] },
    { kind: 'plan', aim: 'bricks', wiring, gap: { tier: 'bricks', value: 5, bound: null }, reasons: [] },
    { kind: 'impossible', aim: 'cost', reasons },
    { kind: 'stopped', aim: 'cost' },
  ] as const;
  const printed = answers.map((answer) => JSON.parse(answerJson(kitOf(board, catalogue), answer)) as Json);

  it('that hold everything a plan can hold are accepted', () => {
    const validate = validatorOf('plan');
    for (const plan of printed) expect(validate(plan), JSON.stringify(validate.errors)).toBe(true);
  });

  it('have no key that the schema does not describe', () => {
    const closed = JSON.parse(JSON.stringify(jsonSchema('plan')), (_key, value: unknown) =>
      typeof value === 'object' && value !== null && 'properties' in value
        ? { additionalProperties: false, ...value }
        : value,
    ) as Json;
    const validate = new Ajv2020({ strict: true, allErrors: true, allowUnionTypes: true }).compile(closed);
    for (const plan of printed) expect(validate(plan), JSON.stringify(validate.errors)).toBe(true);
  });

  it('may have more keys, since later versions add some', () => {
    const validate = validatorOf('plan');
    expect(validate({ ...printed[0], later: 1 })).toBe(true);
  });

  it.each([
    [['format'], 'boardfeed/plan/2'],
    [['status'], 'optimal'],
    [['score', 'money'], 224],
    [['score', 'exposed'], -1],
    [['buy', 'supplies', 0, 'units'], 0],
    [
      ['feeds', 0, 'outputs'],
      [1, 2, 3],
    ],
    [['feeds', 0, 'volts'], '9 V'],
    [['feeds', 0, 'polarity'], 'either'],
    [['unpowered'], undefined],
    [['reasons', 0, 'kind'], 'mystery'],
    [['confirm', 0], {}],
  ])('wrong at %j are refused: %j', (path, value) => {
    const wrong: unknown = JSON.parse(JSON.stringify(edited(printed[0], path, value)));
    expect(refuses(validatorOf('plan'), wrong)).toBe(true);
  });
});
