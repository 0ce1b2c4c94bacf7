import { describe, expect, it } from 'vitest';

import type { Board, Catalogue } from '../../../../src/domain/board.js';
import { kitOf } from '../../../../src/domain/kit.js';
import type { Answer, Reason } from '../../../../src/planning/answer.js';
import { partId, pedalId } from '../../../../src/domain/quantities.js';
import { rewire, type RewireOptions } from '../../../../src/planning/rewire/rewire.js';
import {
  bankOf,
  catalogueOf,
  euros,
  listed,
  milliamps,
  partOf,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
  volts,
} from '../../../support/builders.js';
import { small, strong, quay, ownedOf, wired, planOf } from './wired-board.js';

async function reasonsOf(
  board: Board,
  catalogue: Catalogue | null,
  options: RewireOptions,
): Promise<readonly Reason[]> {
  const answer: Answer = await rewire(kitOf(board, catalogue), { ...options });
  if (answer.kind !== 'impossible') throw new Error(`a plan exists: ${JSON.stringify(answer)}`);
  return answer.reasons;
}

const id = pedalId;

describe('what a plan changes', () => {
  it('may be leads alone, where a pedal comes to another one’s output', async () => {
    const fan = partOf('fan', 0, { kind: 'chain', tails: 3 }, { price: null, stock: 0 });
    const pedals = [pedalOf('drive', 10), pedalOf('chorus', 20)];
    const board = wired(pedals, [small(1)], [quay('drive', 1)], {
      gear: { supplies: [], parts: [fan] },
      owned: ownedOf({ quay: 1 }, { fan: 1 }),
    });
    const { changes, wiring } = await planOf(board);
    expect(wiring.score.moved).toBe(0);
    expect(changes).toMatchObject({ stays: ['drive'], releads: ['drive'], moves: [], added: ['chorus'] });
    expect(changes.steps.map(({ kind }) => kind)).toEqual(
      ['mains off', 'pull', 'lay', 'mains on', 'measure', 'measure', 'mains off', 'plug', 'plug', 'mains on'], // prettier-ignore
    );
  });

  it('begins with the leads where nothing is plugged yet: there is nothing to pull from the mains', async () => {
    const { changes } = await planOf(wired([pedalOf('drive', 10)], [small(1)], []));
    expect(changes.steps.map(({ kind }) => kind)).toEqual([
      'lay',
      'mains on',
      'measure',
      'mains off',
      'plug',
      'mains on',
    ]);
  });

  it('leaves a chain in place that one more pedal comes to', async () => {
    const fan = partOf('fan', 0, { kind: 'chain', tails: 3 }, { price: null, stock: 0 });
    const pedals = [pedalOf('drive', 10), pedalOf('chorus', 20), pedalOf('phaser', 10)];
    const chain = partId('fan');
    const board = wired(pedals, [small(1)], [quay('drive', 1, { chain }), quay('chorus', 1, { chain })], {
      gear: { supplies: [], parts: [fan] },
      owned: ownedOf({ quay: 1 }, { fan: 1 }),
    });
    const { changes } = await planOf(board);
    expect(changes).toMatchObject({ stays: ['drive', 'chorus'], releads: [], added: ['phaser'] });
    expect(changes.steps.filter(({ kind }) => kind === 'pull')).toEqual([]);
    expect(changes.steps.filter(({ kind }) => kind === 'lay')).toMatchObject([
      { chained: true, feeds: [{ pedal: 'phaser' }] },
    ]);
  });

  it('keeps today’s lead where another one would do as well', async () => {
    const lead = (name: string) => partOf(name, 0, { kind: 'adapter' }, { gives: 'jack-3.5', price: null, stock: 0 });
    const board = wired(
      [pedalOf('drive', 10, { inlet: 'jack-3.5' })],
      [small(1)],
      [quay('drive', 1, { adapters: [partId('b')] })],
      {
        gear: { supplies: [], parts: [lead('a'), lead('b'), lead('c')] },
        owned: ownedOf({ quay: 1 }, { a: 1, b: 1, c: 1 }),
      },
    );
    const { wiring, changes } = await planOf(board);
    expect(wiring.feeds).toMatchObject([{ adapters: ['b'] }]);
    expect(changes.steps).toEqual([]);
  });

  it('pulls the plug of a pedal that is left without power, and counts it as moved', async () => {
    const pedals = [pedalOf('odd', 10, { accepts: listed(24) }), pedalOf('drive', 10), pedalOf('chorus', 10)];
    const board = wired(pedals, [small(2)], [quay('odd', 1), quay('drive', 2)]);
    const { changes, wiring } = await planOf(board, null, { partial: true });
    expect(wiring).toMatchObject({ unpowered: ['odd'], moved: ['odd'], score: { moved: 1 } });
    expect(changes).toMatchObject({ stays: ['drive'], moves: [], added: ['chorus'], dropped: ['odd'] });
    expect(changes.steps).toContainEqual(
      expect.objectContaining({ kind: 'pull', from: expect.objectContaining({ pedal: 'odd' }) as unknown }),
    );
  });

  it('leaves a plugged pedal plugged rather than a new one where only one can be powered', async () => {
    const pedals = [pedalOf('new', 10), pedalOf('old', 10)];
    const { wiring } = await planOf(wired(pedals, [small(1)], [quay('old', 1)]), null, { partial: true });
    expect(wiring).toMatchObject({ unpowered: ['new'], moved: [] });
  });

  it('turns a switch while nothing hangs on it', async () => {
    const pedals = [pedalOf('drive', 10, { accepts: listed(9, 18) }), pedalOf('reverb', 300)];
    const board = wired(pedals, [small(1), strong(1)], [quay('drive', 2, { millivolts: volts(18) })]);
    const { changes } = await planOf(board);
    const kinds = changes.steps.map(({ kind }) => kind);
    expect(kinds.indexOf('pull')).toBeLessThan(kinds.indexOf('set volts'));
    expect(kinds.indexOf('set volts')).toBeLessThan(kinds.indexOf('lay'));
    expect(changes.steps).toContainEqual({
      kind: 'set volts',
      place: { supply: 'quay', unit: 1, outputs: [2] },
      millivolts: 9000,
      was: 18_000,
    });
  });
});

describe('a pedal that must stay', () => {
  it('stays, though two were plugged into its output', async () => {
    const pedals = [pedalOf('a', 40), pedalOf('b', 40), pedalOf('c', 40)];
    const board = wired(pedals, [small(4)], [quay('a', 1), quay('b', 1), quay('c', 3)]);
    for (const keep of ['a', 'b']) {
      const { wiring } = await planOf(board, null, { keep: [id(keep)] });
      expect(wiring.moved).toEqual([keep === 'a' ? 'b' : 'a']);
    }
  });

  it('makes another one move', async () => {
    const pedals = [pedalOf('delay', 70), pedalOf('chorus', 70), pedalOf('reverb', 300)];
    const board = wired(pedals, [small(2), strong(2)], [quay('delay', 3), quay('chorus', 4)]);
    const { wiring } = await planOf(board, null, { keep: [id('delay')] });
    expect(wiring.moved).toEqual(['chorus']);
  });

  it('must be plugged in', async () => {
    const board = wired([pedalOf('delay', 70)], [small(1)], []);
    await expect(rewire(kitOf(board, null), { keep: [id('delay')] })).rejects.toThrow(RangeError);
  });
});

describe('what was asked for and makes it impossible', () => {
  const wall = supplyOf('wall', 20, [bankOf(1, [settingOf(9, 500)])]);
  const shop = catalogueOf([wall]);
  const full = wired([pedalOf('delay', 70), pedalOf('reverb', 300)], [small(1)], [quay('delay', 1)]);

  it('is to buy nothing', async () => {
    const [first] = await reasonsOf(full, shop, { buy: 'never' });
    expect(first).toMatchObject({ kind: 'request', requests: [{ kind: 'buy never' }], needed: 2000 });
    expect(first).toHaveProperty(
      'message',
      'nothing is to be bought. Without that there is a plan that takes 20.00 EUR',
    );
  });

  it('is the budget, which is then not told twice', async () => {
    const reasons = await reasonsOf(full, shop, { budget: euros(19.99) });
    expect(reasons).toMatchObject([{ kind: 'request', requests: [{ kind: 'budget', allowed: 1999 }], needed: 2000 }]);
    expect((await planOf(full, shop, { budget: euros(20) })).wiring.score.money).toBe(2000);
  });

  it('is no more than what the board’s own budget says', async () => {
    const poor = { ...full, policy: policyOf({ budget: euros(10) }) };
    expect(await reasonsOf(poor, shop, { budget: euros(5) })).toMatchObject([
      { kind: 'limit', limit: 'budget', needed: 2000 },
    ]);
    expect((await planOf(poor, shop, { budget: euros(20) })).wiring.score.money).toBe(2000);
  });

  it('is a pedal that is to stay on an output that cannot feed it', async () => {
    const board = wired([pedalOf('reverb', 300)], [small(1), strong(1)], [quay('reverb', 1)]);
    expect(await reasonsOf(board, null, { keep: [id('reverb')] })).toMatchObject([
      { kind: 'request', requests: [{ kind: 'keep', pedal: 'reverb', why: { rule: 'current' } }], needed: null },
    ]);
    const answer = await rewire(kitOf(board, null), { keep: [id('reverb')], partial: true });
    expect(answer.kind).toBe('impossible');
  });

  it('is each of two pedals that cannot both stay', async () => {
    const pedals = [pedalOf('delay', 70), pedalOf('chorus', 70)];
    const board = wired(pedals, [small(2)], [quay('delay', 1), quay('chorus', 1)]);
    const reasons = await reasonsOf(board, null, { keep: [id('delay'), id('chorus')] });
    expect(reasons).toMatchObject([
      { kind: 'request', requests: [{ pedal: 'delay', why: null }] },
      { kind: 'request', requests: [{ pedal: 'chorus', why: null }] },
    ]);
  });

  it('is several things together', async () => {
    const pedals = [pedalOf('delay', 150), pedalOf('reverb', 300)];
    const board = wired(pedals, [small(1), strong(1)], [quay('delay', 1), quay('reverb', 1)]);
    const reasons = await reasonsOf(board, shop, { buy: 'never', keep: [id('delay'), id('reverb')] });
    expect(reasons[0]).toMatchObject({
      kind: 'request',
      requests: [{ kind: 'keep', pedal: 'delay' }, { kind: 'keep', pedal: 'reverb' }, { kind: 'buy never' }],
    });
  });

  it('is nothing where the board is impossible anyway', async () => {
    const odd = wired([pedalOf('odd', 10, { accepts: listed(24) })], [small(1)], [quay('odd', 1)]);
    const reasons = await reasonsOf(odd, shop, { buy: 'never', budget: euros(1), keep: [id('odd')] });
    expect(reasons.map(({ kind }) => kind)).toEqual(['pedal']);
  });
});

describe('leads that are plugged today and not owned', () => {
  const fan = partOf('fan', 0, { kind: 'chain', tails: 3 }, { price: null, stock: 0 });
  const chain = partId('fan');
  const onChain = [quay('drive', 1, { chain }), quay('chorus', 1, { chain })];
  const pedals = [pedalOf('drive', 10), pedalOf('chorus', 20)];
  const described = { gear: { supplies: [], parts: [fan] } };

  it('are named where with them there is a plan', async () => {
    const [first, ...others] = await reasonsOf(wired(pedals, [small(1)], onChain, described), null, {});
    expect(first).toMatchObject({ kind: 'unowned', parts: ['fan'] });
    expect(first?.kind === 'unowned' && first.message).toContain('1 × fan (0 owned, 0 for sale)');
    expect(others.map(({ kind }) => kind)).toEqual(['together']);
  });

  it('are no reason where they would not do either', async () => {
    const odd = [...pedals, pedalOf('odd', 10, { accepts: listed(24) })];
    const reasons = await reasonsOf(wired(odd, [small(1)], onChain, described), null, {});
    expect(reasons.map(({ kind }) => kind)).not.toContain('unowned');
  });

  it('are no reason where nothing is to be bought, and they are for sale', async () => {
    const sold = catalogueOf([], [partOf('fan', 5, { kind: 'chain', tails: 3 })]);
    const reasons = await reasonsOf(wired(pedals, [small(1)], onChain), sold, { buy: 'never' });
    expect(reasons.map(({ kind }) => kind)).toEqual(['request', 'together']);
  });
});

describe('without much time', () => {
  it('says so, and needs no reason for every move', async () => {
    const pedals = [pedalOf('delay', 70), pedalOf('chorus', 70), pedalOf('reverb', 300, { startup: milliamps(350) })];
    const board = wired(pedals, [small(2), strong(1)], [quay('delay', 3), quay('chorus', 1)]);
    const answer = await rewire(kitOf(board, null), { remainingMs: () => 0 });
    if (answer.kind !== 'plan') throw new Error('there is a plan at first sight');
    expect(answer.gap).not.toBeNull();
    expect(answer.changes?.steps.length).toBeGreaterThan(0);
  });
});
