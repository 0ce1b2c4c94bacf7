import { describe, expect, it } from 'vitest';

import {
  bank,
  chainLead,
  draws,
  faults,
  feed,
  joinLead,
  listed,
  messages,
  part,
  pedal,
  supply,
  type Case,
} from './cases.js';

const parts = [
  chainLead('fan', 2),
  chainLead('other-fan', 2),
  chainLead('mini-fan', 2, { fits: 'jack-3.5' }),
  chainLead('single', 1),
  joinLead('stack', 'series'),
  part('straight'),
];

/** So many pedals on output 1, with a chain lead each names. */
const on = (chains: readonly (string | undefined)[], more: Partial<Case> = {}): Case => {
  const ids = ['echo', 'fuzz', 'drive'].slice(0, chains.length);
  return {
    pedals: ids.map((id) => pedal(id, draws(10))),
    supplies: [supply('quay', [bank({ joins: ['series'] })])],
    parts,
    feeds: ids.map((id, index) => {
      const chain = chains[index];
      return feed(id, 1, chain === undefined ? {} : { chain });
    }),
    ...more,
  };
};

describe('chain', () => {
  it('takes one lead with enough tails', () => {
    expect(faults(on(['fan', 'fan']))).toEqual([]);
    expect(faults(on(['fan', 'fan', 'fan']))).toEqual(['chain']);
    expect(messages(on(['fan', 'fan', 'fan']))).toEqual([
      'Fan has 2 tails; 3 pedals hang on output 1 of Quay (unit 1)',
    ]);
  });

  it('needs a lead, the same for all', () => {
    expect(faults(on([undefined, undefined]))).toEqual(['chain']);
    expect(faults(on(['fan', undefined]))).toEqual(['chain']);
    expect(faults(on(['fan', 'other-fan']))).toEqual(['chain']);
    expect(messages(on(['fan', 'other-fan']))).toEqual([
      'output 1 of Quay (unit 1) has 2 chain leads (fan and other-fan); it takes one',
    ]);
  });

  it('needs a lead that is one and fits the output', () => {
    expect(faults(on(['straight', 'straight']))).toEqual(['chain']);
    expect(faults(on(['stack', 'stack']))).toEqual(['chain']);
    expect(faults(on(['mini-fan', 'mini-fan']))).toEqual(['chain']);
    expect(messages(on(['mini-fan', 'mini-fan']))).toEqual([
      'Mini-fan fits jack-3.5; output 1 of Quay (unit 1) offers barrel-2.1',
    ]);
  });

  it('is not for a pedal that must be alone', () => {
    const withLonely = (alone: boolean): Case =>
      on(['fan', 'fan'], { pedals: [pedal('echo', draws(10)), pedal('fuzz', { ...draws(10), alone })] });
    expect(faults(withLonely(false))).toEqual([]);
    expect(faults(withLonely(true))).toEqual(['chain']);
    expect(messages(withLonely(true))).toEqual([
      'output 1 of Quay (unit 1) feeds 2 pedals; Fuzz must have an output alone',
    ]);
    const apart = { ...withLonely(true), feeds: [feed('echo', 1), feed('fuzz', 2)] };
    expect(faults(apart)).toEqual([]);
  });

  it('is for DC only', () => {
    const alternating = { power: 'AC', polarity: null } as const;
    const of = on(['fan', 'fan'], {
      pedals: ['echo', 'fuzz'].map((id) => pedal(id, { ...draws(10), ...alternating })),
      supplies: [supply('quay', [bank(alternating)])],
    });
    const feeds = of.feeds.map((each) => ({ ...each, polarity: null }));
    expect(faults({ ...of, feeds })).toEqual(['chain']);
    const apart = ['echo', 'fuzz'].map((id, index) => feed(id, index + 1, { polarity: null }));
    expect(faults({ ...of, feeds: apart })).toEqual([]);
  });

  it('is refused where the policy wants none', () => {
    expect(faults(on(['fan', 'fan'], { policy: { chains: 'never' } }))).toEqual(['chain']);
    expect(faults(on([undefined], { policy: { chains: 'never' } }))).toEqual([]);
  });

  it('has no lead for a pedal alone, not even one of a single tail or as an adapter', () => {
    expect(faults(on([undefined]))).toEqual([]);
    expect(faults(on(['fan']))).toEqual(['chain']);
    expect(faults(on(['single']))).toEqual(['chain']);
    expect(faults(on([undefined], { feeds: [feed('echo', 1, { adapters: ['straight'] })] }))).toEqual([]);
    expect(faults(on([undefined], { feeds: [feed('echo', 1, { adapters: ['fan'] })] }))).toEqual(['chain']);
    expect(messages(on(['fan']))).toEqual([
      'Echo is alone on output 1 of Quay (unit 1) and takes no chain lead ("fan")',
    ]);
  });

  it('has no lead behind joined outputs', () => {
    const joined = (more: object): Case =>
      on([undefined], {
        pedals: [pedal('echo', { accepts: listed(18) })],
        feeds: [feed('echo', [1, 2], { join: ['series', 'stack'], ...more })],
      });
    expect(faults(joined({}))).toEqual([]);
    expect(faults(joined({ chain: 'fan' }))).toEqual(['chain']);
  });
});
