import fc from 'fast-check';
import { expect, it } from 'vitest';

import { FrameRoom, jobOf } from '../../../src/loadout/content.js';
import { greedilyFilled } from '../../../src/loadout/greedy-fill.js';
import { smallUnits } from './small-units.js';
import { share, trying } from '../../support/runs.js';

it('a unit is filled with what it can carry, in the order given, until nothing more fits', () => {
  const seen = { filled: 0, first: 0, several: 0 };
  fc.assert(
    fc.property(smallUnits({ chains: true }), fc.boolean(), ({ frames, duals, counts }, backwards) => {
      for (const frame of frames) {
        const job = jobOf(frame, duals, counts);
        const order = backwards ? job.solos.toReversed() : job.solos;
        const { items, value } = greedilyFilled(job, order);
        const room = new FrameRoom(job);
        for (const item of items) {
          expect(room.fits(item)).toBe(true);
          room.take(item);
        }
        expect(value).toBe(items.reduce((sum, item) => sum + item.value, 0));
        expect(job.solos.some((item) => room.fits(item))).toBe(false);
        const possible = order.find((item) => new FrameRoom(job).fits(item));
        expect(items[0]).toBe(possible);
        if (items.length > 0) seen.filled += 1;
        if (possible !== undefined && possible !== job.solos[0]) seen.first += 1;
        if (items.length > 1) seen.several += 1;
      }
    }),
    trying(200),
  );
  for (const [what, count] of Object.entries(seen)) expect([what, count > share(20)]).toEqual([what, true]);
});
