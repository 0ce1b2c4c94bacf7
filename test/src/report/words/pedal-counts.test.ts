import { describe, expect, it } from 'vitest';

import type { Pedal } from '../../../../src/domain/pedal.js';
import { kitOf } from '../../../../src/domain/kit.js';
import { speechOf } from '../../../../src/report/words/speech.js';
import { pedalCounts } from '../../../../src/report/words/pedal-counts.js';
import { boardOf, feedOf, pedalOf } from '../samples.js';

const unread: Partial<Pedal> = { polarity: 'unknown', unknown: ['polarity'] };
const readings = { 'centre-negative': [], 'centre-positive': [] };

function told(...pedals: readonly Pedal[]): string {
  const fed = pedals.filter(({ name }) => name !== 'left out');
  const feeds = fed.map(({ id, polarity }, at) => ({
    ...feedOf(id, 'quay', at + 1),
    ...(polarity === 'unknown' ? { polarity, readings } : {}),
  }));
  return pedalCounts(speechOf(kitOf(boardOf(pedals), null)), feeds, '1 supply');
}

describe('every pedal is counted by what becomes of it', () => {
  it.each([
    ['Both pedals powered from 1 supply', [pedalOf('a'), pedalOf('b')]],
    ['1 of 2 pedals powered from 1 supply', [pedalOf('a'), pedalOf('b', { name: 'left out' })]],
    [
      '4 pedals: 1 powered, 1 right for either reading, 2 places kept, from 1 supply',
      [
        pedalOf('a'),
        pedalOf('b', unread),
        pedalOf('c', { ...unread, kept: 'unread' }),
        pedalOf('d', { kept: 'later' }),
      ],
    ],
    [
      '2 pedals and 1 spare output: 1 powered, 1 place kept, 1 without power, from 1 supply',
      [pedalOf('a'), pedalOf('b', { name: 'left out' }), pedalOf('spare-1', { kept: 'spare' })],
    ],
  ])('%s', (text, pedals) => {
    expect(told(...pedals)).toBe(text);
  });
});
