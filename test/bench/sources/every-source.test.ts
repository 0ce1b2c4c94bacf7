import { expect, it } from 'vitest';

import { everySource } from '../../../bench/sources/every-source.js';
import { chooseAlone } from '../../../bench/loadouts-alone.js';
import { kitOf } from '../../../src/domain/kit.js';
import { everyFeed } from '../../../src/domain/plan.js';
import { Tally } from '../../support/tally.js';

it('has five power banks, five fed supplies and five batteries, which plans use where sockets are few', async () => {
  const used = new Tally();
  for (const seed of [1, 2, 3, 4]) {
    const { board, catalogue } = everySource({ pedals: 6, supplies: 40, chains: 'none', seed }, 1);
    const kinds = catalogue.supplies.map(({ source }) => source.kind);
    expect(kinds).toHaveLength(40);
    expect(kinds.filter((kind) => kind === 'charge')).toHaveLength(5);
    expect(kinds.filter((kind) => kind === 'fed')).toHaveLength(5);
    expect(catalogue.parts.filter(({ role }) => role.kind === 'battery')).toHaveLength(5);
    const answer = await chooseAlone(board, catalogue, { remainingMs: () => Infinity });
    expect(answer.kind).not.toBe('stopped');
    if (answer.kind !== 'plan') continue;
    const { supplies } = kitOf(board, catalogue);
    used.add(...everyFeed(answer.wiring).flatMap(({ supply }) => supplies.get(supply)?.source.kind ?? []));
  }
  expect(used.lacking(1, 'mains', 'battery', 'charge', 'fed')).toEqual([]);
});
