import { describe, expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { feedersOf } from '../../../../src/planning/refusals/feeders.js';
import { bankOf, currentTotal, euros, listed, pedalOf, settingOf, supplyOf } from '../../../support/builders.js';
import { caseOf, type Given } from '../given.js';

const feeders = (given: Given) => {
  const { board, catalogue } = caseOf(given);
  return Object.fromEntries(feedersOf(kitOf(board, catalogue)));
};

const outputs = [bankOf(1, [settingOf(9, 100)])];
const strong = supplyOf('strong', 10, [bankOf(1, [settingOf(9, 500)])]);
const weak = supplyOf('weak', 10, outputs);

describe('the supplies that feed a pedal', () => {
  it('are all that have an output for it, and none where there is none', () => {
    const pedals = [pedalOf('small', 50), pedalOf('large', 300), pedalOf('odd', 50, { accepts: listed(18) })];
    expect(feeders({ pedals, supplies: [weak, strong] })).toEqual({
      small: ['weak', 'strong'],
      large: ['strong'],
      odd: [],
    });
  });

  it('are told for alike pedals, too', () => {
    const pedals = [pedalOf('one', 50), pedalOf('two', 50)];
    expect(feeders({ pedals, supplies: [weak] })).toEqual({ one: ['weak'], two: ['weak'] });
  });

  it('are no supplies whose total is too small for the pedal alone', () => {
    const bounded = supplyOf('bounded', 10, outputs, { total: currentTotal(40) });
    expect(feeders({ pedals: [pedalOf('one', 50)], supplies: [bounded, weak] })).toEqual({ one: ['weak'] });
    expect(feeders({ pedals: [pedalOf('one', 30)], supplies: [bounded] })).toEqual({ one: ['bounded'] });
  });

  it('may cost more than the budget, for limits are left aside', () => {
    const policy = { budget: euros(0), bricks: 0, sockets: 0 };
    expect(feeders({ pedals: [pedalOf('one', 50)], supplies: [weak], policy })).toEqual({ one: ['weak'] });
  });
});
