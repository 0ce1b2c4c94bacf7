import { describe, expect, it } from 'vitest';

import { escapedText, listed, quoted } from '../../../src/domain/shown-text.js';

describe('escapedText', () => {
  it('leaves letters, signs and emoji alone', () => {
    expect(escapedText('Crème brûlée № 5 – “ψ” 😀 \\x1b')).toBe('Crème brûlée № 5 – “ψ” 😀 \\x1b');
  });

  it('escapes what is not seen or acted on', () => {
    expect(escapedText('\u0000\t\n\u007f\u0085\u00ad')).toBe('\\x00\\x09\\x0a\\x7f\\x85\\xad');
    expect(escapedText('\u200b\u202e\u2066\u2028\ufeff\udc00')).toBe('\\u200b\\u202e\\u2066\\u2028\\ufeff\\udc00');
    expect(escapedText('\u{e0041}')).toBe('\\u{e0041}');
  });

  it('changes nothing the second time', () => {
    expect(escapedText(escapedText('a\u001bb'))).toBe('a\\x1bb');
  });
});

describe('quoted', () => {
  it('cuts after 60 characters, never inside one', () => {
    expect(quoted('a'.repeat(60))).toBe(`"${'a'.repeat(60)}"`);
    expect(quoted('a'.repeat(61))).toBe(`"${'a'.repeat(60)}…"`);
    expect(quoted('😀'.repeat(61))).toBe(`"${'😀'.repeat(60)}…"`);
  });

  it('cuts what is very much longer in the same way', () => {
    for (const length of [239, 240, 241, 100_000]) expect(quoted('a'.repeat(length))).toBe(`"${'a'.repeat(60)}…"`);
    for (const length of [120, 121, 50_000]) expect(quoted('😀'.repeat(length))).toBe(`"${'😀'.repeat(60)}…"`);
  });

  it('counts a character that is escaped as one', () => {
    expect(quoted('\t'.repeat(60))).toBe(`"${'\\x09'.repeat(60)}"`);
    expect(quoted('\t'.repeat(61))).toBe(`"${'\\x09'.repeat(60)}…"`);
  });
});

describe('listed', () => {
  it('joins words as a sentence does', () => {
    expect(listed([], 'or')).toBe('');
    expect(listed(['a'], 'or')).toBe('a');
    expect(listed(['a', 'b'], 'and')).toBe('a and b');
    expect(listed(['a', 'b', 'c'], 'or')).toBe('a, b or c');
  });
});
