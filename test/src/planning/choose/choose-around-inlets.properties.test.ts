import fc from 'fast-check';
import { expect, it } from 'vitest';

import { choosingAims, compareScores, type ChoosingAim } from '../../../../src/domain/aim.js';
import { inletId, unitOfInlet, type UnitRef } from '../../../../src/domain/inlet.js';
import { bankOfOutput, kitOf, type Kit } from '../../../../src/domain/kit.js';
import { everyFeed, feedMillivolts, type Feed } from '../../../../src/domain/plan.js';
import { choose } from '../../../../src/planning/choose/choose.js';
import { chooseAround, pinsInPlan, type PinnedPlace } from '../../../../src/planning/choose/choose-around.js';
import type { Case } from '../../../support/arbitraries.js';
import { fedCase } from '../../../support/arbitrary-fed.js';
import { bestUnits } from '../../../support/brute-force.js';
import { firstUnfed } from '../../../support/brute-force-inlets.js';
import { scoreOf } from '../../../support/brute-force-score.js';
import { feedsOf } from '../../../support/brute-force-unit.js';
import { share, trying } from '../../../support/runs.js';
import { Tally } from '../../../support/tally.js';

const runs = 1_000;

/** The inlet of a fed unit of the case at an output that may feed it, and perhaps a pedal or another inlet at one. */
const pinnedCase = fedCase(3, 3).chain((of) => {
  const supplies = [...of.board.gear.supplies, ...of.catalogue.supplies];
  const withPins = (anywhere: fc.Arbitrary<readonly PinnedPlace[]>) =>
    fc.record({
      of: fc.constant(of),
      anywhere,
      // In place of these: what a plan has that was made for another aim.
      madeFor: fc.option(fc.constantFrom(...choosingAims)),
      aim: fc.constantFrom(...choosingAims),
    });
  const fed = supplies.filter(({ source }) => source.kind === 'fed');
  const [main = [], every = []] = [supplies.filter((supply) => !fed.includes(supply)), supplies].map((some) =>
    some.flatMap(({ id: supply, banks }) =>
      banks.flatMap(({ firstOutput, outputs, settings }) =>
        settings.flatMap(({ millivolts }) =>
          [firstOutput, firstOutput + outputs - 1].map((output) => ({ supply, outputs: [output], millivolts })),
        ),
      ),
    ),
  );
  if (fed.length * main.length === 0) return withPins(fc.constant([]));
  const unit = fc.nat({ max: 3 }).map((number) => (number > 0 ? 1 : 2));
  const inlet = fc.record({ supply: fc.constantFrom(...fed.map(({ id }) => id)), unit }).map(inletId);
  const pedal = fc.constantFrom(...of.board.pedals.map(({ id }) => id));
  const pin = (what: typeof inlet, seats: typeof main): fc.Arbitrary<PinnedPlace> =>
    fc
      .record({ what, seat: fc.constantFrom(...seats), unit })
      .map((one): PinnedPlace => ({ pedal: one.what, ...one.seat, unit: one.unit }));
  const others = fc.array(fc.oneof(pin(pedal, every), pin(inlet, main)), { maxLength: 1 });
  return withPins(fc.tuple(pin(inlet, main), others).map(([one, more]) => [one, ...more]));
});

/** The places that an inlet and a pedal have in a plan. */
async function placesInPlan({ board, catalogue }: Case, aim: ChoosingAim): Promise<readonly PinnedPlace[]> {
  const answer = await choose(kitOf(board, catalogue), { aim });
  if (answer.kind !== 'plan') return [];
  const { inlets, feeds } = answer.wiring;
  const pedals = inlets.length === 0 ? [] : feeds.filter(({ join }) => join === null);
  return [...inlets.slice(0, 1), ...pedals.slice(0, 1)].map((feed) => {
    const { pedal, supply, unit, outputs } = feed;
    return { pedal, supply, unit, outputs, millivolts: feedMillivolts(feed) };
  });
}

/** Whether all pins hold in the feeds for some way in which the units and outputs that the pins name are those that there are. */
function keeps(feeds: readonly Feed[], pins: readonly PinnedPlace[], { supplies }: Kit): boolean {
  const named = [...new Map(pins.flatMap(unitsOf).map((unit) => [keyOf(unit), unit])).values()];
  return mappings(named, feeds).some((mapped) => {
    const outputs = new Map<string, string>();
    return pins.every((pin) => {
      const fed = unitOfInlet(pin.pedal);
      const id = fed === null ? pin.pedal : inletId(at(mapped, fed));
      const feed = feeds.find(({ pedal }) => pedal === id);
      const unit = at(mapped, pin);
      const supply = supplies.get(pin.supply);
      if (feed === undefined || supply === undefined || feed.join !== null) return false;
      const [wanted = 0, got = 0] = [pin.outputs[0], feed.outputs[0]];
      const [name, found] = [`${keyOf(unit)} ${wanted}`, `${keyOf(unit)} ${got}`];
      const isKnown = outputs.has(name) ? outputs.get(name) === found : ![...outputs.values()].includes(found);
      outputs.set(name, found);
      return (
        isKnown &&
        keyOf(feed) === keyOf(unit) &&
        feedMillivolts(feed) === pin.millivolts &&
        bankOfOutput(supply, got) === bankOfOutput(supply, wanted)
      );
    });
  });
}

const unitsOf = ({ pedal, supply, unit }: PinnedPlace): readonly UnitRef[] => {
  const fed = unitOfInlet(pedal);
  return [{ supply, unit }, ...(fed === null ? [] : [fed])];
};

const keyOf = ({ supply, unit }: UnitRef): string => `${supply} ${unit}`;
const at = (mapped: ReadonlyMap<string, UnitRef>, unit: UnitRef): UnitRef => mapped.get(keyOf(unit)) ?? unit;

/** Every way to take named units for units of their supplies that are in use, no two for one. */
function mappings(named: readonly UnitRef[], feeds: readonly Feed[]): readonly ReadonlyMap<string, UnitRef>[] {
  const used = [...new Map(feeds.map(({ supply, unit }) => [keyOf({ supply, unit }), { supply, unit }])).values()];
  return named.reduce<readonly ReadonlyMap<string, UnitRef>[]>(
    (all, unit) =>
      all.flatMap((mapped) =>
        used
          .filter((one) => one.supply === unit.supply && ![...mapped.values()].includes(one))
          .map((one) => new Map([...mapped, [keyOf(unit), one]])),
      ),
    [new Map()],
  );
}

function bruteForceAround({ board, catalogue }: Case, pins: readonly PinnedPlace[], aim: ChoosingAim) {
  const shop = { board, catalogue };
  const kit = kitOf(board, catalogue);
  return bestUnits(shop, false, aim, (units, left) => {
    const fed = units.reduce((sum, { hookups }) => sum + hookups.flatMap(({ tails }) => tails).length, 0);
    const inlets = units.flatMap(({ hookups }) => hookups.filter(({ inletOf }) => inletOf !== undefined)).length;
    const isWhole = fed - inlets === board.pedals.length && firstUnfed(units) === null;
    return !isWhole || keeps(feedsOf(units), pins, kit) ? scoreOf(units, left.length, shop) : null;
  });
}

it('the plan is the best of those that keep the pins of inlets, as brute force finds it', async () => {
  const seen = new Tally();
  await fc.assert(
    fc.asyncProperty(pinnedCase, async ({ of, anywhere, madeFor, aim }) => {
      const pins = madeFor === null ? anywhere : await placesInPlan(of, madeFor);
      if (pins.length === 0 || new Set(pins.map(({ pedal }) => pedal)).size < pins.length) return;
      const kit = kitOf(of.board, of.catalogue);
      const expected = bruteForceAround(of, pins, aim);
      const answer = await chooseAround(kit, pins, { aim });
      seen.add(answer.kind, `${pins.length} ${answer.kind}`);
      expect(answer.kind === 'plan').toBe(expected !== null);
      if (answer.kind !== 'plan' || expected === null) return;
      expect(answer.gap).toBeNull();
      expect(compareScores(answer.wiring.score, expected.score, aim, of.board.policy)).toBe(0);
      const feeds = everyFeed(answer.wiring);
      expect(keeps(feeds, pins, kit)).toBe(true);
      for (const { pedal, supply, unit, outputs } of pinsInPlan(kit, pins))
        expect(feeds.find((feed) => feed.pedal === pedal)).toMatchObject({ supply, unit, outputs });
    }),
    trying(runs),
  );
  expect(seen.lacking(share(runs / 30), 'plan', 'impossible', 'held up')).toEqual([]);
  expect(seen.lacking(share(runs / 60), '2 plan')).toEqual([]);
});
