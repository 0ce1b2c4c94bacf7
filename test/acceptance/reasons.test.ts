import { describe, expect, test } from 'vitest';

import { asked } from './ask.js';
import { adapter, apart, box, pedal, shared, stack } from './cases/case.js';

const messageOf = (reason: Readonly<Record<string, unknown>>): string => String(reason['message']);

describe('an impossible case says why', () => {
  test('a pedal that only the budget rules out is not said to lack company', async () => {
    const { status, reasons } = await asked({
      pedals: [pedal('A', 9, 300), pedal('B', 9, 100)],
      supplies: [adapter('s', 10, '9/100')],
      policy: { budget: '5' },
    });
    expect(status).toBe('impossible');
    expect(reasons).toContainEqual(expect.objectContaining({ rule: 'current', pedals: ['a'] }) as unknown);
    for (const reason of reasons) expect(messageOf(reason)).not.toMatch(/company/);
  });

  test('nor is the only pedal of a board', async () => {
    const { status, reasons } = await asked({
      pedals: [pedal('A', 9, 100)],
      supplies: [adapter('s', 10, '9/100')],
      policy: { budget: '9.99' },
    });
    expect(status).toBe('impossible');
    expect(reasons).toContainEqual(expect.objectContaining({ limit: 'budget', needed: '10.00' }) as unknown);
    for (const reason of reasons) expect(messageOf(reason)).not.toMatch(/company/);
  });

  test('a pedal that nothing feeds and a budget that the others pass are both told', async () => {
    const { reasons } = await asked({
      pedals: [pedal('A', 9, 300), pedal('B', 9, 100)],
      supplies: [adapter('s', 10, '9/100')],
      policy: { budget: '5' },
    });
    expect(reasons).toContainEqual(expect.objectContaining({ kind: 'limit', limit: 'budget' }) as unknown);
  });

  test('the least that lifting a limit costs is in money, without the noise price', async () => {
    const { reasons } = await asked({
      pedals: [pedal('D', 9, 100, 'digital: true'), pedal('H', 9, 10, 'highGain: true')],
      supplies: [box('cheap', 10, [shared(2, '9/100')], 'stock: 1'), box('dear', 20, [apart(2, '9/100')])],
      policy: { budget: '5', noisePrice: '1000' },
      aim: 'quiet',
    });
    expect(reasons).toContainEqual(
      expect.objectContaining({ limit: 'budget', allowed: '5.00', needed: '10.00' }) as unknown,
    );
  });

  test('pedals whose grounds clash are named', async () => {
    const { reasons } = await asked({
      pedals: [pedal('A', 9, 10, 'ground: positive'), pedal('B', 9, 10), pedal('C', 9, 10)],
      supplies: [box('s', 10, [shared(3, '9/100')], 'stock: 1')],
    });
    const named = reasons.map(({ pedals }) => pedals);
    expect([JSON.stringify(['a', 'b']), JSON.stringify(['a', 'c'])]).toContain(JSON.stringify(named[0]));
  });

  test.each([
    ['power', pedal('A', 9, 10, 'power: AC'), adapter('s', 10, '9/100'), {}],
    ['voltage', pedal('A', 12, 10), adapter('s', 10, '9/100'), {}],
    ['current', pedal('A', 9, 101), adapter('s', 10, '9/100'), {}],
    ['startup', pedal('A', 9, 10, 'startup: 101'), adapter('s', 10, '9/100'), {}],
    ['startup', pedal('A', 9, 10, 'startup: 80'), adapter('s', 10, '9/100', 'total: {milliamps: 79}'), {}],
    ['total', pedal('A', 9, 100), adapter('s', 10, '9/100', 'total: {milliamps: 99}'), {}],
    ['polarity', pedal('A', 9, 10, 'polarity: centre-positive'), adapter('s', 10, '9/100'), {}],
    ['plug', pedal('A', 9, 10, 'inlet: jack-3.5'), adapter('s', 10, '9/100'), {}],
    ['mains', pedal('A', 9, 10), adapter('s', 10, '9/100', 'mains: {from: 100, to: 120}'), { mains: '230' }],
    ['stock', pedal('A', 9, 10), adapter('s', 10, '9/100', 'stock: 0'), {}],
    ['limit', pedal('A', 9, 10), adapter('s', 10, '9/100'), { budget: '9.99' }],
  ])('the rule `%s` is named', async (rule, one, supply, policy) => {
    const { status, reasons } = await asked({ pedals: [one], supplies: [supply], policy });
    expect(status).toBe('impossible');
    expect(reasons[0]).toMatchObject({ rule });
  });
});

describe('cautions', () => {
  test('a polarity switch is only to be set where there is one', async () => {
    const { cautions } = await asked({
      pedals: [pedal('A', 18, 80)],
      supplies: [
        box('s', 10, [apart(1, '9/100', 'joins: [series], polarity: either'), apart(1, '9/100', 'joins: [series]')]),
      ],
      parts: [stack],
    });
    const aboutSwitches = cautions.filter((caution) => caution.includes('polarity switch'));
    for (const caution of aboutSwitches) expect(caution).not.toMatch(/\b2\b/);
  });
});
