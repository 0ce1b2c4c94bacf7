import { kitOf } from '../../../src/domain/kit.js';
import { perCountedTier } from '../../../src/domain/counted-tiers.js';
import { describe, expect, it } from 'vitest';

import { loadoutMeasures } from '../../../src/formulation/loadout-measures.js';
import { questionOf } from '../../../src/formulation/question.js';
import type { GroundMode } from '../../../src/loadout/ground-mode.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  listed,
  partOf,
  pedalOf,
  settingOf,
  supplyOf,
  volts,
} from '../../support/builders.js';
import { loadoutIn, named, type Hanging } from './loadouts.js';

const pedals = [
  pedalOf('echo', 10, { digital: true }),
  pedalOf('loop', 11, { digital: true, highGain: true }),
  pedalOf('fuzz', 12, { highGain: true }),
  pedalOf('muff', 13, { highGain: true }),
  pedalOf('boost', 14, { accepts: listed(9, 12), prefers: volts(12) }),
  pedalOf('twin', 15, { inlet: 'jack-3.5' }),
  pedalOf('twin too', 15, { inlet: 'jack-3.5' }),
  pedalOf('high', 16, { accepts: listed(18) }),
];
const parts = [
  partOf('fan', 8, { kind: 'chain', tails: 5 }),
  partOf('mini', 5, { kind: 'adapter' }, { gives: 'jack-3.5' }),
  partOf('stack', 9, { kind: 'join', mode: 'series' }),
];
const nine = [settingOf(9, 300)];
const supplies = [
  supplyOf('apart', 20, [bankOf(4, nine, { joins: ['series'] })]),
  supplyOf('common', 20, [bankOf(4, nine, { isolated: false })]),
  supplyOf('mixed', 20, [
    bankOf(1, nine, { isolated: false, plug: 'barrel-2.5' }),
    bankOf(3, nine, { isolated: false }),
  ]),
];
const question = questionOf(kitOf(boardOf(pedals), catalogueOf(supplies, parts)), { tiers: ['cost'], partial: true });
const noisy: GroundMode | null = question.bench.modes.find(({ noise }) => noise === 'noisy') ?? null;

const measured = (supply: string, ...hanging: readonly Hanging[]) =>
  named(
    loadoutMeasures(loadoutIn(question, supply, supply === 'apart' ? null : noisy, ...hanging), question.bench),
    question,
  );

describe('a loadout', () => {
  it('counts its pedals by class and its leads by kind', () => {
    expect(measured('apart', ['fan', 'twin', 'twin too', 'boost'], 'echo')).toEqual({
      pedals: { twin: 2, boost: 1, echo: 1 },
      leads: { fan: 1, mini: 2 },
      exposed: 0,
      newlyExposed: 0,
      moved: 0,
      bricks: 1,
      sockets: 1,
      ...perCountedTier(() => 0),
      parts: 3,
      offPreferred: 1,
    });
  });

  it('counts the lead of a join', () => {
    expect(measured('apart', 'high')).toMatchObject({ leads: { stack: 1 }, parts: 1, pedals: { high: 1 } });
  });

  it('of nothing counts nothing', () => {
    const counts = { exposed: 0, newlyExposed: 0, moved: 0, bricks: 0, sockets: 0 };
    const nothing = { ...counts, ...perCountedTier(() => 0) };
    expect(measured('apart')).toEqual({ pedals: {}, leads: {}, ...nothing });
  });

  it.each<[number, string, readonly Hanging[]]>([
    [0, 'apart', ['echo', 'loop', 'fuzz', 'muff']],
    [0, 'common', ['fuzz', 'muff', 'boost']],
    [1, 'common', ['echo', 'fuzz', 'boost']],
    [2, 'common', ['echo', 'fuzz', 'muff']],
    // A pedal that is both does not expose itself.
    [0, 'common', ['loop', 'boost']],
    [1, 'common', ['loop', 'fuzz']],
    [2, 'common', ['loop', 'fuzz', 'muff']],
    [2, 'common', ['echo', 'loop', 'fuzz']],
    // Each chain on isolated outputs has a ground of its own.
    [1, 'apart', [['fan', 'echo', 'fuzz'], 'muff', 'loop']],
    [
      2,
      'apart',
      [
        ['fan', 'echo', 'fuzz'],
        ['fan', 'loop', 'muff'],
      ],
    ],
    [
      3,
      'common',
      [
        ['fan', 'echo', 'fuzz'],
        ['fan', 'loop', 'muff'],
      ],
    ],
    [1, 'common', [['fan', 'boost', 'fuzz'], 'echo']],
  ])('exposes %i of those on the grounds of %s: %j', (exposed, supply, hanging) => {
    expect(measured(supply, ...hanging).exposed).toBe(exposed);
  });
});
