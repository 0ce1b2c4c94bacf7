import fc from 'fast-check';
import { parse, stringify } from 'yaml';

import { nastyValues, nastyWords } from './nasty.js';

/** What is done to the bytes of a valid file. */
export type Mutation = (valid: Buffer) => Buffer;

const place = fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true });
const word = fc.oneof(fc.constantFrom<string>(...nastyWords), fc.string({ unit: 'binary', maxLength: 4 }));

/** Some bytes replaced, taken out, put in, written twice, or all after a place cut off. */
const ofBytes: fc.Arbitrary<Mutation> = fc
  .record({
    at: place,
    length: fc.nat(24),
    put: fc.oneof(fc.uint8Array({ maxLength: 8 }), fc.constant('again' as const), fc.constant('end' as const)),
  })
  .map(({ at, length, put }) => (valid) => {
    const start = Math.floor(at * valid.length);
    const head = valid.subarray(0, start);
    if (put === 'end') return head;
    if (put === 'again') return Buffer.concat([head, valid.subarray(start, start + length), valid.subarray(start)]);
    return Buffer.concat([head, put, valid.subarray(start + length)]);
  });

/** Words, numbers, spaces and signs. */
const token = /[\p{L}\d_.]+|\s+|./gu;

/** A token replaced by another one of the file or by a nasty word, taken out, or moved. */
const ofTokens: fc.Arbitrary<Mutation> = fc
  .record({ at: place, other: place, put: fc.oneof(word, fc.constantFrom('other', 'swap', 'none')) })
  .map(({ at, other, put }) => (valid) => {
    const tokens: readonly string[] = valid.toString('utf8').match(token) ?? [];
    const [one, two] = [Math.floor(at * tokens.length), Math.floor(other * tokens.length)];
    const [first = '', second = ''] = [tokens[one], tokens[two]];
    const changed = tokens.map((same, index) => (index === one ? replacement(put, second) : same));
    if (put === 'swap' && two < changed.length) changed[two] = first;
    return Buffer.from(changed.join(''));
  });

const replacement = (put: string, second: string): string =>
  put === 'other' || put === 'swap' ? second : put === 'none' ? '' : put;

/** A value of the structure replaced, taken out, repeated, buried or given another key. */
const ofStructure: fc.Arbitrary<Mutation> = fc
  .record({
    at: place,
    change: fc.oneof(
      fc.constantFrom(...nastyValues).map((value) => () => value),
      fc.jsonValue({ maxDepth: 2 }).map((value) => () => value),
      fc.integer({ min: 2, max: 60 }).map((depth) => (value: unknown) => buried(value, depth)),
      fc.integer({ min: 2, max: 40 }).map((times) => (value: unknown) => repeated(value, times)),
      fc.constant((value: unknown) => [value]),
      fc.constant(() => leftOut),
    ),
    key: fc.option(fc.constantFrom<string>(...nastyWords), { freq: 6 }),
    json: fc.boolean(),
  })
  .map(({ at, change, key, json }) => (valid) => {
    const data = dataOf(valid);
    const places = [...placesIn(data)];
    const chosen = places[Math.floor(at * places.length)] ?? [];
    const changed = replaced(data, chosen, change, key);
    return Buffer.from(json ? JSON.stringify(changed) : yamlOf(changed));
  });

/** One to three changes of any kind; those of the structure first, which need a file that can be read. */
export const mutations: fc.Arbitrary<readonly Mutation[]> = fc
  .tuple(
    fc.array(ofStructure, { maxLength: 2 }),
    fc.array(fc.oneof(ofTokens, ofBytes), { maxLength: 2 }),
    fc.oneof(ofTokens, ofBytes, ofStructure),
  )
  .map(([structure, text, one]) => [...structure, ...(structure.length === 0 ? [one] : []), ...text]);

const leftOut = Symbol('left out');
type Place = readonly (string | number)[];

function dataOf(valid: Buffer): unknown {
  try {
    return parse(valid.toString('utf8'), { logLevel: 'silent' });
  } catch {
    return valid.toString('utf8');
  }
}

const yamlOf = (data: unknown): string => stringify(data, { aliasDuplicateObjects: false });

function* placesIn(data: unknown, path: Place = []): Generator<Place> {
  yield path;
  if (typeof data !== 'object' || data === null) return;
  for (const [key, value] of Object.entries(data))
    yield* placesIn(value, [...path, Array.isArray(data) ? Number(key) : key]);
}

/** The data with another value at a place, under another key where one is given. */
function replaced(data: unknown, path: Place, change: (value: unknown) => unknown, key: string | null): unknown {
  const [step, ...rest] = path;
  if (step === undefined) {
    const value = change(data);
    return value === leftOut ? null : value;
  }
  if (Array.isArray(data)) {
    return data.flatMap((item: unknown, index) => {
      if (index !== step) return [item];
      const value = rest.length === 0 ? change(item) : replaced(item, rest, change, key);
      return value === leftOut ? [] : [value];
    });
  }
  const entries = Object.entries(data as object).flatMap(([name, item]: [string, unknown]) => {
    if (name !== step) return [[name, item] as const];
    const value = rest.length === 0 ? change(item) : replaced(item, rest, change, key);
    return value === leftOut ? [] : [[rest.length === 0 ? (key ?? name) : name, value] as const];
  });
  // An own key, whatever it is called.
  return Object.fromEntries(entries);
}

const buried = (value: unknown, depth: number): unknown => (depth === 0 ? value : [buried(value, depth - 1)]);

const repeated = (value: unknown, times: number): unknown =>
  typeof value === 'string' ? value.repeat(times) : Array.from({ length: times }, () => value);
