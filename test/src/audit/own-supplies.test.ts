import { describe, expect, it } from 'vitest';

import { ownAdapterOf } from '../../../src/domain/own-adapter.js';
import { supplyId } from '../../../src/domain/quantities.js';
import { bank, faults, feed, judge, messages, part, pedal, supply, volts, type Case } from './cases.js';

const own = (only: boolean) => ({ adapter: { supply: supplyId('own-station'), only } });
const station = pedal('station', own(true));

const at = (feeds: Case['feeds'], more: Partial<Case> = {}): Case => ({
  pedals: [station, pedal('echo')].filter(({ id }) => feeds.some((each) => each.pedal === id)),
  supplies: [ownAdapterOf(station, { from: volts(220), to: volts(240) }), supply('quay', [bank()])],
  owned: { 'own-station': 1 },
  feeds,
  ...more,
});

const onOwn = feed('station', 1, { supply: supplyId('own-station') });

describe('the adapter that a pedal came with', () => {
  it('is right for it, whatever of it is known', () => {
    expect(faults(at([onOwn]))).toEqual([]);
    const odd = pedal('station', { ...own(true), power: 'AC', polarity: null, inlet: 'its own', ground: 'unknown' });
    expect(faults(at([{ ...onOwn, polarity: null }], { pedals: [odd] }))).toEqual([]);
  });

  it('feeds no other pedal', () => {
    expect(faults(at([feed('echo', 1, { supply: supplyId('own-station') })]))).toEqual(['voltage']);
    expect(messages(at([feed('echo', 1, { supply: supplyId('own-station') })]))).toEqual([
      'Echo hangs on Own adapter of Station, which is for that pedal alone: what it gives is not stated',
    ]);
    expect(faults(at([onOwn, feed('echo', 1, { supply: supplyId('own-station') })]))).toEqual(['voltage']);
  });

  it('alone feeds a pedal of which it is not stated what it takes', () => {
    expect(faults(at([feed('station', 1)]))).toEqual(['voltage']);
    expect(faults(at([feed('station', 1)], { pedals: [pedal('station', own(false))] }))).toEqual([]);
  });

  it('goes in without leads', () => {
    const through = { ...onOwn, adapters: [part('flip').id] };
    expect(faults(at([through], { parts: [part('flip')] }))).toEqual(['plug']);
  });

  it('goes in the way round that the pedal has', () => {
    const round = { ...onOwn, polarity: 'centre-positive' } as const;
    expect(faults(at([round]))).toEqual(['polarity']);
    const other = pedal('station', { ...own(true), polarity: 'centre-positive' });
    expect(faults(at([round], { pedals: [other] }))).toEqual([]);
    expect(faults(at([onOwn], { pedals: [other] }))).toEqual(['polarity']);
  });

  it('accepts the mains of the venue', () => {
    expect(faults(at([onOwn], { policy: { mains: [volts(230)] } }))).toEqual([]);
    expect(faults(at([onOwn], { policy: { mains: [volts(120)] } }))).toEqual(['mains']);
  });

  it('takes a socket, counts as a supply in use, and costs nothing', () => {
    expect(faults(at([onOwn], { policy: { sockets: 0 } }))).toEqual(['limit']);
    expect(faults(at([onOwn], { policy: { bricks: 0 } }))).toEqual(['limit']);
    expect(judge(at([onOwn])).wiring.score).toMatchObject({ bricks: 1, money: 0, parts: 0 });
  });
});
