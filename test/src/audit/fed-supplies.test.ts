import { describe, expect, it } from 'vitest';

import { inletId } from '../../../src/domain/inlet.js';
import { supplyId } from '../../../src/domain/quantities.js';
import type { Inlet } from '../../../src/domain/source.js';
import { fedBy, listed, onCharge } from '../../support/builders.js';
import {
  bank,
  chainLead,
  draws,
  faults,
  feed,
  judge,
  messages,
  milliamps,
  part,
  pedal,
  supply,
  type Case,
} from './cases.js';

const of = (unit = 1) => ({ supply: supplyId('lock'), unit });
/** The inlet of the lock on an output of the quay. */
const inlet = (outputs: number | readonly number[] = 1, changes: Parameters<typeof feed>[2] = {}, unit = 1) => ({
  ...feed(inletId(of(unit)), outputs, changes),
  inletOf: of(unit),
});
const lock = (changes: Partial<Inlet> = {}) => supply('lock', [bank()], fedBy(changes));
const quay = supply('quay', [bank()]);

/** A pedal on the lock, whose inlet of 9 V, 100 mA hangs on the quay. */
const fed = (more: Partial<Case> = {}): Case => ({
  pedals: [pedal('wah')],
  supplies: [quay, lock()],
  feeds: [feed('wah', 1, { supply: 'lock' }), inlet()],
  ...more,
});

describe('a fed supply', () => {
  it('may hang on an output of a supply on mains', () => {
    expect(faults(fed())).toEqual([]);
  });

  it('is a supply in use that takes no socket, as what feeds it is', () => {
    const { score, sockets, inlets, feeds } = judge(fed()).wiring;
    expect([score.bricks, sockets]).toEqual([2, 1]);
    expect([inlets.length, feeds.length]).toEqual([1, 1]);
    expect(judge(fed()).wiring.buy.supplies.map(({ id }) => id)).toEqual(['quay', 'lock']);
  });

  it('is of no use where its inlet hangs on nothing', () => {
    const hanging = fed({ feeds: [feed('wah', 1, { supply: 'lock' })] });
    expect(faults(hanging)).toEqual(['inlet']);
    expect(messages(hanging)).toEqual(['Lock (unit 1) feeds Wah, and its inlet hangs on no output']);
  });

  it('needs an output for each of its units', () => {
    const pedals = [pedal('wah'), pedal('fuzz')];
    const feeds = [feed('wah', 1, { supply: 'lock' }), feed('fuzz', 1, { supply: 'lock', unit: 2 }), inlet(1)];
    expect(faults(fed({ pedals, feeds }))).toEqual(['inlet']);
    expect(faults(fed({ pedals, feeds: [...feeds, inlet(2, {}, 2)] }))).toEqual([]);
    expect(faults(fed({ pedals, feeds: [...feeds, inlet(2)] }))).toEqual(['inlet', 'malformed']);
  });

  it.each<readonly [string, Partial<Inlet>]>([
    ['power', { power: 'AC', polarity: null }],
    ['volts', { accepts: listed(12) }],
    ['milliamps', { microamps: milliamps(500.001) }],
    ['polarity', { polarity: 'centre-positive' }],
    ['plug', { plug: 'jack-3.5' }],
  ])('is refused where %s do not agree', (_, changes) => {
    expect(faults(fed({ supplies: [quay, lock(changes)] }))).toEqual(['inlet']);
  });

  it('draws what its inlet states with the headroom of a pedal alone, to the last microamp', () => {
    const drawing = (value: number) =>
      fed({
        supplies: [quay, lock({ microamps: milliamps(value) })],
        headroom: { alone: { numerator: 2, denominator: 1 } },
      });
    expect(faults(drawing(250))).toEqual([]);
    expect(faults(drawing(250.001))).toEqual(['inlet']);
  });

  it('starts with what its inlet states', () => {
    const starting = (value: number) => fed({ supplies: [quay, lock({ startup: milliamps(value) })] });
    expect(faults(starting(500))).toEqual([]);
    expect(faults(starting(500.001))).toEqual(['startup']);
  });

  it('counts in the totals of what feeds it, and in nothing else', () => {
    const small = supply('quay', [bank({ total: { kind: 'current', microamps: milliamps(99.999) } })]);
    expect(faults(fed({ supplies: [small, lock()] }))).toEqual(['total']);
    expect(faults(fed({ pedals: [pedal('wah', draws(400))] }))).toEqual([]);
  });

  it('takes adapters on the way, which are counted', () => {
    const flip = part('flip', { reverses: true });
    const turned = fed({
      supplies: [quay, lock({ polarity: 'centre-positive' })],
      parts: [flip],
      feeds: [feed('wah', 1, { supply: 'lock' }), inlet(1, { adapters: ['flip'], polarity: 'centre-positive' })],
    });
    expect(faults(turned)).toEqual([]);
    expect(judge(turned).wiring.score.parts).toBe(1);
  });

  it('feeds no other one', () => {
    const step = supply('step', [bank()], fedBy());
    const chain = fed({
      supplies: [quay, lock(), step],
      feeds: [
        feed('wah', 1, { supply: 'lock' }),
        inlet(1, { supply: 'step' }),
        { ...feed(inletId({ supply: step.id, unit: 1 }), 2), inletOf: { supply: step.id, unit: 1 } },
      ],
    });
    expect(faults(chain)).toEqual(['inlet']);
  });

  it('may hang on a power bank, which it empties', () => {
    const bankFor = (hours: number) =>
      fed({
        supplies: [supply('quay', [bank()], onCharge(0.9)), lock()],
        policy: {
          runtime: { hours: { numerator: hours, denominator: 1000 }, usable: { numerator: 1, denominator: 1 } },
        },
      });
    expect(faults(bankFor(1000))).toEqual([]);
    expect(faults(bankFor(1001))).toEqual(['runtime']);
  });

  it('shares no output, though a chain lead would fit', () => {
    const shared = fed({
      pedals: [pedal('wah'), pedal('fuzz')],
      parts: [chainLead('fan', 5)],
      feeds: [feed('wah', 1, { supply: 'lock' }), feed('fuzz', 1, { chain: 'fan' }), inlet(1, { chain: 'fan' })],
    });
    expect(new Set(faults(shared))).toEqual(new Set(['inlet']));
  });

  it('has the ground of what feeds it to itself', () => {
    const common = supply('quay', [bank({ isolated: false })]);
    const beside = fed({
      supplies: [common, lock()],
      pedals: [pedal('wah'), pedal('fuzz')],
      feeds: [feed('wah', 1, { supply: 'lock' }), feed('fuzz', 2), inlet()],
    });
    expect(faults(beside)).toEqual(['inlet']);
    expect(messages(beside)).toEqual([
      'Lock inlet shares the ground of output 1 of Quay (unit 1) with Fuzz; it must have one alone',
    ]);
    expect(faults(fed({ supplies: [common, lock()] }))).toEqual([]);
  });

  it('ties its pedals together by its own common ground, and to nothing that feeds it', () => {
    const own = supply('lock', [bank({ isolated: false })], fedBy());
    const noisy = fed({
      supplies: [quay, own],
      pedals: [
        pedal('wah', { highGain: true }),
        pedal('echo', { digital: true }),
        pedal('fuzz', { ground: 'positive' }),
      ],
      feeds: [feed('wah', 1, { supply: 'lock' }), feed('echo', 2, { supply: 'lock' }), feed('fuzz', 2), inlet()],
    });
    expect(faults(noisy)).toEqual([]);
    expect(judge(noisy).wiring.exposed).toEqual(['wah']);
  });

  it('joins no outputs', () => {
    const joint = supply('quay', [bank({ joins: ['parallel'] })]);
    const joined = fed({
      supplies: [joint, lock()],
      parts: [part('pair', { role: { kind: 'join', mode: 'parallel' } })],
      feeds: [feed('wah', 1, { supply: 'lock' }), inlet([1, 2], { join: ['parallel', 'pair'] })],
    });
    expect(faults(joined)).toEqual(['inlet']);
  });

  it('is one that has an inlet', () => {
    expect(faults(fed({ supplies: [quay, supply('lock', [bank()])] }))).toEqual(['malformed']);
  });
});
