import { kitOf } from '../../../../src/domain/kit.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { WiredFeed } from '../../../../src/domain/board.js';
import { everyFeed, feedMillivolts } from '../../../../src/domain/plan.js';
import { millivolts } from '../../../../src/domain/quantities.js';
import { rules, type Rule } from '../../../../src/domain/rules.js';
import type { Supply } from '../../../../src/domain/supply.js';
import { check } from '../../../../src/planning/check/check.js';
import { largerCase, read, readCase, tinyCase, type Case } from '../../../support/arbitraries.js';
import { fedCase } from '../../../support/arbitrary-fed.js';
import { choice, pick } from '../../../support/arbitrary-choices.js';
import { bruteForce } from '../../../support/brute-force.js';
import { isSound } from '../../../support/brute-force-judge.js';
import { sharedChoose } from '../../../support/choosing.js';
import { isOfInlet, pluggedAs, wiredOf } from '../../../support/wired.js';
import { share, trying, tryingUntil } from '../../../support/runs.js';

const choose = sharedChoose();
const runs = 300;

describe('a plan of choose, plugged as it says', () => {
  it.each([
    { what: 'tiny boards', cases: tinyCase },
    { what: 'larger boards', cases: largerCase(6, 4) },
    { what: 'boards with fed supplies', cases: fedCase(4, 4) },
  ])('is safe, and is read as it was planned: $what', async ({ cases }) => {
    const seen = { feeds: 0, chained: 0, joined: 0, adapted: 0 };
    await fc.assert(
      fc.asyncProperty(cases, async ({ board, catalogue }) => {
        const answer = await choose(board, catalogue, { partial: true });
        if (answer.kind !== 'plan') throw new Error('a plan that may leave out every pedal always exists');
        const { feeds, unpowered, exposed, score, buy } = answer.wiring;
        const checked = check(kitOf(pluggedAs(board, everyFeed(answer.wiring).map(wiredOf)), catalogue));
        expect(checked).toMatchObject({ status: 'safe', findings: [] });
        expect(checked.wiring).toMatchObject({ unpowered, exposed, score: { ...score } });
        expect(new Set(checked.wiring.buy.parts)).toEqual(new Set(buy.parts));
        const delivered = (all: typeof feeds) => all.map((feed) => [feed.pedal, feedMillivolts(feed), feed.polarity]);
        expect(delivered(checked.wiring.feeds)).toEqual(delivered(feeds));
        for (const { join, chain, adapters } of feeds) {
          seen.feeds += 1;
          if (join !== null) seen.joined += 1;
          if (chain !== null) seen.chained += 1;
          if (adapters.length > 0) seen.adapted += 1;
        }
      }),
      trying(runs),
    );
    expect(seen.feeds).toBeGreaterThan(share(runs));
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(0);
  });
});

/** One feed goes elsewhere, with the leads that it had or without them; all of it by choice. */
type Move = {
  readonly feed: number;
  readonly supply: number;
  readonly output: number;
  readonly setting: number;
  readonly elsewhere: boolean;
  readonly chain: 'kept' | 'neighbours' | 'none';
  readonly adapters: 'kept' | 'none' | number;
};

const moves: fc.Arbitrary<Move> = fc.record({
  feed: choice,
  supply: choice,
  output: choice,
  setting: choice,
  elsewhere: fc.boolean(),
  chain: fc.constantFrom('kept', 'neighbours', 'none'),
  adapters: fc.oneof(fc.constantFrom<Move['adapters']>('kept', 'kept', 'none'), choice),
});

const suppliesOf = ({ board, catalogue }: Case): readonly Supply[] => [...board.gear.supplies, ...catalogue.supplies];

function moved(of: Case, wiring: readonly WiredFeed[], move: Move): readonly WiredFeed[] {
  const wired = pick(wiring, move.feed);
  if (wired === undefined) return wiring;
  const all = suppliesOf(of);
  const supply = move.elsewhere ? pick(all, move.supply) : all.find(({ id }) => id === wired.supply);
  if (supply === undefined) throw new Error('there is always a supply');
  const unit = supply.id === wired.supply ? wired.unit : 1;
  const { output, volts } = settingOf(supply, move);
  const there = wiring.find((one) => one.supply === supply.id && one.unit === unit && one.outputs[0] === output);
  const chains = { kept: wired.chain, neighbours: there?.chain ?? null, none: null };
  return wiring.with(wiring.indexOf(wired), {
    ...(isOfInlet(wired) && { inletOf: wired.inletOf }),
    pedal: wired.pedal,
    supply: supply.id,
    unit,
    outputs: [output],
    millivolts: millivolts(volts),
    join: null,
    chain: chains[move.chain],
    adapters: adaptersOf(of, wired, move),
  });
}

function settingOf({ banks }: Supply, move: Move): { readonly output: number; readonly volts: number } {
  const bank = pick(banks, move.output);
  const setting = bank === undefined ? undefined : pick(bank.settings, move.setting);
  if (bank === undefined || setting === undefined) throw new Error('every supply has a bank with a setting');
  return { output: bank.firstOutput + (move.output % bank.outputs), volts: setting.millivolts };
}

function adaptersOf({ board, catalogue }: Case, wired: WiredFeed, { adapters }: Move): WiredFeed['adapters'] {
  if (adapters === 'kept') return wired.adapters;
  const part = adapters === 'none' ? undefined : pick([...board.gear.parts, ...catalogue.parts], adapters);
  return part === undefined ? [] : [part.id];
}

describe('a wiring that is broken on purpose', () => {
  it.each([1, 2])('is unsafe exactly when brute force says so; moved: %i', (count) => {
    const seen = { safe: 0, unsafe: 0 };
    const broken = new Set<Rule>();
    const { enough, parameters } = tryingUntil(3 * runs, () => broken.size === rules.length);
    fc.assert(
      fc.property(
        fc.oneof(readCase, fedCase(3, 3).map(read)),
        fc.array(moves, { minLength: count, maxLength: count }),
        (of, all) => {
          if (enough()) return;
          const found = bruteForce(of.board, of.catalogue, { aim: 'cost', partial: true });
          if (found.kind === 'impossible') throw new Error('a plan that may leave out every pedal always exists');
          const before = found.feeds.map(wiredOf);
          expect(isSound(of.board, of.catalogue, before)).toBe(true);
          const wiring = all.reduce<readonly WiredFeed[]>((so, move) => moved(of, so, move), before);
          const { status, findings } = check(kitOf(pluggedAs(of.board, wiring), of.catalogue));
          expect(status).toBe(isSound(of.board, of.catalogue, wiring) ? 'safe' : 'unsafe');
          seen[status] += 1;
          for (const { rule } of findings) broken.add(rule);
        },
      ),
      parameters,
    );
    expect(seen.safe).toBeGreaterThan(share(runs / 6));
    expect(new Set(broken)).toEqual(new Set(rules));
    expect(seen.unsafe).toBeGreaterThan(share(runs));
  });
});
