import { describe, expect, it } from 'vitest';

import { minorUnits } from '../../../src/domain/quantities.js';
import {
  bank,
  chainLead,
  faults,
  feed,
  joinLead,
  judge,
  listed,
  messages,
  part,
  pedal,
  supply,
  type Case,
} from './cases.js';

/** Two pedals on two units of one model. */
const twoUnits = (stock: number | null, owned: number, units: readonly [number, number] = [1, 2]): Case => ({
  pedals: [pedal('echo'), pedal('fuzz')],
  supplies: [supply('quay', [bank()], { stock })],
  feeds: [feed('echo', 1, { unit: units[0] }), feed('fuzz', 1, { unit: units[1] })],
  owned: { quay: owned },
});

describe('stock of supplies', () => {
  it('is what is owned plus what is in stock', () => {
    expect(faults(twoUnits(2, 0))).toEqual([]);
    expect(faults(twoUnits(1, 1))).toEqual([]);
    expect(faults(twoUnits(0, 2))).toEqual([]);
    expect(faults(twoUnits(1, 0))).toEqual(['stock']);
    expect(faults(twoUnits(0, 1))).toEqual(['stock']);
    expect(messages(twoUnits(0, 1))).toEqual(['unit 2 of Quay is in use; 1 unit owned, 0 in stock']);
  });

  it('has no limit when none is stated', () => {
    expect(faults(twoUnits(null, 0, [1, 99]))).toEqual([]);
  });

  it('allows any unit that there is, and none beyond', () => {
    expect(faults(twoUnits(1, 2, [2, 3]))).toEqual([]);
    expect(faults(twoUnits(1, 2, [1, 4]))).toEqual(['stock']);
  });

  it('is nothing where there is no price', () => {
    const gear = (owned: number): Case => ({
      ...twoUnits(null, owned),
      supplies: [supply('quay', [bank()], { price: null })],
    });
    expect(faults(gear(2))).toEqual([]);
    expect(faults(gear(1))).toEqual(['stock']);
  });

  it('has no supply that nobody describes', () => {
    const unknown = { ...twoUnits(null, 0), feeds: [feed('echo', 1), feed('fuzz', 1, { supply: 'jetty' })] };
    expect(faults(unknown)).toEqual(['stock', 'missing']);
    expect(messages(unknown)).toEqual(['Fuzz hangs on "jetty", a supply that is neither described nor for sale']);
  });
});

describe('stock of parts', () => {
  const adapted = (stock: number | null, owned: number): Case => ({
    pedals: [pedal('echo'), pedal('fuzz')],
    supplies: [supply('quay', [bank()])],
    parts: [part('straight', { stock })],
    feeds: [feed('echo', 1, { adapters: ['straight', 'straight'] }), feed('fuzz', 2, { adapters: ['straight'] })],
    owned: { straight: owned },
  });

  it('is what is owned plus what is in stock, each adapter of each pedal counting', () => {
    expect(faults(adapted(3, 0))).toEqual([]);
    expect(faults(adapted(1, 2))).toEqual([]);
    expect(faults(adapted(null, 0))).toEqual([]);
    expect(faults(adapted(1, 1))).toEqual(['stock']);
    expect(messages(adapted(1, 1))).toEqual(['3 × Straight are in use; 1 unit owned, 1 in stock']);
  });

  it('counts a chain lead once for its output', () => {
    const chained = (stock: number): Case => ({
      pedals: ['echo', 'fuzz', 'drive', 'organ'].map((id) => pedal(id)),
      supplies: [supply('quay', [bank()])],
      parts: [chainLead('fan', 2, { stock })],
      feeds: [1, 1, 2, 2].map((output, index) =>
        feed(['echo', 'fuzz', 'drive', 'organ'][index] ?? '', output, { chain: 'fan' }),
      ),
    });
    expect(faults(chained(2))).toEqual([]);
    expect(faults(chained(1))).toEqual(['stock']);
  });

  it('counts a join lead once for its outputs', () => {
    const joined = (stock: number): Case => ({
      pedals: ['echo', 'fuzz'].map((id) => pedal(id, { accepts: listed(18) })),
      supplies: [supply('quay', [bank({ outputs: 4, joins: ['series'] })])],
      parts: [joinLead('stack', 'series', { stock })],
      feeds: [feed('echo', [1, 2], { join: ['series', 'stack'] }), feed('fuzz', [3, 4], { join: ['series', 'stack'] })],
    });
    expect(faults(joined(2))).toEqual([]);
    expect(faults(joined(1))).toEqual(['stock']);
  });

  it('has no part that nobody describes, in any role', () => {
    const of = adapted(null, 0);
    const unknown = (changes: object): readonly string[] =>
      faults({ ...of, feeds: [feed('echo', 1, { adapters: ['ghost'], ...changes })], pedals: [pedal('echo')] });
    expect(unknown({})).toEqual(['stock']);
    expect(unknown({ adapters: ['ghost', 'ghost'] })).toEqual(['stock']);
    const chain = [feed('echo', 1, { chain: 'ghost' }), feed('fuzz', 1, { chain: 'ghost' })];
    expect(faults({ ...of, feeds: chain })).toEqual(['stock']);
    const join = [feed('echo', [1, 2], { join: ['series', 'ghost'] })];
    const joinable = [supply('quay', [bank({ joins: ['series'] })])];
    const single = [pedal('echo', { accepts: listed(18) })];
    expect(faults({ ...of, supplies: joinable, pedals: single, feeds: join })).toEqual(['stock']);
  });
});

describe('what is bought', () => {
  it('is what is used beyond the owned, at the price of one', () => {
    const { buy, score } = judge({
      ...twoUnits(null, 1, [1, 2]),
      parts: [part('straight')],
      feeds: [feed('echo', 1, { adapters: ['straight', 'straight'] }), feed('fuzz', 1, { unit: 2 })],
      owned: { quay: 1, straight: 1 },
    }).wiring;
    expect(buy).toEqual({
      supplies: [{ id: 'quay', units: 1, price: minorUnits(10000) }],
      parts: [{ id: 'straight', units: 1, price: minorUnits(500) }],
    });
    expect(score.money).toBe(10500);
  });

  it('is nothing for owned units, whichever of them', () => {
    expect(judge(twoUnits(null, 3, [2, 3])).wiring.buy.supplies).toEqual([]);
  });
});
