import { stripVTControlCharacters } from 'node:util';

import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';

import type { ScreenOptions } from '../../../../src/report/screen/screen.js';
import { share, trying } from '../../../support/runs.js';
import { oddName } from '../odd-names.js';

export const plain = (width: number) => ({ width, colour: false }) as const;

/** Names of things by their ids. */
type Naming = (id: string) => string;

/** What is true of every screen, asked of these; many random cases have so many lines at the least. */
export function describeEveryScreen(
  screensOf: (named: Naming, options: ScreenOptions) => readonly string[],
  cases: number,
  lines: number,
): void {
  describe('every screen', () => {
    const named: Naming = (id) => id;

    it('uses ASCII signs where the screen shows nothing else', () => {
      for (const text of screensOf(named, { width: 80, colour: false, unicode: false }))
        expect(text).toMatch(/^[\n -~]*$/);
    });

    it('says the same with and without colour', () => {
      const coloured = screensOf(named, { width: 80, colour: true });
      for (const text of coloured) expect(text).toContain('\u001b[');
      expect(coloured.map(stripVTControlCharacters)).toEqual(screensOf(named, plain(80)));
    });

    it('keeps within its width and shows no control character, whatever the names are', () => {
      const names = fc.array(oddName, { minLength: 1, maxLength: 8 });
      let seen = 0;
      fc.assert(
        fc.property(names, fc.constantFrom(60, 80, 120), (given, width) => {
          let next = 0;
          for (const text of screensOf(() => given[next++ % given.length] ?? '', plain(width))) {
            expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/u);
            expect(text.split('\n').filter((line) => stringWidth(line) > width)).toEqual([]);
            seen += text.split('\n').length;
          }
        }),
        trying(cases),
      );
      expect(seen).toBeGreaterThan(share(lines));
    });
  });
}
