import { isDeepStrictEqual } from 'node:util';

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { choosingAims } from '../../../src/domain/aim.js';
import type { Supply, Total } from '../../../src/domain/supply.js';
import { compactSearch, type CompactEffort } from '../../../bench/rival/formulation/compact-search.js';
import { optimise } from '../../../src/formulation/optimise.js';
import type { SearchOutcome } from '../../../src/formulation/optimiser.js';
import { largerCase, tinyCase, type Case, withoutBatteries } from '../../support/arbitraries.js';
import { standIns } from '../../support/arbitrary-stand-ins.js';
import { relaxations, restrictions, type Change } from '../../support/changes.js';
import { askedAtMost, mostAsks } from '../../support/counted-limit.js';
import { sharedEngines } from '../../support/engines.js';
import { usedIn } from '../../support/plan-uses.js';
import { Tally } from '../../support/tally.js';
import { auditedWiring, expectAgreement, questionFor, type Asked } from './second-opinion.js';
import { share, trying } from '../../support/runs.js';

const engines = sharedEngines();

const patience: CompactEffort = { engines, remainingMs: () => Infinity };

/** As long as it takes to ask the time so often, and an engine a minute: what is not proven by then is held against what is. */
const within = (asks: number): CompactEffort => ({ engines, remainingMs: askedAtMost(asks, 60_000) });

const askedAbout = (cases: fc.Arbitrary<Case>): fc.Arbitrary<Asked> =>
  fc.record({ of: cases, aim: fc.constantFrom(...choosingAims), partial: fc.boolean() });

/** A search by loadouts that gets stuck stops at the same place, whatever the machine. */
const loadoutsSay = (asked: Asked): Promise<SearchOutcome> =>
  optimise(questionFor(asked), { remainingMs: askedAtMost(mostAsks) });

/** Asks the compact program, too, and holds the answers against each other. */
async function compared(asked: Asked, loadouts: SearchOutcome, seen: Tally, effort = patience): Promise<void> {
  const compact = await compactSearch(questionFor(asked), effort);
  seen.add(expectAgreement(loadouts, compact, asked), `${asked.aim}, partial: ${asked.partial}`);
  if (loadouts.kind === 'proven') seen.add(...usedIn(auditedWiring(loadouts.feeds, asked), asked.of));
}

/** Boards that are others each time. */
async function comparedOn(cases: fc.Arbitrary<Case>, numRuns: number, effort?: () => CompactEffort): Promise<Tally> {
  const seen = new Tally();
  const property = fc.asyncProperty(askedAbout(cases), async (asked) => {
    await compared(asked, await loadoutsSay(asked), seen, effort?.());
  });
  await fc.assert(property, trying(numRuns));
  return seen;
}

const everyOrder = choosingAims.flatMap((aim) => [false, true].map((partial) => `${aim}, partial: ${partial}`));

const withoutTotals = (name: string, kind: Total['kind']): Change => {
  const without = (total: Total | null): Total | null => (total?.kind === kind ? null : total);
  const changed = (supply: Supply): Supply => ({
    ...supply,
    total: without(supply.total),
    banks: supply.banks.map((bank) => ({ ...bank, total: without(bank.total) })),
  });
  return {
    name,
    changed: ({ board, catalogue }) => ({
      board: { ...board, gear: { ...board.gear, supplies: board.gear.supplies.map(changed) } },
      catalogue: { ...catalogue, supplies: catalogue.supplies.map(changed) },
    }),
  };
};

/** Cases with one rule, or one way out, taken away. */
const changes: readonly Change[] = [
  ...relaxations,
  ...restrictions,
  withoutTotals('total: in mA', 'current'),
  withoutTotals('total: in W', 'power'),
];

/** A rule that has bitten so often is not looked for any more: the boards are always the same, however many others are tried. */
const enough = Math.min(3, share(3));

/** The changes, of those not yet seen often, that make another answer: what they take away matters to this board. */
async function biting(asked: Asked, before: SearchOutcome, seen: Tally): Promise<readonly string[]> {
  const found: string[] = [];
  for (const { name, changed } of changes) {
    if (seen.of(name) >= enough) continue;
    const of = changed(asked.of);
    if (isDeepStrictEqual(of, asked.of)) continue;
    const after = await loadoutsSay({ ...asked, of });
    if (before.kind !== 'stopped' && after.kind !== 'stopped' && figuresIn(before) !== figuresIn(after)) {
      found.push(name);
    }
  }
  return found;
}

const figuresIn = (outcome: SearchOutcome): string =>
  outcome.kind === 'proven' ? [...outcome.values.values()].join() : outcome.kind;

describe('loadouts and the compact program agree in every tier', () => {
  it('on small boards on which every rule bites', async () => {
    const seen = new Tally();
    const lacking = (): readonly string[] => seen.lacking(enough, ...changes.map(({ name }) => name));
    await fc.assert(
      fc.asyncProperty(askedAbout(tinyCase.map(withoutBatteries)), async (asked) => {
        if (lacking().length === 0) return;
        const loadouts = await loadoutsSay(asked);
        const found = await biting(asked, loadouts, seen);
        seen.add(...found);
        // The boards on which nothing new bites are like those below.
        if (found.length > 0) await compared(asked, loadouts, seen);
      }),
      // Always the same boards, since some rules seldom bite.
      { numRuns: 1_600, seed: 3 },
    );
    expect(lacking()).toEqual([]);
  });

  it('on other small boards each time', async () => {
    const runs = 600;
    const seen = await comparedOn(tinyCase.map(withoutBatteries), runs);
    // The loadouts may get stuck, seldom: then what they know by then was held against the truth.
    expect(seen.of('plan') + seen.of('impossible')).toBeGreaterThan(0.95 * share(runs));
    expect(seen.lacking(share(270), 'plan')).toEqual([]);
    expect(seen.lacking(share(27), 'impossible', 'unpowered pedal', 'chain', ...everyOrder)).toEqual([]);
  });

  it('on boards of up to six pedals', async () => {
    const runs = 240;
    const seen = await comparedOn(largerCase(6, 4).map(withoutBatteries), runs);
    expect(seen.of('plan') + seen.of('impossible')).toBeGreaterThan(0.9 * share(runs));
    expect(seen.lacking(share(90), 'plan')).toEqual([]);
    expect(seen.lacking(share(10), 'several units', 'chain', 'adapter', 'reversing lead')).toEqual([]);
  });

  it('on boards on which units of one supply stand for one another', async () => {
    const runs = 60;
    const seen = await comparedOn(standIns, runs);
    expect(seen.of('plan') + seen.of('impossible')).toBe(share(runs));
    expect(seen.lacking(share(runs / 3), 'several units')).toEqual([]);
  });

  it('on boards of up to nine pedals, as far as the compact program comes in a dozen steps', async () => {
    const runs = 25;
    const seen = await comparedOn(largerCase(9, 6).map(withoutBatteries), runs, () => within(12));
    expect(seen.of('plan') + seen.of('impossible')).toBeGreaterThan(0.5 * share(runs));
  });
});
