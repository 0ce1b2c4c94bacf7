import { kitOf } from '../../../../src/domain/kit.js';
import fc from 'fast-check';

import { microamps, millivolts, partId } from '../../../../src/domain/quantities.js';
import type { Feed } from '../../../../src/domain/plan.js';
import type { Bank, Supply } from '../../../../src/domain/supply.js';
import { handoutOf, type PlanHandout } from '../../../../src/report/words/handout.js';
import { scoreWith } from '../../../support/builders.js';
import { hostileName } from '../../../support/hostile-names.js';
import { bankFrom, boardOf, catalogueOf, feedOf, partOf, pedalOf, settingOf, supplyOf, planOf } from '../samples.js';

/** What hangs on the outputs of a unit: nothing, one pedal with adapters, several on a chain, or one on two joined outputs. */
type Load = {
  readonly kind: 'free' | 'one' | 'chain' | 'join';
  readonly pedals: number;
  readonly adapters: readonly string[];
};

const load: fc.Arbitrary<Load> = fc.record({
  kind: fc.constantFrom('free', 'one', 'one', 'chain', 'join'),
  pedals: fc.integer({ min: 2, max: 9 }),
  adapters: fc.constantFrom([], [], ['flip'], ['mini'], ['flip', 'mini']),
});

const unit = fc.record({
  banks: fc.array(
    fc.record({
      isolated: fc.boolean(),
      outputs: fc.integer({ min: 1, max: 4 }),
      kind: fc.constantFrom('plain', 'AC', 'either', 'plus'),
    }),
    {
      minLength: 1,
      maxLength: 4,
    },
  ),
  loads: fc.array(load, { minLength: 16, maxLength: 16 }),
  total: fc.boolean(),
});

/** A plan of any shape, not one that would pass an audit: joins may reach over whatever lies between, common grounds be apart. */
export const anyPlan: fc.Arbitrary<PlanHandout> = fc
  .tuple(fc.array(unit, { minLength: 1, maxLength: 3 }), fc.array(hostileName, { minLength: 12, maxLength: 12 }))
  .map(([units, names]) => planFrom(units, names));

const kinds = {
  plain: {},
  AC: { power: 'AC', polarity: null },
  either: { polarity: 'either' },
  plus: { polarity: 'centre-positive' },
} as const;

type Unit = typeof unit extends fc.Arbitrary<infer Value> ? Value : never;

function planFrom(units: readonly Unit[], names: readonly string[]): PlanHandout {
  let named = 0;
  const name = (): string => names[named++ % names.length] ?? '';
  const feeds: Feed[] = [];
  const supplies = units.map(({ banks, loads, total }, at): Supply => {
    let next = 1;
    const placed = banks.map(({ isolated, outputs, kind }): Bank => {
      const bank = bankFrom(next, outputs, {
        isolated,
        ...kinds[kind],
        settings: [settingOf(9, 300), settingOf(12, 250)],
        joins: ['series'],
      });
      next += outputs;
      return bank;
    });
    const supply = supplyOf(`s${at}`, placed, {
      name: name(),
      total: total ? { kind: 'current', microamps: microamps(1_500_000) } : null,
    });
    feeds.push(...feedsOf(supply, loads, feeds.length));
    return supply;
  });
  const pedals = feeds.map(({ pedal }, at) =>
    pedalOf(pedal, {
      name: name(),
      digital: at % 2 === 0,
      highGain: at % 3 === 0,
      ground: at % 5 === 0 ? 'positive' : at % 5 === 1 ? 'unknown' : 'negative',
      figure: at % 4 === 0 ? 'guess' : 'label',
      kept: at % 7 === 3 ? 'later' : at % 7 === 5 ? 'unread' : null,
    }),
  );
  const parts = [
    partOf('fan', { kind: 'chain', tails: 9 }, { name: name() }),
    partOf('flip', { kind: 'adapter' }, { name: name(), reverses: true }),
    partOf('mini', { kind: 'adapter' }, { name: name(), gives: name() }),
    partOf('stack', { kind: 'join', mode: 'series' }, { name: name() }),
  ];
  const left = [pedalOf('left', { name: name() })];
  const score = scoreWith({ unpowered: 1, bricks: units.length });
  const board = boardOf([...pedals, ...left], { name: name() });
  const catalogue = catalogueOf(supplies, parts);
  const exposed = pedals.slice(0, 1).map(({ id }) => id);
  const wiring = planOf(board, catalogue, feeds, { exposed, score });
  const handout = handoutOf({
    kit: kitOf(board, catalogue),
    answer: { kind: 'plan', aim: 'cost', wiring, gap: null, reasons: [] },
  });
  if (handout.kind !== 'plan') throw new Error('no plan');
  return handout;
}

/** Right for either reading of the label. */
const unread = {
  polarity: 'unknown',
  adapters: [partId('flip')],
  readings: { 'centre-negative': [], 'centre-positive': [partId('flip')] },
} as const;

function feedsOf({ id, banks }: Supply, loads: readonly Load[], from: number): readonly Feed[] {
  const feeds: Feed[] = [];
  const isIsolated = (output: number): boolean =>
    banks.some(
      ({ firstOutput, outputs, isolated }) => isolated && output >= firstOutput && output < firstOutput + outputs,
    );
  const free = new Set(
    banks.flatMap(({ firstOutput, outputs }) => Array.from({ length: outputs }, (_, at) => firstOutput + at)),
  );
  for (const [at, { kind, pedals, adapters }] of loads.entries()) {
    const [output] = free;
    if (output === undefined) break;
    free.delete(output);
    const add = (fields: Partial<Feed>): void => {
      const at = from + feeds.length;
      const reading = at % 6 === 4 ? unread : at % 6 === 2 ? ({ polarity: 'centre-positive' } as const) : {};
      const settings = at % 3 === 0 ? [millivolts(12_000)] : [millivolts(9000)];
      feeds.push(feedOf(`p${at}`, id, output, { adapters: adapters.map(partId), settings, ...reading, ...fields }));
    };
    // The other one of a join is the last isolated output that is free, so that others may lie in between.
    const other = [...free].reverse().find(isIsolated);
    if (kind === 'chain') {
      for (let tail = 0; tail < pedals; tail += 1)
        add({ chain: partId('fan'), adapters: (tail + at) % 2 === 0 ? adapters.map(partId) : [] });
    } else if (kind === 'join' && isIsolated(output) && other !== undefined) {
      free.delete(other);
      add({
        outputs: [output, other],
        settings: [millivolts(9000), millivolts(9000)],
        join: { mode: 'series', part: partId('stack') },
      });
    } else if (kind !== 'free') add({});
  }
  return feeds;
}
