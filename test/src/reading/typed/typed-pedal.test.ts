import { describe, expect, it, test } from 'vitest';

import type { Pedal } from '../../../../src/domain/pedal.js';
import { typedPedal } from '../../../../src/reading/typed/typed-pedal.js';
import { listed, milliamps, volts } from '../../../support/builders.js';

function pedalOf(text: string): Pedal {
  const typed = typedPedal(text, 'new');
  if (typed.kind !== 'pedal') throw new Error(typed.faults.join(' '));
  return typed.pedal;
}

const usual = { power: 'DC', polarity: 'centre-negative', inlet: 'barrel-2.1', ground: 'negative' };

test.each<[string, object]>([
  ['9 V, 300 mA, digital', { accepts: listed(9), draw: { microamps: milliamps(300) }, digital: true, assumed: usual }],
  ['9V,0.3A', { accepts: listed(9), draw: { microamps: milliamps(300) }, digital: false }],
  ['9 V, 0,3 A', { draw: { microamps: milliamps(300) } }],
  ['9-18 V; 50 mA', { accepts: { kind: 'range', from: volts(9), to: volts(18) } }],
  ['9 or 12 V, 50 mA, alone, high gain', { accepts: listed(9, 12), alone: true, highGain: true }],
  ['9 V AC, 500 mA', { power: 'AC', polarity: null, assumed: { inlet: 'barrel-2.1', ground: 'negative' } }],
  ['9V 300mA digital', { accepts: listed(9), draw: { microamps: milliamps(300) }, digital: true, assumed: usual }],
  ['9v 300 neg', { accepts: listed(9), draw: { microamps: milliamps(300) }, polarity: 'centre-negative' }],
  ['9 or 18 V, 3 W', { accepts: listed(9, 18), draw: { microamps: 333_334 } }],
  ['9 V, 2.7 W', { draw: { microamps: milliamps(300) } }],
  ['9 V, 50 mA, jack-3.5, centre-positive', { inlet: 'jack-3.5', polarity: 'centre-positive' }],
  ['9 V, 50 mA, inlet lemo, positive ground, guess', { inlet: 'lemo', ground: 'positive', figure: 'guess' }],
  ['alone, 9 V, 50 mA', { name: 'the new pedal', alone: true }],
  ['9 V, 50 mA, startup 90 mA', { startup: milliamps(90) }],
])('%s', (text, expected) => {
  expect(pedalOf(text)).toMatchObject({ id: 'new', ...expected });
});

test.each<[string, object]>([
  ['chorus 9 V 40 mA', { id: 'chorus', name: 'chorus', accepts: listed(9), digital: false, assumed: usual }],
  [
    'Moth delay, 9 V DC, 300 mA, neg',
    { id: 'moth-delay', name: 'Moth delay', polarity: 'centre-negative', digital: true },
  ],
  ['gorse drive 9v 8', { id: 'gorse-drive', highGain: true }],
  ['heath fuzz 9v 4', { highGain: true, ground: 'unknown' }],
  ['ruff tuner 9v', { draw: { microamps: milliamps(100) }, figure: 'guess' }],
])('%s, with what its name tells', (text, expected) => {
  expect(pedalOf(text)).toMatchObject(expected);
});

it('takes nothing as assumed that was said', () => {
  expect(pedalOf('9 V DC, 50 mA, centre-negative, barrel-2.1, negative ground').assumed).toEqual({});
});

describe('what is not understood', () => {
  test.each<[string, RegExp]>([
    ['9 V, 300 mA, digitl', /"digitl" is not understood\. Did you mean digital\?/],
    ['300 mA', /the volts are missing/],
    ['9 V', /the draw is missing/],
    ['12 V AC, 1 A, centre-positive', /AC has no polarity/],
    ['9 V, 100 mA, 200 mA', /said twice/],
    ['', /the volts are missing/],
    ['9 V, 50 mA, startup soon', /no current/],
    ['chorus 9 V', /^the draw is missing/],
    ['2 x chorus 9 V 40 mA', /"2 x" may be how many there are/],
    ['chorus 9 V 40 mA digitl', /"digitl" is not understood\. Did you mean digital\?/],
    ['linnet chorus 9 V 40 mA', /^That name is there already/],
    ['9 V, 50 mA, own adapter', /leave out its own adapter/],
    ['9 V, 50 mA, 6xAA', /leave out its own adapter and its batteries/],
  ])('%s', (text, fault) => {
    const typed = typedPedal(text, 'new', new Set(['linnet-chorus']));
    expect(typed.kind === 'unclear' ? typed.faults.join('\n') : 'it is understood').toMatch(fault);
  });
});
