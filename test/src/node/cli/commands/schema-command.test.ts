import { readFile } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';

import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';

import { jsonSchemaText } from '../../../../../src/report/json/schemas.js';
import { boardfeed, fixture, marramStreet, printedObject, tideway } from '../command.js';

const kinds = ['board', 'catalogue', 'plan'] as const;

describe('boardfeed schema', () => {
  test.each(kinds)('%s prints that JSON Schema and nothing else', async (kind) => {
    expect(await boardfeed(['schema', kind])).toMatchObject({ code: 0, errors: '', output: jsonSchemaText(kind) });
  });

  test.each([
    { parameters: ['schema'], says: "missing required argument 'kind'" },
    {
      parameters: ['schema', 'pedal'],
      says: 'Allowed choices are board, catalogue, plan, check, check-output, comparison, explain, spare, spare-add, ask, verdict, wanted.',
    },
  ])('$parameters is wrong use', async ({ parameters, says }) => {
    const ended = await boardfeed(parameters);
    expect(ended).toMatchObject({ code: 2, output: '' });
    expect(ended.errors).toContain(says);
    expect(ended.errors).toContain('(run boardfeed schema --help for what there is)');
  });
});

describe('the plans that choose prints keep to the schema', () => {
  test.each([
    ['a plan', tideway, 0],
    ['nothing owned', [fixture('boards/first-board.yaml'), marramStreet], 0],
    ['a plan with chains and joins', [fixture('boards/bass-board.yaml'), marramStreet], 0],
    ['no plan', [fixture('boards/impossible.yaml'), marramStreet], 4],
    ['a partial plan', [fixture('boards/impossible.yaml'), marramStreet, '--partial'], 0],
    ['no time', [fixture('boards/studio-wall.yaml'), marramStreet, '--time', '0.001'], 5],
  ])('%s', async (_name, parameters, code) => {
    const validate = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(
      parse(jsonSchemaText('plan')) as Record<string, unknown>,
    );
    const ended = await boardfeed(['choose', ...parameters, '--json']);
    expect(ended.code).toBe(code);
    expect(validate(printedObject(ended)), JSON.stringify(validate.errors)).toBe(true);
  });
});

test.each([
  ['boards/first-board.yaml', 'board'],
  ['shops/marram-street.yaml', 'catalogue'],
] as const)('%s names its schema for editors', async (path, kind) => {
  const text = await readFile(fixture(path), 'utf8');
  const named = /^# yaml-language-server: \$schema=(\S+)\n/.exec(text)?.[1];
  expect(await readFile(resolve(dirname(fixture(path)), named ?? ''), 'utf8')).toBe(jsonSchemaText(kind));
});
