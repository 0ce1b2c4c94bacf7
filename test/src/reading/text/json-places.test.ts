import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { Path } from '../../../../src/domain/finding.js';
import { offsetInJson } from '../../../../src/reading/text/json-places.js';

/** Every path into a value. */
function pathsInto(value: unknown, path: Path = []): readonly Path[] {
  if (typeof value !== 'object' || value === null) return [path];
  const entries = Array.isArray(value) ? [...value.entries()] : Object.entries(value);
  return [path, ...entries.flatMap(([key, inner]) => pathsInto(inner, [...path, key]))];
}

const valueAt = (value: unknown, path: Path): unknown =>
  path.reduce<unknown>((inner, step) => (inner as Readonly<Record<string | number, unknown>>)[step], value);

describe('the place of a value in a JSON text', () => {
  it('is where the value is written, however the text is laid out', () => {
    const keys = fc.oneof(fc.string(), fc.constantFrom('a', 'a"b', '[', '}', ',', '\\', '\u2028', '日'));
    const { value: values } = fc.letrec((tie) => ({
      value: fc.oneof(
        { depthSize: 'small' },
        fc.constantFrom(null, true, -1.5e3, '', 'x,]}"\\', '{"a": 1}'),
        fc.array(tie('value'), { maxLength: 3 }),
        fc.dictionary(keys, tie('value'), { maxKeys: 3, noNullPrototype: true }),
      ),
    }));
    fc.assert(
      fc.property(values, fc.constantFrom(undefined, 2, '\t'), (value, indent) => {
        const text = JSON.stringify(value, null, indent);
        for (const path of pathsInto(JSON.parse(text))) {
          const offset = offsetInJson(text, path);
          expect(startsWith(text.slice(offset), valueAt(value, path), indent)).toBe(true);
        }
      }),
    );
  });

  it('is what is nearest around it where it is missing', () => {
    expect(offsetInJson('{"a": [1, 2]}', ['a', 5])).toBe(6);
    expect(offsetInJson('{"a": [1, 2]}', ['b'])).toBe(0);
    expect(offsetInJson('{"a": 1}', ['a', 'b'])).toBe(6);
  });

  it('is the last one of a repeated key, as for whoever parses the text', () => {
    expect(offsetInJson('{"a": 1, "a": 2}', ['a'])).toBe(14);
  });

  it('is found below any number of brackets', () => {
    const deep = 100_000;
    const text = `{"a": ${'['.repeat(deep)}${']'.repeat(deep)}, "b": 1}`;
    expect(text.slice(offsetInJson(text, ['b']))).toBe('1}');
  });
});

/** The layout of what is inside a value depends on where it stands: white space is not compared. */
function startsWith(text: string, value: unknown, indent: string | number | undefined): boolean {
  if (indent === undefined) return text.startsWith(JSON.stringify(value));
  const bare = (of: string): string => of.replace(/[\n\t ]/g, '');
  return bare(text).startsWith(bare(JSON.stringify(value, null, indent)));
}
