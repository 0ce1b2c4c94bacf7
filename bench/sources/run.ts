/**
 * How fast plans are proven with batteries and power banks in the shop, on one core, in processor time:
 * `npx tsx bench/sources/run.ts [SEEDS]`. Built before with `node .ci/ready.mjs`.
 */
import { kitOf } from '../../src/domain/kit.js';
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

const seeds = Number(process.argv[2] ?? 11);
for (const size of sizes) {
  const times: number[] = [];
  let onBatteries = 0;
  let unproven = 0;
  // The first one warms up.
  for (let seed = 0; seed <= seeds; seed += 1) {
    const { board, catalogue } = everySource(size, Math.max(1, seed));
    const ends = performance.now() + mostMs;
    const before = process.cpuUsage();
    const answer = await chooseAlone(board, catalogue, { remainingMs: () => ends - performance.now() });
    const { user, system } = process.cpuUsage(before);
    if (seed === 0) continue;
    times.push((user + system) / 1000);
    if (answer.kind !== 'plan') {
      unproven += 1;
      continue;
    }
    const { violations } = audit(board, catalogue, answer.wiring.feeds, { partial: false });
    if (violations.length > 0) throw new Error(`seed ${seed}: ${JSON.stringify(violations)}`);
    const { supplies } = kitOf(board, catalogue);
    onBatteries += answer.wiring.feeds.filter(({ supply }) => supplies.get(supply)?.source.kind === 'battery').length;
  }
  console.log(
    `${size.pedals} × ${size.supplies}: proven in ${Math.round(medianOf(times))} ms of processor time, the slowest ` +
      `${Math.round(Math.max(...times))}; ${unproven} of ${seeds} not proven; ${onBatteries} pedals on batteries`,
  );
}
