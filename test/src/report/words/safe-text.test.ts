import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { safeJson, safeText } from '../../../../src/report/words/safe-text.js';
import { trying } from '../../../support/runs.js';

const unsafe = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/u;
const anyText = fc.string({
  unit: fc.oneof(fc.string({ unit: 'binary' }), fc.constantFrom('\u001b[0m', '\u202e', '\ud800', '\n')),
});

describe('text from files', () => {
  it('spells out control characters, line breaks and marks that turn the reading direction', () => {
    expect(safeText('a\u001b[31mb\nc\u009bd\u202ee\u{e0041}')).toBe('a\\x1b[31mb\\x0ac\\x9bd\\u{202e}e\\u{e0041}');
  });

  it('leaves letters of any script alone', () => {
    expect(safeText('Größe 日本 ñ 🎸')).toBe('Größe 日本 ñ 🎸');
  });

  it('never keeps an unsafe character', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(safeText(text)).not.toMatch(unsafe);
      }),
      trying(500),
    );
  });

  it('means the same as JSON, and keeps only the line breaks of the layout', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const json = safeJson(JSON.stringify({ text }, null, 2));
        expect(json.replaceAll('\n', '')).not.toMatch(unsafe);
        expect(JSON.parse(json)).toEqual({ text });
      }),
      trying(500),
    );
  });
});
