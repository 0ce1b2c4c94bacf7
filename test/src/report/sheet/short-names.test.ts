import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { textWidth } from '../../../../src/report/drawing/text-size.js';
import { shortNamed } from '../../../../src/report/sheet/short-names.js';
import { safeText } from '../../../../src/report/words/safe-text.js';
import { hostileName } from '../../../support/hostile-names.js';
import { boardOf, catalogueOf, pedalOf, tideway } from '../samples.js';

const named = (names: readonly string[]): readonly string[] => {
  const board = boardOf(names.map((name, at) => pedalOf(`p${at}`, { name })));
  return shortNamed(kitOf(board, catalogueOf([], []))).board.pedals.map(({ name }) => name);
};
const long = 'Bedstraw compressor of the seventh anniversary';

describe('short names', () => {
  it('leave short ones as they are, in all kinds of things', () => {
    const kit = kitOf(tideway.board, tideway.catalogue);
    expect(shortNamed(kit)).toEqual(kit);
  });

  it('are cut at a word, and in the middle where they would be alike', () => {
    expect(named([long, 'Tarn fuzz'])).toEqual(['Bedstraw compressor of the…', 'Tarn fuzz']);
    const [one, other] = named([`${long} 1`, `${long} 2`]);
    expect([one, other]).toEqual(['Bedstraw com…anniversary 1', 'Bedstraw com…anniversary 2']);
  });

  it('stay whole where they would be alike even so, and alike where they were', () => {
    const inside = [1, 2].map((at) => `Bedstraw compressor of the anniversary ${at} at the Marram Street shop`);
    expect(named(inside)).toEqual(inside);
    expect(new Set(named([long, long])).size).toBe(1);
  });

  it('tell apart what was told apart, and are no longer than there is room', () => {
    let cut = 0;
    fc.assert(
      fc.property(fc.array(hostileName, { minLength: 2, maxLength: 8 }), (names) => {
        const short = named(names);
        short.forEach((name, at) => {
          const whole = safeText(names[at] ?? '');
          short.forEach((other, there) => {
            if (other === name) expect(safeText(names[there] ?? '')).toBe(whole);
          });
          if (name === whole || name === names[at]) return;
          cut += 1;
          expect(textWidth(name, { size: 1, strong: true })).toBeLessThanOrEqual(20);
        });
      }),
    );
    expect(cut).toBeGreaterThan(20);
  });
});
