import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { Policy } from '../../../../src/domain/board.js';
import { choosingAims, compareScores } from '../../../../src/domain/aim.js';
import { bankOfOutput, kitOf } from '../../../../src/domain/kit.js';
import { feedMillivolts, type Feed } from '../../../../src/domain/plan.js';
import { pedalId, supplyId } from '../../../../src/domain/quantities.js';
import type { Bank } from '../../../../src/domain/supply.js';
import { chooseAround, type AroundPins, type PinnedPlace } from '../../../../src/planning/choose/choose-around.js';
import { tinyCase, type Case } from '../../../support/arbitraries.js';
import { bestUnits } from '../../../support/brute-force.js';
import { feedsOf } from '../../../support/brute-force-unit.js';
import { scoreOf } from '../../../support/brute-force-score.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  euros,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
  volts,
} from '../../../support/builders.js';
import { share, trying } from '../../../support/runs.js';

const runs = 300;

/** One or two pedals of the case at any outputs of its supplies. */
const pinnedCase = tinyCase.chain((of) => {
  const supplies = [...of.board.gear.supplies, ...of.catalogue.supplies];
  const place = fc
    .record({
      pedal: fc.constantFrom(...of.board.pedals.map(({ id }) => id)),
      seat: fc.constantFrom(
        ...supplies.flatMap(({ id, banks }) =>
          banks.flatMap(({ firstOutput, outputs, settings }) =>
            settings.flatMap(({ millivolts }) =>
              [firstOutput, firstOutput + outputs - 1].map((output) => ({ supply: id, outputs: [output], millivolts })),
            ),
          ),
        ),
      ),
      unit: fc.integer({ min: 1, max: 2 }),
    })
    .map(({ pedal, seat, unit }): PinnedPlace => ({ pedal, ...seat, unit }));
  const pins = fc.uniqueArray(place, { minLength: 1, maxLength: 2, selector: ({ pedal }) => pedal });
  return fc.record({ of: fc.constant(of), pins, aim: fc.constantFrom(...choosingAims) });
});

/**
 * Whether the pedals hang where they should, on units that are one where the pins name one, and two where they name two. By brute
 * force the outputs of a bank are as good as one another: there only which pedals share one counts.
 */
function keeps(feeds: readonly Feed[], pins: readonly PinnedPlace[], bankAt: BankAt | null): boolean {
  const found = pins.map((pin) => ({ pin, feed: feeds.find(({ pedal }) => pedal === pin.pedal) }));
  const isPlace = ({ supply, outputs }: Feed, pin: PinnedPlace): boolean =>
    supply === pin.supply &&
    outputs.length === 1 &&
    (bankAt === null ? outputs[0] === pin.outputs[0] : bankAt(pin, outputs) === bankAt(pin, pin.outputs));
  return found.every(
    ({ pin, feed }, at) =>
      feed !== undefined &&
      isPlace(feed, pin) &&
      feedMillivolts(feed) === pin.millivolts &&
      found.slice(0, at).every((other) => {
        if (other.pin.supply !== pin.supply) return true;
        const isOneUnit = other.feed?.unit === feed.unit;
        if ((other.pin.unit === pin.unit) !== isOneUnit) return false;
        return !isOneUnit || (other.feed?.outputs[0] === feed.outputs[0]) === (other.pin.outputs[0] === pin.outputs[0]);
      }),
  );
}

type BankAt = (pin: PinnedPlace, outputs: readonly number[]) => Bank | undefined;

function bruteForceAround(
  { board, catalogue }: Case,
  pins: readonly PinnedPlace[],
  aim: (typeof choosingAims)[number],
) {
  const shop = { board, catalogue };
  const { supplies } = kitOf(board, catalogue);
  const bankAt: BankAt = ({ supply: id }, [output = 0]) => {
    const supply = supplies.get(id);
    return supply && bankOfOutput(supply, output);
  };
  return bestUnits(shop, false, aim, (units, left) => {
    const feeds = feedsOf(units);
    const placed = pins.filter(({ pedal }) => feeds.some((feed) => feed.pedal === pedal));
    return keeps(feeds, placed, bankAt) ? scoreOf(units, left.length, shop) : null;
  });
}

it('the plan is the best of those that keep the pins, as brute force finds it', async () => {
  const seen = { plan: 0, impossible: 0, 'held up': 0 };
  await fc.assert(
    fc.asyncProperty(pinnedCase, async ({ of, pins, aim }) => {
      const expected = bruteForceAround(of, pins, aim);
      const answer = await chooseAround(kitOf(of.board, of.catalogue), pins, { aim });
      if (answer.kind === 'stopped') throw new Error('there is no limit of time');
      seen[answer.kind] += 1;
      expect(answer.kind === 'plan').toBe(expected !== null);
      if (answer.kind !== 'plan' || expected === null) return;
      expect(answer.gap).toBeNull();
      expect(keeps(answer.wiring.feeds, pins, null)).toBe(true);
      expect(compareScores(answer.wiring.score, expected.score, aim, of.board.policy)).toBe(0);
    }),
    trying(runs),
  );
  for (const kind of ['plan', 'impossible', 'held up'] as const)
    expect(seen[kind], kind).toBeGreaterThan(share(runs / 30));
});

describe('two pedals and a box of two outputs', () => {
  const box = supplyOf('box', 50, [bankOf(2, [settingOf(9, 200)])]);
  const pedals = [pedalOf('one', 20), pedalOf('two', 20)];
  const kit = (more: Partial<Policy> = {}) => kitOf(boardOf(pedals, { policy: policyOf(more) }), catalogueOf([box]));
  const at = (pedal: string, output: number, unit = 1): PinnedPlace => ({
    pedal: pedalId(pedal),
    supply: supplyId('box'),
    unit,
    outputs: [output],
    millivolts: volts(9),
  });
  const outputsIn = (answer: AroundPins) =>
    answer.kind === 'plan' &&
    answer.wiring.feeds.map(({ pedal, unit, outputs }) => `${pedal} ${unit}/${outputs.join()}`);

  it('what is pinned stays, and the rest goes around it', async () => {
    expect(outputsIn(await chooseAround(kit(), [at('one', 2)]))).toEqual(['one 1/2', 'two 1/1']);
    expect(outputsIn(await chooseAround(kit(), []))).toHaveLength(2);
  });

  it('pins on two units take two, and their price counts once each', async () => {
    const answer = await chooseAround(kit(), [at('one', 1, 3), at('two', 1, 7)]);
    expect(outputsIn(answer)).toEqual(['one 1/1', 'two 2/1']);
    expect(answer.kind === 'plan' && answer.wiring.score.money).toBe(euros(100));
  });

  it('a pin of a pedal that is gone is left aside', async () => {
    expect(outputsIn(await chooseAround(kit(), [at('gone', 1), at('two', 1)]))).toEqual(['one 1/2', 'two 1/1']);
  });

  it('pins that no plan keeps are told, with those of which to let go of one is enough', async () => {
    const both = [at('one', 1), at('two', 1)];
    expect(await chooseAround(kit(), both)).toEqual({ kind: 'held up', letGo: ['one', 'two'] });
    const apart = [at('one', 1), at('two', 1, 2)];
    expect(await chooseAround(kit({ budget: euros(60) }), apart)).toEqual({ kind: 'held up', letGo: ['one', 'two'] });
    expect(await chooseAround(kit(), [at('one', 3), at('two', 1)])).toEqual({ kind: 'held up', letGo: ['one'] });
  });

  it('a board that has no plan at all says why, whatever is pinned', async () => {
    expect(await chooseAround(kit({ budget: euros(40) }), [at('one', 1)])).toMatchObject({
      kind: 'impossible',
      reasons: [{ kind: 'limit', limit: 'budget' }],
    });
  });

  it('a plan that is not proven says how far it may be, with what the pins cost', async () => {
    let asked = 0;
    const answer = await chooseAround(kit(), [at('one', 1)], { remainingMs: () => (asked++ < 1 ? 1000 : 0) });
    if (answer.kind === 'plan' && answer.gap?.tier === 'cost') expect(answer.gap.value).toBe(euros(50));
    expect(['plan', 'stopped']).toContain(answer.kind);
  });
});
