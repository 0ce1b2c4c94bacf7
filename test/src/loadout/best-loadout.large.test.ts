import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { perPedalTier } from '../../../src/domain/pedal-tier.js';
import type { Pedal } from '../../../src/domain/pedal.js';
import type { Part } from '../../../src/domain/part.js';
import type { Supply } from '../../../src/domain/supply.js';
import { loadoutPricer } from '../../../src/loadout/best-loadout.js';
import type { Bench } from '../../../src/loadout/bench.js';
import type { LoadoutDuals } from '../../../src/loadout/loadout-duals.js';
import { benchOf, usesOf } from '../../support/bench.js';
import { bankOf, currentTotal, partOf, pedalOf, policyOf, settingOf, supplyOf } from '../../support/builders.js';
import { share, trying } from '../../support/runs.js';

/** One bank at 9 V, no factors: what every set of pedals is worth can be worked out set by set. */
type Unit = {
  readonly outputs: number;
  readonly isolated: boolean;
  readonly rating: number;
  readonly total: number | null;
  readonly pedals: readonly Pedal[];
  /** Of chain leads: tails, and what using one costs. */
  readonly leads: readonly { readonly tails: number; readonly cost: number }[];
  readonly duals: readonly number[];
  readonly exposed: number;
};

const draws = [20, 25, 30, 30, 45, 60, 80, 110];
/** A pedal that every output can feed, so that a unit is of use. */
const anyone = { draw: 20, startup: null, digital: false, highGain: false, alone: false, dual: 10 } as const;
const startups = [null, null, null, 100, 150] as const;

const units = (most: { readonly pedals: number; readonly outputs: number }): fc.Arbitrary<Unit> =>
  fc
    .record({
      outputs: fc.integer({ min: 2, max: most.outputs }),
      isolated: fc.boolean(),
      rating: fc.constantFrom(100, 150, 200, 250),
      total: fc.constantFrom(null, null, 200, 300, 450),
      pedals: fc.array(
        fc.record({
          draw: fc.constantFrom(...draws),
          startup: fc.constantFrom(...startups),
          digital: fc.boolean(),
          highGain: fc.boolean(),
          alone: fc.constantFrom(false, false, false, true),
          dual: fc.oneof(fc.integer({ min: -20, max: 400 }), fc.constantFrom(0, 100, 250)),
        }),
        { minLength: Math.ceil(most.pedals / 2), maxLength: most.pedals, size: 'max' },
      ),
      leads: fc.uniqueArray(
        fc.record({ tails: fc.integer({ min: 2, max: 8 }), cost: fc.integer({ min: 0, max: 250 }) }),
        { minLength: 1, maxLength: 2, selector: ({ tails }) => tails },
      ),
      exposed: fc.constantFrom(0, 40, 200),
      level: fc.boolean(),
    })
    .map(({ pedals: drawn, level, ...rest }) => ({ pedals: [anyone, ...drawn], level, ...rest }))
    .map(({ pedals, level, ...rest }) => ({
      ...rest,
      // Where all pedals of a draw have the same dual many contents are worth the same.
      duals: pedals.map(({ dual, draw }) => (level ? draw * 3 : dual)),
      pedals: pedals.map(({ draw, startup, ...more }, index) =>
        pedalOf(`pedal-${index}`, draw, {
          ...more,
          startup: startup === null ? null : ((startup * 1000) as Pedal['startup']),
        }),
      ),
    }));

const leadParts = ({ leads }: Unit): readonly Part[] =>
  leads.map(({ tails }) => partOf(`chain-${tails}`, 1, { kind: 'chain', tails }));

const supplyFor = ({ outputs, isolated, rating, total }: Unit): Supply =>
  supplyOf('supply', 10, [bankOf(outputs, [settingOf(9, rating)], { isolated })], {
    total: total === null ? null : currentTotal(total),
  });

const dualsFor = ({ pedals, leads, duals, exposed }: Unit, bench: Bench): LoadoutDuals => ({
  // Pedals of one class have one dual: that of the first.
  pedals: Float64Array.from(bench.classes, ({ like }) => duals[pedals.indexOf(like)] ?? NaN),
  leads: Float64Array.from(leads, ({ cost }) => cost),
  ...perPedalTier(() => 0),
  exposed,
  newlyExposed: 0,
  moved: 0,
});

/**
 * The most that any set of pedals is worth: the least that outputs, chain leads and noise cost for the set, by taking the
 * set apart into what hangs on each output.
 */
function truthOf(unit: Unit, bench: Bench): number {
  const { pedals, outputs, isolated, total } = unit;
  const sets = 2 ** pedals.length;
  const { pedals: duals } = dualsFor(unit, bench);
  const dualOf = pedals.map((pedal) => duals[bench.classes.findIndex(({ members }) => members.includes(pedal))] ?? NaN);
  const held = Float64Array.from({ length: sets }, (_, set) => costOnOutput(membersOf(set, pedals), unit));
  let least = new Float64Array(sets).fill(Infinity);
  least[0] = 0;
  for (let output = 0; output < outputs; output += 1) least = withOneMore(least, held);
  let most = -Infinity;
  for (let set = 1; set < sets; set += 1) {
    const members = membersOf(set, pedals);
    // No less is taken at switch-on than later.
    if (total !== null && surgeOf(members) > total * 1000) continue;
    const noise = isolated ? 0 : exposedAmong(members) * unit.exposed;
    const dual = dualOf.reduce((sum, value, index) => (set & (1 << index) ? sum + value : sum), 0);
    most = Math.max(most, dual - (least[set] ?? Infinity) - noise);
  }
  return most;
}

function withOneMore(least: Float64Array<ArrayBuffer>, held: Float64Array): Float64Array<ArrayBuffer> {
  return least.map((cost, set) => {
    const first = set & -set;
    const rest = set ^ first;
    let best = cost;
    // The first pedal's output, with every set of companions.
    if (set === 0) return best;
    for (let others = rest; others > 0; others = (others - 1) & rest) {
      best = Math.min(best, (held[first | others] ?? Infinity) + (least[rest ^ others] ?? Infinity));
    }
    return Math.min(best, (held[first] ?? Infinity) + (least[rest] ?? Infinity));
  });
}

const membersOf = (set: number, pedals: readonly Pedal[]): readonly Pedal[] =>
  pedals.filter((_, index) => (set & (1 << index)) !== 0);

const drawOf = ({ draw }: Pedal): number => (draw.kind === 'flat' ? draw.microamps : NaN);
const loadOf = (members: readonly Pedal[]): number => members.reduce((sum, pedal) => sum + drawOf(pedal), 0);
const surgeOf = (members: readonly Pedal[]): number =>
  members.reduce((sum, pedal) => sum + Math.max(drawOf(pedal), pedal.startup ?? 0), 0);
const exposedAmong = (members: readonly Pedal[]): number =>
  members.filter((pedal) => pedal.highGain && members.some((other) => other !== pedal && other.digital)).length;

/** Infinity where these may not hang on one output together. */
function costOnOutput(members: readonly Pedal[], { rating, leads, isolated, exposed }: Unit): number {
  const load = loadOf(members);
  if (load > rating * 1000 || surgeOf(members) > rating * 1000) return Infinity;
  if (members.length < 2) return 0;
  if (members.some(({ alone }) => alone)) return Infinity;
  const lead = Math.min(...leads.filter(({ tails }) => tails >= members.length).map(({ cost }) => cost));
  return lead + (isolated ? exposedAmong(members) * exposed : 0);
}

describe('the best loadout of a supply with many outputs', () => {
  it.each([
    ['small ones', { pedals: 7, outputs: 4 }, 300],
    ['large ones', { pedals: 12, outputs: 8 }, 150],
  ] as const)('is what an exact count over all sets of pedals finds: %s', (_, most, numRuns) => {
    const inexact: unknown[] = [];
    const seen = { chains: 0, solos: 0, full: 0 };
    fc.assert(
      fc.property(units(most), (unit) => {
        const bench = benchOf(unit.pedals, leadParts(unit), policyOf());
        const pricer = loadoutPricer(usesOf(supplyFor(unit), bench), bench);
        const duals = dualsFor(unit, bench);
        const counts = bench.classes.map(({ members }) => members.length);
        const truth = truthOf(unit, bench);
        for (let floor = 0; ;) {
          const quick = pricer.best(duals, counts, floor, 'quick');
          const { bound, loadouts } = pricer.best(duals, counts, floor);
          expect(Math.max(quick.bound, floor)).toBeGreaterThanOrEqual(truth);
          expect(Math.max(bound, floor)).toBeGreaterThanOrEqual(truth);
          if (loadouts.length === 0) {
            if (bound > floor) inexact.push({ bound, floor, truth });
            else expect(floor).toBe(Math.max(0, truth));
            return;
          }
          for (const { loadout, value } of loadouts) {
            expect(value).toBeGreaterThan(floor);
            expect(value).toBeLessThanOrEqual(truth);
            if (loadout.hung.some(({ kind }) => kind === 'chain')) seen.chains += 1;
            else seen.solos += 1;
            if (loadout.hung.length === unit.outputs) seen.full += 1;
          }
          floor = Math.max(...loadouts.map(({ value }) => value));
        }
      }),
      trying(numRuns),
    );
    // Units of this size never make the search give up.
    expect(inexact).toEqual([]);
    for (const [what, count] of Object.entries(seen)) expect([what, count > share(2)]).toEqual([what, true]);
  });
});
