import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';

import { faultText, type ReadResult } from '../../../src/reading/faults/input-fault.js';
import { inputsFromText } from '../../../src/reading/inputs-from-text.js';
import { readOf } from './texts.js';
import { marramCatalogue, tidewayBoard } from '../../support/documented.js';
import { expectedBoard } from './tideway.js';
import { share, trying } from '../../support/runs.js';

/** What holds of every result, whatever the text. */
function expectLawful(result: ReadResult<unknown>, texts: Readonly<Record<string, string>>): void {
  if (result.kind === 'read') return;
  expect(result.faults.length).toBeGreaterThan(0);
  expect(result.faults.length).toBeLessThanOrEqual(20);
  if (result.more > 0) expect(result.faults).toHaveLength(20);
  for (const fault of result.faults) {
    const lines = (texts[fault.file] ?? '').replace(/^\uFEFF/, '').split('\n');
    expect(fault.line).toBeGreaterThanOrEqual(1);
    expect(fault.line).toBeLessThanOrEqual(lines.length);
    expect(fault.column).toBeGreaterThanOrEqual(1);
    expect(fault.column).toBeLessThanOrEqual((lines[fault.line - 1] ?? '').length + 1);
    expect(fault.message).not.toBe('');
    expect(fault.remedy).not.toBe('');
    expect(fault.message).not.toContain('something else');
    expect(faultText(fault)).not.toMatch(/[\p{Cc}\u202a-\u202e\u2066-\u2069\u2028\u2029]/u);
  }
}

const pieces = [
  '[',
  ']',
  '{',
  '}',
  ':',
  ',',
  '-',
  '?',
  '#',
  '&a',
  '*a',
  '!x',
  '|',
  '>',
  '"',
  "'",
  '%',
  '@',
  '\t',
  '\n',
  ' ',
]
  .concat([
    '\0',
    '\uFEFF',
    '\ud800',
    '\u202e',
    '---\n',
    '__proto__: 1',
    '<<: *a',
    '9V',
    '0x9',
    '-0',
    '.nan',
    '1e9',
    'null',
  ])
  .concat(['volts', 'milliamps', 'pedals:', 'true', '~', '9.00001', '-1', '0']);

const edit = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.integer({ min: 0, max: 12 }),
  insert: fc.oneof(fc.constantFrom(...pieces), fc.constant(''), fc.string({ unit: 'binary', maxLength: 4 })),
});

const edited = (text: string, edits: readonly { at: number; length: number; insert: string }[]): string =>
  edits.reduce((current, { at, length, insert }) => {
    const start = Math.floor(at * current.length);
    return current.slice(0, start) + insert + current.slice(start + length);
  }, text);

describe('any text whatever', () => {
  it('never throws: it is read, or its faults stand inside it', () => {
    let faulty = 0;
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 3 }), fc.array(edit, { maxLength: 2 }), (first, second) => {
        const texts = { b: edited(tidewayBoard, first), c: edited(marramCatalogue, second) };
        const result = inputsFromText({ file: 'b', text: texts.b }, { file: 'c', text: texts.c });
        if (result.kind === 'faulty') faulty += 1;
        expectLawful(result, texts);
      }),
      trying(600),
    );
    expect(faulty).toBeGreaterThan(share(100));
  });

  it('of signs only never throws either', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...pieces), { maxLength: 40 }), (signs) => {
        const texts = { b: signs.join('') };
        expectLawful(inputsFromText({ file: 'b', text: texts.b }, null), texts);
      }),
      trying(600),
    );
  });

  it('a value of any kind in place of any other never throws', () => {
    const data: unknown = parse(tidewayBoard);
    const paths = [...pathsOf(data)];
    let faulty = 0;
    fc.assert(
      fc.property(fc.constantFrom(...paths), fc.jsonValue({ maxDepth: 3 }), (path, value) => {
        const texts = { b: JSON.stringify(replaced(data, path, value)), c: marramCatalogue };
        const result = inputsFromText({ file: 'b', text: texts.b }, { file: 'c', text: texts.c });
        if (result.kind === 'faulty') faulty += 1;
        expectLawful(result, texts);
      }),
      trying(600),
    );
    expect(faulty).toBeGreaterThan(share(300));
  });

  it.each([
    [['pedals'], { length: {} }],
    [['wiring', 0, 'pedal'], { length: {} }],
    [['board'], { length: [{}] }],
    [['pedals'], { length: 1_000_000 }],
  ])('a map with a key called length at %j is one fault there', (path, value) => {
    const texts = { b: JSON.stringify(replaced(parse(tidewayBoard), path, value)), c: marramCatalogue };
    const result = inputsFromText({ file: 'b', text: texts.b }, { file: 'c', text: texts.c });
    expectLawful(result, texts);
    const key = path.map((step) => (typeof step === 'number' ? `[${step}]` : `.${step}`)).join('');
    const there = result.kind === 'faulty' ? result.faults.filter((fault) => fault.key === key.slice(1)) : [];
    expect(there).toHaveLength(1);
  });

  it('a board is the same in whatever order its keys stand', () => {
    const data = parse(tidewayBoard) as Readonly<Record<string, unknown>>;
    const keys = Object.keys(data);
    fc.assert(
      fc.property(fc.shuffledSubarray(keys, { minLength: keys.length }), (order) => {
        const text = JSON.stringify(Object.fromEntries(order.map((key) => [key, data[key]])));
        expect(readOf(text, marramCatalogue).board).toEqual(expectedBoard);
      }),
      trying(300),
    );
  });
});

type Steps = readonly (string | number)[];

function* pathsOf(value: unknown, path: Steps = []): Generator<Steps> {
  yield path;
  if (typeof value !== 'object' || value === null) return;
  for (const [key, child] of Object.entries(value))
    yield* pathsOf(child, [...path, Array.isArray(value) ? Number(key) : key]);
}

function replaced(value: unknown, [step, ...rest]: Steps, replacement: unknown): unknown {
  if (step === undefined) return replacement;
  if (Array.isArray(value)) {
    const items: readonly unknown[] = value;
    return items.map((item, index) => (index === step ? replaced(item, rest, replacement) : item));
  }
  if (typeof value !== 'object' || value === null) return value;
  const child: unknown = (value as Readonly<Record<string, unknown>>)[step];
  return { ...value, [step]: replaced(child, rest, replacement) };
}
