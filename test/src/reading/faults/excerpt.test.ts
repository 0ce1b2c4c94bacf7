import { describe, expect, it } from 'vitest';

import { endsInYaml, excerptAt } from '../../../../src/reading/faults/excerpt.js';

describe('the line of a fault', () => {
  const line = '  - {name: "Echo, two", volts: 9V, milliamps: 100}';
  it.each([
    ['volts: 9V', 'a value', '9V'],
    ['milliamps', 'a key', 'milliamps'],
    ['"Echo', 'a quoted text', '"Echo, two"'],
    ['{name', 'a map by its bracket', '{'],
  ])('with %s has %s marked: %s', (at, _what, marked) => {
    const start = line.indexOf(at) + (at.startsWith('volts') ? 'volts: '.length : 0);
    expect(excerptAt(`pedals:\n${line}\n`, 2, start + 1, endsInYaml)).toEqual({
      before: line.slice(0, start),
      marked,
      after: line.slice(start + marked.length),
    });
  });

  it('in a table marks the cell, whatever else separates', () => {
    expect(excerptAt('a;9,5 V;b', 1, 3, ';')).toEqual({ before: 'a;', marked: '9,5 V', after: ';b' });
    expect(excerptAt('a;;b', 1, 3, ';')).toEqual({ before: 'a;', marked: '', after: ';b' });
  });

  it('is cut on both sides where it is long', () => {
    const found = excerptAt(`${'a'.repeat(500)},9V,${'b'.repeat(500)}`, 1, 502, ',');
    expect(found?.before).toBe(`…${'a'.repeat(199)},`);
    expect(found?.marked).toBe('9V');
    expect(found?.after).toBe(`,${'b'.repeat(199)}…`);
  });

  it('is none where the text has no such line, or nothing stands in it', () => {
    expect(excerptAt('a', 2, 1, ',')).toBeUndefined();
    expect(excerptAt('a\n\nb', 2, 1, ',')).toBeUndefined();
  });
});
