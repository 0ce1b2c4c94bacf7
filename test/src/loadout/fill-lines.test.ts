import fc from 'fast-check';
import { expect, it } from 'vitest';

import { jobOf } from '../../../src/loadout/content.js';
import { linesOf } from '../../../src/loadout/fill-lines.js';
import { noMemory, rentsOf } from '../../../src/loadout/rents.js';
import { share, trying } from '../../support/runs.js';
import { smallUnits } from './small-units.js';

const anyNumber = new Map();

it('has a line for every class that may hang there, whoever can replace another before it', () => {
  const seen = { several: 0, replaceable: 0 };
  fc.assert(
    fc.property(smallUnits({ chains: true }), ({ frames, duals, counts }) => {
      for (const frame of frames) {
        const job = jobOf(frame, duals, counts);
        const lines = linesOf(job, rentsOf(job, anyNumber, 0, noMemory()));
        const chained = job.pools.flatMap(({ candidates }) => candidates.map(({ place }) => place.pedal));
        const there = new Set([...job.solos.flatMap(({ pedals }) => pedals), ...chained]);
        expect(lines.map(({ pedal }) => pedal).sort()).toEqual([...there].sort());
        for (const [index, { pedal, count, replaceable }] of lines.entries()) {
          expect(count).toBe(counts[pedal]);
          if (count > 1) seen.several += 1;
          for (const other of replaceable) {
            expect(other).toBeGreaterThan(index);
            expect(other).toBeLessThan(lines.length);
            seen.replaceable += 1;
          }
        }
      }
    }),
    trying(200),
  );
  for (const [what, count] of Object.entries(seen)) expect([what, count > share(20)]).toEqual([what, true]);
});
