import fc from 'fast-check';
import { expect, it } from 'vitest';

import { prospectsOf } from '../../../src/loadout/chain-prospects.js';
import { jobOf, type Pool } from '../../../src/loadout/content.js';
import { stagesOf, type Placed } from '../../../src/loadout/label-stages.js';
import { noMemory, rentsOf, type Rents } from '../../../src/loadout/rents.js';
import { smallUnits, spans } from './small-units.js';
import { share, trying } from '../../support/runs.js';

/** Every chain of the first pedal and some of the later ones that may hang: how many pedals it has, and what it earns. */
function chainsFrom(first: Placed, later: readonly Placed[], { chain, leads }: Pool, { perChain }: Rents) {
  const chains: { readonly pedals: number; readonly earned: number }[] = [];
  for (let set = 1; set < 2 ** later.length; set += 1) {
    const all = [first, ...later.filter((_, index) => (set & (1 << index)) !== 0)];
    const sum = (of: (placed: Placed) => number): number => all.reduce((total, placed) => total + of(placed), 0);
    const holds = [
      sum(({ place }) => place.load) <= chain.mostLoad,
      sum(({ place }) => place.surge) <= chain.mostSurge,
      sum(({ place }) => (place.sole ? 1 : 0)) <= 1,
      all.length <= chain.mostTails,
    ];
    const cost = (leads[all.length]?.cost ?? NaN) + (perChain[all.length] ?? NaN);
    if (!holds.includes(false)) chains.push({ pedals: all.length, earned: sum(({ net }) => net) - cost });
  }
  return chains;
}

it('a begun chain never earns more than its prospects, whichever later pedals join it', () => {
  const seen = { longer: 0, barred: 0, tight: 0, charged: 0 };
  const cases = fc.record({
    unit: smallUnits({ chains: true }),
    span: fc.oneof({ weight: 2, arbitrary: fc.constant(new Map()) }, { weight: 1, arbitrary: spans }),
    from: fc.integer({ min: 1, max: 3 }),
    bar: fc.option(fc.nat({ max: 5 })),
  });
  fc.assert(
    fc.property(cases, ({ unit: { frames, duals, counts }, span, from, bar }) => {
      const barred = new Set(bar === null ? [] : [bar]);
      for (const job of frames.map((frame) => jobOf(frame, duals, counts))) {
        const rents = rentsOf(job, span, 0, noMemory());
        const stages = stagesOf(job, rents);
        const prospects = prospectsOf(job, stages, rents);
        for (const [at, pool] of job.pools.entries()) {
          const placed = stages.map(({ places }) => places[at] ?? null);
          const [first] = placed.slice(0, from).flatMap((each) => each ?? []);
          if (first === undefined || rents.pedals.length === 0) continue;
          const later = placed.flatMap((each, stage) => (stage < from || barred.has(stage) ? [] : (each ?? [])));
          const { net, place } = first;
          const most = prospects({ pool: at, size: 1, load: place.load, surge: place.surge, net }, from, barred);
          const chains = chainsFrom(first, later, pool, rents);
          for (const { earned } of chains) expect(most).toBeGreaterThanOrEqual(earned);
          if (chains.some(({ earned }) => earned === most)) seen.tight += 1;
          if (chains.some(({ pedals }) => pedals > 2)) seen.longer += 1;
          if (bar !== null) seen.barred += 1;
          if (rents.perChain.some((charge) => charge !== 0)) seen.charged += 1;
        }
      }
    }),
    trying(600),
  );
  for (const [what, count] of Object.entries(seen)) expect([what, count > share(20)]).toEqual([what, true]);
});
