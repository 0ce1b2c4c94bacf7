import { describe, expect, it } from 'vitest';

import { kitOf, type Kit } from '../../../../src/domain/kit.js';
import { ask, planOf } from '../../../../src/planning/asking/ask.js';
import { furthest, type Scale } from '../../../../src/planning/asking/furthest.js';
import { bankOf, boardOf, catalogueOf, pedalOf, settingOf, supplyOf } from '../../../support/builders.js';

const effort = { engines: null, remainingMs: () => Infinity };

/** One pedal of so many milliamps before these supplies, each with an output of so many. */
const kitsOf =
  (...ratings: readonly number[]) =>
  (milliamps: number): Kit => {
    const supplies = ratings.map((rating) => supplyOf(`of-${rating}`, rating, [bankOf(1, [settingOf(9, rating)])]));
    return kitOf(boardOf([pedalOf('one', milliamps)]), catalogueOf(supplies));
  };

/** The scale from 1 on, and the steps at which a plan was asked for. */
function scaleOf(kitAt: Scale['kitAt'], highest: number): { readonly scale: Scale; readonly steps: number[] } {
  const steps: number[] = [];
  const planAt: Scale['planAt'] = async (step) => {
    steps.push(step);
    return planOf(await ask(kitAt(step), { tiers: ['money'] }, effort));
  };
  return { scale: { lowest: 1, highest, kitAt, planAt }, steps };
}

describe('the highest step with a plan', () => {
  it('is the one above which there is none', async () => {
    const { scale } = scaleOf(kitsOf(100, 250), 1000);
    expect(await furthest(scale)).toMatchObject({ step: 250, wiring: { feeds: [{ supply: 'of-250' }] } });
  });

  it('is mostly told by how far a plan goes by itself', async () => {
    const { scale, steps } = scaleOf(kitsOf(100), 1000);
    expect(await furthest(scale)).toMatchObject({ step: 100 });
    expect(steps).toEqual([1, 101]);
  });

  it('is the last of the scale where all have one', async () => {
    const { scale } = scaleOf(kitsOf(100), 40);
    expect(await furthest(scale)).toMatchObject({ step: 40 });
  });

  it('is none where the first has none', async () => {
    const { scale } = scaleOf(kitsOf(), 40);
    expect(await furthest(scale)).toBeNull();
  });

  it('is not known where the time runs out, at the first or on the way', async () => {
    const { scale } = scaleOf(kitsOf(100), 1000);
    const upTo = (known: number): Scale => ({
      ...scale,
      planAt: (step) => (step <= known ? scale.planAt(step) : Promise.resolve('unknown')),
    });
    expect(await furthest(upTo(0))).toBe('unknown');
    expect(await furthest(upTo(100))).toBe('unknown');
  });
});
