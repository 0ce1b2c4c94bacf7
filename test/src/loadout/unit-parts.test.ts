import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { perPedalTier } from '../../../src/domain/pedal-tier.js';
import { jobOf } from '../../../src/loadout/content.js';
import { linesOf } from '../../../src/loadout/fill-lines.js';
import { framesOf } from '../../../src/loadout/frame.js';
import { noMemory, rentsOf } from '../../../src/loadout/rents.js';
import { partsOf } from '../../../src/loadout/unit-parts.js';
import { benchOf, usesOf } from '../../support/bench.js';
import { bankOf, partOf, pedalOf, settingOf, supplyOf } from '../../support/builders.js';
import { share, trying } from '../../support/runs.js';
import { holds } from './every-content.js';
import { smallUnits } from './small-units.js';

const anyNumber = new Map();

describe('the parts of a unit', () => {
  it('lose no less than nothing, and less than asked for; each may hang, and is worth what it says', () => {
    const seen = { solos: 0, chains: 0, dropped: 0 };
    fc.assert(
      fc.property(smallUnits({ chains: true }), fc.nat({ max: 200 }), ({ frames, duals, counts }, gap) => {
        for (const frame of frames) {
          const job = jobOf(frame, duals, counts);
          const rents = rentsOf(job, anyNumber, 0, noMemory());
          const lines = linesOf(job, rents);
          const parts = partsOf(job, lines, rents, gap);
          if (parts === null) throw new RangeError('there are too many parts');
          for (const { value, loss, lines: of, item } of parts) {
            expect(loss).toBeGreaterThanOrEqual(0);
            expect(loss).toBeLessThan(gap);
            const { content, value: worth, pedals } = item();
            expect(worth).toBe(value);
            expect(of.map((line) => lines[line]?.pedal)).toEqual(pedals);
            expect(of).toEqual(of.toSorted((a, b) => a - b));
            if (content.kind === 'chain') expect(holds(content.pattern.chain, content.pattern.places)).toBe(true);
            seen[content.kind === 'chain' ? 'chains' : 'solos'] += 1;
          }
          if ((partsOf(job, lines, rents, Infinity)?.length ?? 0) > parts.length) seen.dropped += 1;
        }
      }),
      trying(300),
    );
    for (const [what, count] of Object.entries(seen)) expect([what, count > share(20)]).toEqual([what, true]);
  });

  it('are not listed where there are too many of them', () => {
    const partsFor = (pedals: number): number | undefined => {
      const all = Array.from({ length: pedals }, (_, index) => pedalOf(`pedal-${index}`, 10 + index / 10));
      const bench = benchOf(all, [partOf('fan', 8, { kind: 'chain', tails: 8 })]);
      const [frame] = framesOf(usesOf(supplyOf('supply', 10, [bankOf(2, [settingOf(9, 500)])]), bench), bench);
      if (frame === undefined) throw new RangeError('the supply can carry nothing');
      const nothing = { exposed: 0, newlyExposed: 0, moved: 0, ...perPedalTier(() => 0) };
      const duals = { pedals: new Float64Array(pedals).fill(10), leads: Float64Array.of(1), ...nothing };
      const job = jobOf(frame, duals, new Array<number>(pedals).fill(1));
      const rents = rentsOf(job, anyNumber, 0, noMemory());
      return partsOf(job, linesOf(job, rents), rents, Infinity)?.length;
    };
    // Alone, and with every set of others on as many tails as there are.
    expect(partsFor(8)).toBe(2 ** 8 - 1);
    expect(partsFor(20)).toBe(undefined);
  });
});
