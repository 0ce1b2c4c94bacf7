import fc from 'fast-check';
import { expect, it } from 'vitest';

import { jobOf } from '../../../src/loadout/content.js';
import { fillByParts } from '../../../src/loadout/part-fill.js';
import { noMemory, rentsOf, type Span } from '../../../src/loadout/rents.js';
import { share, trying } from '../../support/runs.js';
import { mostWorth } from './every-content.js';
import { smallUnits } from './small-units.js';

const anyNumber: Span = new Map();

it('fills a unit with the most that trying everything finds, where that is more than the floor', () => {
  const seen = { more: 0, none: 0, twins: 0, totals: 0, gap: 0 };
  const floors = fc.constantFrom(0, 0.5, 0.9, 1, 1.3);
  fc.assert(
    fc.property(smallUnits({ chains: true }), floors, ({ frames, duals, counts }, part) => {
      for (const frame of frames.filter(({ chains }) => chains.length > 0)) {
        const truth = mostWorth(frame, duals, counts);
        const floor = Math.floor(truth * part);
        const job = jobOf(frame, duals, counts);
        const rents = rentsOf(job, anyNumber, floor, noMemory());
        const filling = fillByParts(job, rents, floor);
        expect(filling).toMatchObject({ bound: Math.max(truth, floor) });
        expect(filling?.found?.value ?? floor).toBe(Math.max(truth, floor));
        seen[rents.bound > floor && truth > floor ? 'more' : 'none'] += 1;
        if (Math.max(...counts) > 1) seen.twins += 1;
        if (frame.capacities.length > 0) seen.totals += 1;
        if (rents.bound > Math.max(truth, floor)) seen.gap += 1;
      }
    }),
    trying(1_200),
  );
  for (const [what, count] of Object.entries(seen)) expect([what, count > share(40)]).toEqual([what, true]);
});
