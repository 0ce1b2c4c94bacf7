/**
 * How fast plans are proven with batteries, power banks and fed supplies in the shop, on one core, in processor time:
 * `npx tsx bench/sources/run.ts [SEEDS]`. Built before with `node .ci/ready.mjs`.
 */
import { kitOf } from '../../src/domain/kit.js';
import { everyFeed } from '../../src/domain/plan.js';
import { chainProfiles } from '../instances.js';
import { chooseAlone } from '../loadouts-alone.js';
import { audit } from '../product.js';
import { medianOf } from '../statistics.js';
import { everySource } from './every-source.js';

const sizes = [
  { pedals: 6, supplies: 40 },
  { pedals: 12, supplies: 100 },
  { pedals: 20, supplies: 100 },
] as const;
const mostMs = 60_000;

/** As many as pedals, and so few that every source is needed. */
const socketLimits = [null, 2] as const;

const seeds = Number(process.argv[2] ?? 11);
const cells = chainProfiles.flatMap((chains) =>
  socketLimits.flatMap((sockets) => sizes.map((size) => ({ ...size, chains, sockets }))),
);
for (const { sockets, ...size } of cells) {
  const times: number[] = [];
  const used = { battery: 0, charge: 0, fed: 0 };
  let unproven = 0;
  // The first one warms up.
  for (let seed = 0; seed <= seeds; seed += 1) {
    const { board, catalogue } = everySource({ ...size, seed: Math.max(1, seed) }, sockets);
    const ends = performance.now() + mostMs;
    const before = process.cpuUsage();
    const answer = await chooseAlone(board, catalogue, { remainingMs: () => ends - performance.now() });
    const { user, system } = process.cpuUsage(before);
    if (seed === 0) continue;
    times.push((user + system) / 1000);
    if (answer.kind !== 'plan') {
      if (answer.kind === 'stopped') unproven += 1;
      continue;
    }
    const feeds = everyFeed(answer.wiring);
    const { violations } = audit(board, catalogue, feeds, { partial: false });
    if (violations.length > 0) throw new Error(`seed ${seed}: ${JSON.stringify(violations)}`);
    const { supplies } = kitOf(board, catalogue);
    for (const { supply } of feeds) {
      const kind = supplies.get(supply)?.source.kind;
      if (kind === 'battery' || kind === 'charge' || kind === 'fed') used[kind] += 1;
    }
  }
  console.log(
    `${size.pedals} × ${size.supplies}, chains ${size.chains}, ${sockets ?? size.pedals} sockets: proven in ` +
      `${Math.round(medianOf(times))} ms of processor time, the slowest ${Math.round(Math.max(...times))}; ${unproven} of ${seeds} not proven; ${used.battery} pedals on batteries, ` +
      `${used.charge} on power banks, ${used.fed} on fed supplies`,
  );
}
