import { describe, expect, it } from 'vitest';

import { partId, pedalId } from '../../../../src/domain/quantities.js';
import { bankOf, catalogueOf, partOf, pedalOf, settingOf } from '../../../support/builders.js';
import { small, strong, quay, ownedOf, wired, planOf } from './wired-board.js';

const id = pedalId;

describe('why a pedal moves', () => {
  it('is that today breaks a rule by itself', async () => {
    const board = wired([pedalOf('reverb', 250)], [small(2), strong(1)], [quay('reverb', 2)]);
    const { changes } = await planOf(board);
    expect(changes.moves).toMatchObject([
      { from: { outputs: [2] }, to: { outputs: [3] }, reason: { kind: 'rule', violation: { rule: 'current' } } },
    ]);
  });

  it('is that it would break a rule together with what the plan has elsewhere', async () => {
    const positive = { ground: 'positive' } as const;
    const pedals = [pedalOf('fuzz', 5, positive), pedalOf('drive', 5), pedalOf('chorus', 5)];
    const banks = [small(3, { isolated: false }), small(1)];
    const board = wired(pedals, banks, [quay('fuzz', 1), quay('drive', 2), quay('chorus', 3)]);
    const { changes } = await planOf(board);
    expect(changes.stays).toEqual([id('drive'), id('chorus')]);
    expect(changes.moves).toMatchObject([
      { from: { pedal: 'fuzz' }, to: { outputs: [4] }, reason: { kind: 'rule', violation: { rule: 'ground' } } },
    ]);
  });

  it('is that another pedal takes its place', async () => {
    const pedals = [pedalOf('delay', 70), pedalOf('reverb', 300)];
    const { changes } = await planOf(wired(pedals, [small(1), strong(1)], [quay('delay', 2)]));
    expect(changes).toMatchObject({
      added: ['reverb'],
      moves: [{ from: { pedal: 'delay' }, reason: { kind: 'taken', by: ['reverb'] } }],
    });
  });

  it('is judged with all of a chain put back, where they move together', async () => {
    const pedals = [pedalOf('delay', 60), pedalOf('chorus', 60), pedalOf('reverb', 300, { alone: true })];
    const fan = partOf('fan', 0, { kind: 'chain', tails: 2 }, { price: null, stock: 0 });
    const wiring = [quay('delay', 3, { chain: fan.id }), quay('chorus', 3, { chain: fan.id })];
    const gear = { supplies: [], parts: [fan] };
    const board = wired(pedals, [small(2), strong(1)], wiring, { gear, owned: ownedOf({ quay: 1 }, { fan: 1 }) });
    const { changes } = await planOf(board);
    expect(changes.moves).toMatchObject([
      { from: { pedal: 'delay' }, reason: { kind: 'taken', by: ['reverb'] } },
      { from: { pedal: 'chorus' }, reason: { kind: 'taken', by: ['reverb'] } },
    ]);
  });

  it('is the rule that the group breaks, and none that one of them would by itself for want of another lead', async () => {
    const pedals = [pedalOf('delay', 60, { inlet: 'jack-3.5' }), pedalOf('chorus', 60, { inlet: 'jack-3.5' })];
    const fan = partOf('fan', 0, { kind: 'chain', tails: 2 }, { gives: 'jack-3.5', price: null, stock: 0 });
    const mini = partOf('mini', 0, { kind: 'adapter' }, { gives: 'jack-3.5', price: null, stock: 0 });
    const wiring = [quay('delay', 1, { chain: fan.id }), quay('chorus', 1, { chain: fan.id })];
    const gear = { supplies: [], parts: [fan, mini] };
    const owned = ownedOf({ quay: 1 }, { fan: 1, mini: 1 });
    const more = pedalOf('looper', 350, { alone: true });
    const board = wired([...pedals, more], [small(1), strong(2)], wiring, { gear, owned });
    const { changes } = await planOf(board);
    expect(changes.moves.map(({ from, to }) => [from.pedal, to.chain])).toEqual([
      ['delay', 'fan'],
      ['chorus', 'fan'],
    ]);
    for (const { reason } of changes.moves)
      expect(reason).toMatchObject({ kind: 'rule', violation: { rule: 'current', pedals: ['delay', 'chorus'] } });
  });

  it('is that another pedal would be alone on a chain lead without it', async () => {
    const pedals = [pedalOf('drive', 60), pedalOf('chorus', 60, { inlet: 'jack-3.5' })];
    const fan = partOf('fan', 0, { kind: 'chain', tails: 2 }, { gives: 'jack-3.5', price: null, stock: 0 });
    const back = partOf('back', 0, { kind: 'adapter' }, { fits: 'jack-3.5', price: null, stock: 0 });
    const gear = { supplies: [], parts: [fan, back] };
    const owned = ownedOf({ quay: 1 }, { fan: 1, back: 1 });
    const board = wired(pedals, [small(1), strong(1)], [quay('drive', 1)], { gear, owned });
    const { changes } = await planOf(board);
    expect(changes.added).toEqual([id('chorus')]);
    expect(changes.moves).toMatchObject([
      { from: { pedal: 'drive' }, to: { outputs: [2] }, reason: { kind: 'company', pedal: 'chorus' } },
    ]);
  });

  it('is that it saves money', async () => {
    const catalogue = catalogueOf([], [partOf('flip', 4, { kind: 'adapter' }, { reverses: true })]);
    const banks = [small(1, { polarity: 'centre-positive' }), small(1)];
    const board = wired([pedalOf('delay', 70)], banks, [quay('delay', 1, { adapters: [partId('flip')] })]);
    const { changes, wiring } = await planOf(board, catalogue);
    expect(wiring.score).toMatchObject({ money: 0, moved: 1 });
    expect(changes.moves).toMatchObject([{ reason: { kind: 'saves', money: 400, exposed: [] } }]);
    expect(changes.unlisted).toEqual([{ part: 'flip', units: 1 }]);
    const owning = { ...board, owned: ownedOf({ quay: 1 }, { flip: 1 }) };
    expect((await planOf(owning, catalogue)).changes).toMatchObject({ moves: [], steps: [], unlisted: [] });
  });

  it('is that it keeps noise off', async () => {
    const pedals = [pedalOf('fuzz', 5, { highGain: true }), pedalOf('looper', 150, { digital: true })];
    const banks = [bankOf(2, [settingOf(9, 200)], { isolated: false }), small(1)];
    const { changes, wiring } = await planOf(wired(pedals, banks, [quay('fuzz', 1)]));
    expect(wiring.exposed).toEqual([]);
    expect(changes.moves).toMatchObject([
      { to: { outputs: [3] }, reason: { kind: 'saves', money: 0, exposed: ['fuzz'] } },
    ]);
  });

  it('weighs noise that is there today for nothing', async () => {
    const pedals = [pedalOf('fuzz', 5, { highGain: true }), pedalOf('looper', 80, { digital: true })];
    const banks = [small(2, { isolated: false }), small(1)];
    const { wiring, changes } = await planOf(wired(pedals, banks, [quay('fuzz', 1), quay('looper', 2)]));
    expect(wiring.score).toMatchObject({ moved: 0, exposed: 1, newlyExposed: 0 });
    expect(changes.steps).toEqual([]);
  });
});
