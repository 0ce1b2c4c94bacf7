import { kitOf } from '../../src/domain/kit.js';
import { describe, expect, it } from 'vitest';

import { millivolts } from '../../src/domain/quantities.js';
import type { ReplugStep } from '../../src/planning/rewire/steps.js';
import { stepsBetween } from '../../src/planning/rewire/steps.js';
import { bankOf, boardOf, catalogueOf, feedOf, listed, pedalOf, settingOf, supplyOf, volts } from './builders.js';
import { carriedOut } from './simulated-steps.js';

const feedOn = (pedal: string, output: number, atVolts: number) =>
  feedOf(pedal, 'quay', output, { settings: [volts(atVolts)] });

const board = boardOf([pedalOf('drive', 10, { accepts: listed(9, 18) }), pedalOf('reverb', 90), pedalOf('tuner', 10)]);
const bank = bankOf(3, [settingOf(9, 100), settingOf(18, 50)]);
const catalogue = catalogueOf([supplyOf('quay', 10, [bank])]);
const today = [feedOn('drive', 1, 18), feedOn('tuner', 3, 9)];
/** The drive makes room for a reverb on its output, whose switch is turned. */
const plan = [feedOn('drive', 2, 9), feedOn('reverb', 1, 9), feedOn('tuner', 3, 9)];
const { steps } = stepsBetween(kitOf(board, catalogue), today, plan);

const outcome = (given: readonly ReplugStep[]): unknown => {
  const seen = { steps: 0, switches: 0, measured: 0, stayedOn: 0 };
  try {
    return [...carriedOut(given, today, board, catalogue, seen).values()].sort((a, b) => (a.pedal < b.pedal ? -1 : 1));
  } catch (error) {
    return error;
  }
};

describe('steps that are simulated', () => {
  it('lead from today to the plan', () => {
    expect(outcome(steps)).toEqual(plan);
  });

  it.each(steps.map((step, at) => ({ kind: step.kind, at })))('do not when $kind ($at) is left out', ({ at }) => {
    expect(outcome(steps.toSpliced(at, 1))).not.toEqual(plan);
  });

  it.each(steps.slice(1).map((step, at) => ({ kind: step.kind, at })))(
    'do harm when $kind comes before its time, by all that is not like it',
    ({ kind, at }) => {
      const step = steps[at + 1];
      const before = steps[at];
      if (step === undefined || before === undefined || before.kind === step.kind) return;
      // A switch can be turned while plugs are still being pulled, and mains go off twice without harm.
      if (kind === 'mains off' || (kind === 'set volts' && before.kind === 'pull')) return;
      expect(outcome(steps.with(at, step).with(at + 1, before))).toBeInstanceOf(Error);
    },
  );

  it('do harm at volts that a pedal refuses', () => {
    const wrong = steps.map((step) => (step.kind === 'set volts' ? { ...step, millivolts: millivolts(18_000) } : step));
    expect(outcome(wrong)).toBeInstanceOf(Error);
  });
});
