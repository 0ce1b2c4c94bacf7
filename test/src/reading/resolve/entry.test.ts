import { describe, expect, it } from 'vitest';

import { entriesAt, entryAt, pathKey, type Sheet } from '../../../../src/reading/resolve/entry.js';
import type { Path } from '../../../../src/domain/finding.js';

/** The sheet of a board in which these paths were reported. */
function sheetOf(data: unknown, ...broken: readonly Path[]): Sheet {
  const within = broken.flatMap((path) => [[], ...path.map((_, index) => path.slice(0, index + 1))]);
  return {
    source: 'board',
    data,
    broken: new Set(broken.map(pathKey)),
    brokenWithin: new Set(within.map(pathKey)),
  };
}

type Fields = { readonly alone: number; readonly chained: number };
const data = { policy: { headroom: { alone: 1, chained: 2 } }, pedals: [{ name: 'Echo' }, { name: 'Fuzz' }] };
const headroom: Path = ['policy', 'headroom'];

describe('different paths', () => {
  it('have different keys', () => {
    const paths: readonly Path[] = [[], ['a'], ['a', 'b'], ['a.b'], ['ab'], ['0'], [0], ['a', 0], ['a', '0']];
    expect(new Set(paths.map(pathKey)).size).toBe(paths.length);
  });
});

describe('a map of a file', () => {
  it('has its fields, and knows where they stand', () => {
    const entry = entryAt<Fields>(sheetOf(data), headroom);
    expect(entry.fields).toEqual({ alone: 1, chained: 2 });
    expect(entry.isBroken('alone')).toBe(false);
    expect(entry.spotOf('alone')).toEqual({ source: 'board', path: ['policy', 'headroom', 'alone'] });
  });

  it('keeps its other fields when one was reported', () => {
    const entry = entryAt<Fields>(sheetOf(data, [...headroom, 'alone']), headroom);
    expect(entry.fields).toEqual({ chained: 2 });
    expect(entry.isBroken('alone')).toBe(true);
    expect(entry.isBroken('chained')).toBe(false);
  });

  it('has a broken field where something inside the field was reported', () => {
    const entry = entryAt<{ readonly headroom: unknown }>(sheetOf(data, [...headroom, 'alone']), ['policy']);
    expect(entry.fields).toEqual({});
    expect(entry.isBroken('headroom')).toBe(true);
  });

  it('is untouched by what was reported elsewhere', () => {
    const entry = entryAt<Fields>(sheetOf(data, ['pedals', 0, 'name']), headroom);
    expect(entry.fields).toEqual({ alone: 1, chained: 2 });
    expect(entry.isBroken('alone')).toBe(false);
  });

  it.each([
    ['it', headroom],
    ['what is around it', ['policy']],
  ])('has broken fields only when %s was reported as a whole', (_what, path) => {
    const entry = entryAt<Fields>(sheetOf(data, path), headroom);
    expect(entry.fields).toEqual({});
    expect(entry.isBroken('alone')).toBe(true);
    expect(entry.isBroken('chained')).toBe(true);
  });

  it.each([
    ['it is not there', {}],
    ['what is around it is not there', { policy: {} }],
    ['what is around it is empty', { policy: null }],
    ['what stands there is empty', { policy: { headroom: null } }],
    ['what stands there is text', { policy: { headroom: 'plenty' } }],
    ['what stands there is a list', { policy: { headroom: [1, 2] } }],
    ['what is around it is text', { policy: 'none' }],
    ['the file is empty', null],
    ['there is nothing at all', undefined],
  ])('has no fields, and none that is broken, where %s', (_what, other) => {
    const entry = entryAt<Fields>(sheetOf(other), headroom);
    expect(entry.fields).toEqual({});
    expect(entry.isBroken('alone')).toBe(false);
  });

  it('does not have what every map inherits', () => {
    expect(entryAt(sheetOf({}), ['constructor']).fields).toEqual({});
    expect(entryAt<{ readonly name: string }>(sheetOf({}), ['toString']).fields).toEqual({});
  });
});

describe('the maps of a list', () => {
  it('are in order, and know where they stand', () => {
    const [first, second, ...others] = entriesAt<{ readonly name: string }>(sheetOf(data), ['pedals']);
    expect(first?.fields).toEqual({ name: 'Echo' });
    expect(second?.spotOf('name').path).toEqual(['pedals', 1, 'name']);
    expect(others).toEqual([]);
  });

  it('are all there when one of them was reported, which then has nothing', () => {
    const entries = entriesAt<{ readonly name: string }>(sheetOf(data, ['pedals', 0]), ['pedals']);
    expect(entries.map(({ fields }) => fields)).toEqual([{}, { name: 'Fuzz' }]);
    expect(entries.map(({ isBroken }) => isBroken('name'))).toEqual([true, false]);
  });

  it('are none where the list was reported, is not there or is no list', () => {
    expect(entriesAt(sheetOf(data, ['pedals']), ['pedals'])).toEqual([]);
    expect(entriesAt(sheetOf({}), ['pedals'])).toEqual([]);
    expect(entriesAt(sheetOf({ pedals: 'Echo' }), ['pedals'])).toEqual([]);
    expect(entriesAt(sheetOf({ pedals: { name: 'Echo' } }), ['pedals'])).toEqual([]);
  });
});
