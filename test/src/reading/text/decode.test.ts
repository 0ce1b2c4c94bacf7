import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { decode } from '../../../../src/reading/text/decode.js';

const bytesOf = (...pieces: readonly (string | readonly number[])[]): Uint8Array =>
  Buffer.concat(pieces.map((piece) => (typeof piece === 'string' ? Buffer.from(piece) : Buffer.from(piece))));

describe('the text of bytes', () => {
  it('is what was encoded, a byte order mark and signs of replacement included', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(decode(new TextEncoder().encode(text))).toEqual({ kind: 'text', text });
      }),
    );
    expect(decode(bytesOf('\uFEFFa: \uFFFD\r\n'))).toEqual({ kind: 'text', text: '\uFEFFa: \uFFFD\r\n' });
  });

  it.each<[string, Uint8Array, number, number]>([
    ['a byte that never stands in UTF-8', bytesOf('ü: 1\nb\uFFFD: ', [0xff, 0x41]), 2, 5],
    ['a sign of two units before it', bytesOf('𝄞', [0xff]), 1, 3],
    ['a sign that is cut off at the end of its line', bytesOf('a\nbc', [0xe2, 0x82], '\nd'), 2, 3],
    ['a sign that is cut off at the end', bytesOf('a\nbc', [0xe2, 0x82]), 2, 3],
    ['half of a pair that stands alone', bytesOf('a', [0xed, 0xa0, 0x80]), 1, 2],
    ['another encoding', Buffer.from('\uFEFFboard: a', 'utf16le'), 1, 1],
  ])('ends at %s', (_, bytes, line, column) => {
    const read = decode(bytes);
    expect(read).toMatchObject({ kind: 'unreadable', line, column });
    expect(read.kind === 'unreadable' && read.words.message).toContain('not UTF-8');
  });
});
