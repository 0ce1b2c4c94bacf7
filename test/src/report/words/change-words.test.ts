import { describe, expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { pedalId } from '../../../../src/domain/quantities.js';
import { changeWords } from '../../../../src/report/words/change-words.js';
import { speechOf } from '../../../../src/report/words/speech.js';
import { movingPlan } from '../handouts.js';
import { moving } from '../moving.js';

const changesOf = () => {
  const { changes } = movingPlan();
  if (changes === null) throw new Error('no changes');
  return changes;
};

describe('what a plan changes, in words', () => {
  it('says of every pedal whether it stays, moves, is new or is unplugged', () => {
    const { kinds, stay, moves, added, dropped } = changesOf();
    expect(kinds.size).toBe(movingPlan().speech.board.pedals.length);
    const counted = [...kinds.values()].map((kind) => kind);
    expect(counted.filter((kind) => kind === 'stays')).toHaveLength(stay.length);
    expect(counted.filter((kind) => kind === 'moves')).toHaveLength(moves.length);
    expect(counted.filter((kind) => kind === 'is new')).toHaveLength(added.length);
    expect(dropped).toEqual(['nowhere']);
  });

  it('says from where to where and why: whole, and in short', () => {
    const { moves } = changesOf();
    expect(moves.find(({ name }) => name === 'looper')).toMatchObject({
      from: 'shared output 4, 12 V',
      to: 'shared output 4, 9 V',
      way: 'shared output 4, 12 V → 9 V',
      why: 'voltage: looper accepts 9 V; output 4 of shared (unit 1) gives 12 V.',
    });
    expect(moves.find(({ name }) => name === 'granular')).toMatchObject({
      from: 'joiner, unit 1, output 3, 9 V',
      to: 'joiner, unit 1, outputs 3 and 4, 9 V',
      way: 'joiner, unit 1, output 3 → outputs 3 and 4, 9 V',
    });
  });

  it('says whom a pedal keeps company on a chain lead', () => {
    const { board, catalogue, wiring, plan } = moving((id) => id);
    if (plan.changes === undefined) throw new Error('no changes');
    const reason = { kind: 'company', pedal: pedalId('chorus') } as const;
    const moves = plan.changes.moves.map((move) => ({ ...move, reason }));
    const words = changeWords(speechOf(kitOf(board, catalogue)), wiring, { ...plan.changes, moves });
    expect(words.moves[0]?.why).toBe('chorus is fed there by a chain lead, which takes two pedals at least.');
  });

  it('gives the entries of the board file behind all else that changes there', () => {
    const { entries } = changesOf();
    expect(entries?.texts).toEqual([
      'Take out of `wiring`: nowhere.',
      'Add what you have bought to `owned`.',
      'These entries of `wiring` are then:',
    ]);
    expect(entries?.entries).toContain('- {pedal: looper, supply: shared, unit: 1, output: 4, volts: 9}');
    expect(entries?.entries).toHaveLength(7);
  });
});
