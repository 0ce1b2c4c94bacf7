import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { WiredFeed } from '../../../src/domain/board.js';
import { kitOf } from '../../../src/domain/kit.js';
import { leadTails } from '../../../src/domain/lead-tails.js';
import { partId, pedalId, supplyId } from '../../../src/domain/quantities.js';
import { bankOf, boardOf, catalogueOf, pedalOf, settingOf, supplyOf, volts } from '../../support/builders.js';

const supplies = ['quay', 'dory'].map((id) => supplyOf(id, 10, [bankOf(6, [settingOf(9, 500)])]));
const pedals = Array.from('abcdefghij', (id) => pedalOf(id, 10));

/** A pedal by its letter on a chain at an output, or with a full stop alone: "a quay 2", "a. quay 2". */
function hung(text: string) {
  const [pedal = '', supply = '', output = ''] = text.split(' ');
  return {
    pedal: pedalId(pedal.slice(0, 1)),
    supply: supplyId(supply),
    unit: 1,
    outputs: [Number(output)],
    chain: pedal.endsWith('.') ? null : partId('fan'),
  };
}

/** The same with the number of its lead and the letter of its tail, where it has them: "a quay 2 7 c". */
function wired(text: string): WiredFeed {
  const [, , , lead, tail] = text.split(' ');
  const rest = { millivolts: volts(9), join: null, adapters: [] };
  return {
    ...{ ...hung(text), ...rest },
    ...(lead === undefined ? {} : { lead: Number(lead) }),
    ...(tail === undefined ? {} : { tail }),
  };
}

function tails(today: readonly string[], plan: readonly string[]): Readonly<Record<string, string>> {
  const kit = kitOf(boardOf(pedals, { wiring: today.map(wired) }), catalogueOf(supplies));
  return Object.fromEntries(leadTails(kit, plan.map(hung)));
}

describe('the letters of tails', () => {
  it('are given in the order of the board, to chains alone', () => {
    expect(tails([], ['a quay 1', 'b quay 1', 'c. quay 2', 'd dory 1', 'e dory 1'])).toEqual({
      ...{ a: 'a', b: 'b', d: 'a', e: 'b' },
    });
  });

  it('stay with the pedals that stay on their lead, whoever comes or goes', () => {
    const today = ['a quay 1 3 a', 'c quay 1 3 b', 'e quay 1 3 c'];
    expect(tails(today, ['a quay 1', 'b quay 1', 'c quay 1', 'e quay 1'])).toEqual({ a: 'a', b: 'd', c: 'b', e: 'c' });
    expect(tails(today, ['c quay 1', 'e quay 1'])).toEqual({ c: 'b', e: 'c' });
    // Also where the whole lead moves.
    expect(tails(today, ['a dory 4', 'c dory 4', 'e dory 4'])).toEqual({ a: 'a', c: 'b', e: 'c' });
  });

  it('of a tail that is free go to the next pedal', () => {
    const today = ['a quay 1 3 a', 'c quay 1 3 b', 'e quay 1 3 c'];
    expect(tails(today, ['b quay 1', 'c quay 1', 'e quay 1'])).toEqual({ b: 'a', c: 'b', e: 'c' });
  });

  it('go first to pedals that are on the lead already, where the file gives none', () => {
    expect(tails(['a quay 1 3', 'c quay 1 3'], ['a quay 1', 'b quay 1', 'c quay 1'])).toEqual({
      a: 'a',
      c: 'b',
      b: 'c',
    });
  });

  it('are not those of another lead', () => {
    const today = ['a quay 1 3 b', 'b quay 1 3 a', 'c quay 2 4 b', 'd quay 2 4 a'];
    expect(tails(today, ['a quay 1', 'b quay 1', 'c quay 1', 'd. quay 2'])).toEqual({ a: 'b', b: 'a', c: 'c' });
  });

  it('are never the same on one lead, and never change while a pedal stays, however often the board is re-plugged', () => {
    const step = fc.subarray(Array.from('abcdefghij'), { minLength: 2 });
    fc.assert(
      fc.property(fc.array(step, { minLength: 2, maxLength: 6 }), (steps) => {
        let today: readonly string[] = [];
        let before: Readonly<Record<string, string>> = {};
        for (const plugged of steps) {
          const now = tails(
            today,
            plugged.map((pedal) => `${pedal} quay 1`),
          );
          expect(new Set(Object.values(now)).size).toBe(plugged.length);
          const stays = plugged.filter((pedal) => pedal in before);
          for (const pedal of stays) expect(now[pedal]).toBe(before[pedal]);
          // As it is recorded: where none stays, it is another lead.
          before = now;
          today = plugged.map((pedal) => `${pedal} quay 1 1 ${now[pedal] ?? ''}`);
        }
      }),
    );
  });
});
