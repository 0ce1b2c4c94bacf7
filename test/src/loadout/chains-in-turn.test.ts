import fc from 'fast-check';
import { expect, it } from 'vitest';

import { perPedalTier } from '../../../src/domain/pedal-tier.js';
import { chainsInTurn } from '../../../src/loadout/chains-in-turn.js';
import { chainItem, FrameRoom, jobOf } from '../../../src/loadout/content.js';
import { framesOf } from '../../../src/loadout/frame.js';
import { greedilyFilled } from '../../../src/loadout/greedy-fill.js';
import { noMemory, rentsOf } from '../../../src/loadout/rents.js';
import { benchOf, usesOf } from '../../support/bench.js';
import { bankOf, partOf, pedalOf, settingOf, supplyOf } from '../../support/builders.js';
import { share, trying } from '../../support/runs.js';
import { Tally } from '../../support/tally.js';
import { smallUnits } from './small-units.js';

const anyNumber = new Map();

it('finds nothing but what the unit can carry and is worth more than the floor', () => {
  const seen = new Tally();
  fc.assert(
    fc.property(smallUnits({ chains: true }), fc.nat({ max: 3 }), ({ frames, duals, counts }, quarters) => {
      for (const frame of frames) {
        const job = jobOf(frame, duals, counts);
        const rents = rentsOf(job, anyNumber, 0, noMemory());
        const floor = Math.round((rents.bound * quarters) / 4);
        const draft = chainsInTurn(job, rents.items, floor);
        if (draft === null) continue;
        const room = new FrameRoom(job);
        for (const item of draft.items) {
          expect(room.fits(item)).toBe(true);
          room.take(item);
        }
        expect(draft.value).toBe(draft.items.reduce((sum, { value }) => sum + value, 0));
        expect(draft.value).toBeGreaterThan(floor);
        seen.add('found', draft.items.length > 1 ? 'several' : 'one');
      }
    }),
    trying(200),
  );
  expect(seen.lacking(share(20), 'found', 'several', 'one')).toEqual([]);
});

it('makes another chain of what the first one of a list leaves, where the others of the list share its pedals', () => {
  const bench = benchOf(
    [60, 50, 40, 30].map((draw) => pedalOf(`pedal-${draw}`, draw)),
    [partOf('pair', 5, { kind: 'chain', tails: 2 })],
  );
  const [frame] = framesOf(usesOf(supplyOf('two', 10, [bankOf(2, [settingOf(9, 100)])]), bench), bench);
  if (frame === undefined) throw new RangeError('the supply can carry nothing');
  const zero = { ...perPedalTier(() => 0), exposed: 0, newlyExposed: 0, moved: 0 };
  const duals = { ...zero, pedals: Float64Array.of(10, 10, 10, 10), leads: Float64Array.of(1) };
  const job = jobOf(frame, duals, [1, 1, 1, 1]);
  const [pool] = job.pools;
  const chainOf = (...draws: readonly number[]) => {
    const places = pool?.chain.places.filter(({ pedal }) =>
      draws.some((draw) => bench.classes[pedal]?.like.id === `pedal-${draw}`),
    );
    if (pool === undefined || places === undefined) throw new RangeError('there are chains');
    return chainItem(pool, places);
  };
  const items = [chainOf(60, 40), chainOf(60, 30)];
  expect(greedilyFilled(job, items).value).toBe(29);
  expect(chainsInTurn(job, items, 29)?.value).toBe(38);
  expect(chainsInTurn(job, items, 38)).toBeNull();
  // Without a chain to begin with there is none.
  expect(chainsInTurn(job, job.solos, 0)).toBeNull();
});
