/** Units with a few outputs, pedals for them and duals, small enough for trying everything. */
import fc from 'fast-check';

import { perPedalTier } from '../../../src/domain/pedal-tier.js';
import { framesOf, type UnitFrame } from '../../../src/loadout/frame.js';
import type { Bench } from '../../../src/loadout/bench.js';
import type { LoadoutDuals } from '../../../src/loadout/loadout-duals.js';
import type { Span } from '../../../src/loadout/rents.js';
import { benchOf, usesOf } from '../../support/bench.js';
import {
  bankOf,
  currentTotal,
  factor,
  listed,
  milliamps,
  partOf,
  pedalOf,
  policyOf,
  powerTotal,
  settingOf,
  supplyOf,
  volts,
} from '../../support/builders.js';

/** All frames of one supply, how many pedals there are of each class, and duals. */
export type SmallUnit = {
  readonly frames: readonly UnitFrame[];
  readonly duals: LoadoutDuals;
  readonly counts: readonly number[];
};

const pedalDrafts = fc.record({
  draw: fc.constantFrom(20, 25, 30, 30, 45, 60),
  startup: fc.constantFrom(null, null, null, 90, 120),
  accepts: fc.constantFrom([9], [9], [9, 12], [18]),
  digital: fc.boolean(),
  highGain: fc.boolean(),
  // Only a chain lead changes the plug.
  inlet: fc.constantFrom('barrel-2.1', 'barrel-2.1', 'barrel-2.1', 'jack-3.5'),
  alone: fc.constantFrom(false, false, false, true),
  dual: fc.oneof(fc.integer({ min: -20, max: 400 }), fc.constantFrom(0, 100, 250)),
});

/** The draft of a pedal that every unit can feed, so that none is of no use. */
const anyone = {
  draw: 20,
  startup: null,
  accepts: [9],
  digital: false,
  highGain: false,
  inlet: 'barrel-2.1',
  alone: false,
  dual: 100,
};

const drafts = (chains: boolean) =>
  fc.record({
    outputs: fc.tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 0, max: 2 })),
    isolated: fc.tuple(fc.boolean(), fc.boolean()),
    rating: fc.constantFrom(60, 100, 120, 150),
    together: fc.boolean(),
    total: fc.constantFrom(null, currentTotal(120), currentTotal(150), powerTotal(1.2)),
    bankTotal: fc.constantFrom(null, null, currentTotal(80)),
    chained: fc.constantFrom(1, 1.2, 1.5),
    pedals: fc.array(pedalDrafts, { minLength: 2, maxLength: 5 }),
    twins: fc.nat({ max: 2 }),
    leads: fc.array(
      fc.record({
        tails: fc.integer({ min: 2, max: 4 }),
        gives: fc.constantFrom('barrel-2.1', 'barrel-2.1', 'jack-3.5'),
        cost: fc.integer({ min: 0, max: 150 }),
      }),
      chains ? { minLength: 1, maxLength: 2 } : { maxLength: 0 },
    ),
    joinCost: fc.integer({ min: 0, max: 150 }),
    joinGain: fc.constantFrom(0, 0, -60, 90),
    exposed: fc.constantFrom(0, 40, 200),
    offPreferred: fc.constantFrom(0, 30),
  });

/** What taking a lead of each kind gains; those of chains are nobody's own. */
const gainsOf = (kinds: Bench['kinds'], gain: number): Float64Array => Float64Array.from(kinds, () => gain);

/** Supplies of one or two banks; with chains on every output, or without any. */
export const smallUnits = ({ chains }: { readonly chains: boolean }): fc.Arbitrary<SmallUnit> =>
  drafts(chains).map(({ pedals: drawn, twins, ...given }) => {
    // Two pedals of one draft are of one class.
    const all = [anyone, ...drawn, ...drawn.slice(0, twins)].slice(0, 6);
    const pedals = all.map(({ draw, startup, accepts, dual: _, ...more }, index) =>
      pedalOf(`pedal-${index}`, draw, {
        ...more,
        accepts: listed(...accepts),
        prefers: accepts.length > 1 ? volts(12) : null,
        startup: startup === null ? null : milliamps(startup),
      }),
    );
    const parts = [
      ...given.leads.map(({ tails, gives }, index) => partOf(`chain-${index}`, 1, { kind: 'chain', tails }, { gives })),
      partOf('stack', 1, { kind: 'join', mode: 'series' }),
    ];
    const one = factor(1);
    const policy = policyOf({ headroom: { alone: one, chained: factor(given.chained), supply: one } });
    const bench = benchOf(pedals, parts, policy);
    const settings = [settingOf(9, given.rating), settingOf(12, given.rating)];
    const supply = supplyOf(
      'supply',
      10,
      [
        bankOf(given.outputs[0], settings, {
          isolated: given.isolated[0],
          switching: given.together ? 'together' : 'each',
          joins: given.isolated[0] ? ['series'] : [],
          total: given.bankTotal,
        }),
        bankOf(given.outputs[1], settings.slice(0, 1), { isolated: given.isolated[1] }),
      ].filter(({ outputs }) => outputs > 0),
      { total: given.total },
    );
    // Leads that do the same are of one kind, and cost what the first of them costs.
    const costOf = (id: string): number => given.leads[Number(id.slice('chain-'.length))]?.cost ?? given.joinCost;
    const duals: LoadoutDuals = {
      pedals: Float64Array.from(bench.classes, ({ like }) => all[pedals.indexOf(like)]?.dual ?? NaN),
      leads: Float64Array.from(bench.kinds, ({ supplyOf: [first] }) => costOf(first?.part ?? '')),
      ...(given.joinGain === 0
        ? {}
        : { taking: new Map([...bench.classes.keys()].map((at) => [at, gainsOf(bench.kinds, given.joinGain)])) }),
      ...perPedalTier(() => given.offPreferred),
      exposed: given.exposed,
      newlyExposed: 0,
      moved: 0,
    };
    return {
      frames: framesOf(usesOf(supply, bench), bench),
      duals,
      counts: bench.classes.map(({ members }) => members.length),
    };
  });

const range = fc.oneof(
  { weight: 2, arbitrary: fc.constant({ least: 0, most: Infinity }) },
  { weight: 1, arbitrary: fc.nat({ max: 4 }).map((most) => ({ least: 0, most })) },
  { weight: 1, arbitrary: fc.nat({ max: 4 }).map((least) => ({ least, most: Infinity })) },
  { weight: 1, arbitrary: fc.nat({ max: 3 }).map((least) => ({ least, most: least + 1 })) },
);
/** How many pedals a unit may have, and how many chains of at least so many: of some of these, or of none. */
export const spans: fc.Arbitrary<Span> = fc
  .record({ pedals: range, 2: range, 3: range, 4: range }, { requiredKeys: [] })
  .map((ranges) => new Map(Object.entries(ranges).map(([of, each]) => [of === 'pedals' ? of : Number(of), each])));
