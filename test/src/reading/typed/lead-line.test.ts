import { describe, expect, test } from 'vitest';

import { leadLine, saysLead } from '../../../../src/reading/typed/lead-line.js';

const usual = { price: null, fits: 'barrel-2.1', gives: 'barrel-2.1', reverses: false, tails: null, joins: null };

describe('what a lead does', () => {
  test.each<[string, object]>([
    ['chain of two', { name: 'chain of two', tails: 2 }],
    ['5-way chain', { name: '5-way chain', tails: 5 }],
    ['Daisy chain, 8 tails', { name: 'Daisy chain', tails: 8 }],
    ['reversing chain of 3', { name: 'reversing chain of 3', tails: 3, reverses: true }],
    ['chain of 4 3.5 mm jack', { name: 'chain of 4 3.5 mm jack', tails: 4, fits: 'jack-3.5', gives: 'jack-3.5' }],
    ['polarity flipper', { name: 'polarity flipper', reverses: true }],
    ['adapter 2.1 mm barrel to 3.5 mm jack', { name: 'adapter 2.1 mm barrel to 3.5 mm jack', gives: 'jack-3.5' }],
    ['jack lead to barrel 2.5', { name: 'jack lead to barrel 2.5', gives: 'barrel-2.5' }],
    ['adapter from usb-c', { name: 'adapter from usb-c', fits: 'usb-c' }],
    ['reversing adapter jack-3.5 to barrel-2.1', { reverses: true, fits: 'jack-3.5', gives: 'barrel-2.1' }],
    ['series lead', { name: 'series lead', joins: 'series' }],
    ['Y cable, parallel', { name: 'Y cable', joins: 'parallel' }],
  ])('%s', (text, says) => {
    expect(saysLead(text)).toBe(true);
    const name = text.split(',')[0];
    expect(leadLine(text)).toMatchObject({ kind: 'lead', count: 1, draft: { ...usual, name, ...says } });
  });
});

test.each([
  ['2 x chain of 5', 2],
  ['3× reversing lead', 3],
  ['chain of five x2', 2],
])('%s is counted, and not in its name', (text, count) => {
  expect(leadLine(text)).toMatchObject({ count, draft: { name: expect.not.stringMatching(/[x×]/) as string } });
});

test('it is told where a plug was not said', () => {
  expect(leadLine('chain of 5')).toMatchObject({ taken: ['fits', 'gives'] });
  expect(leadLine('chain of 5 2.1 mm barrel')).toMatchObject({ taken: [] });
  expect(leadLine('adapter to jack-3.5')).toMatchObject({ taken: ['fits'] });
  expect(leadLine('adapter barrel-2.1 to jack-3.5')).toMatchObject({ taken: [] });
});

test.each([
  ['daisy chain', 'Write how many pedals the chain feeds, such as chain of 5.'],
  ['chain of 1', 'Write how many pedals the chain feeds, such as chain of 5.'],
  ['3 chains of 5', 'Write how many pedals the chain feeds, such as chain of 5.'],
  ['adapter barrel-2.1 to 2.1 mm barrel', 'or what else it does'],
  ['adapter barrel-2.1 to jack-3.5 to usb-c', 'Write two plugs at the most'],
  [', chain of 5', 'Begin with what it is called'],
])('%s is not clear', (text, fault) => {
  const read = leadLine(text);
  expect(read.kind === 'unclear' ? read.faults.join(' ') : '').toContain(fault);
});

test.each(['wall adapter 9v 500', 'parallel box 2 isolated 9v 100', 'chain bank 74 Wh 5v 2400', 'adapter', 'old box'])(
  '%s is no lead',
  (text) => {
    expect(saysLead(text)).toBe(false);
  },
);
