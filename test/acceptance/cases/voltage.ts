import { adapter, apart, box, fan, impossible, pedal, plan, type Case } from './case.js';

const voltage = { rule: 'voltage' };
/** One pedal and one adapter of 10.00. */
const one = (says: string, of: string, from: string, answer: Case['answer'], more: Partial<Case> = {}): Case => ({
  says,
  pedals: [of],
  supplies: [from],
  answer,
  ...more,
});
const unregulated = 'regulated: false';

export const voltageCases: readonly Case[] = [
  one(
    'a listed voltage will do',
    pedal('A', '[9, 12, 18]', 100),
    adapter('s', 10, '12/100'),
    plan('10.00', {}, { feeds: { a: { volts: 12 } } }),
  ),
  one('what is not listed will not', pedal('A', '[9, 12]', 100), adapter('s', 10, '10/100'), impossible(voltage)),
  one('a range includes its lower end', pedal('A', '{from: 9, to: 18}', 100), adapter('s', 10, '9/100'), plan('10.00')),
  one(
    'a range excludes a millivolt below',
    pedal('A', '{from: 9, to: 18}', 100),
    adapter('s', 10, '8.999/100'),
    impossible(voltage),
  ),
  one(
    'a range includes its upper end',
    pedal('A', '{from: 9, to: 18}', 100),
    adapter('s', 10, '18/100'),
    plan('10.00'),
  ),
  one(
    'a range excludes a millivolt above',
    pedal('A', '{from: 9, to: 18}', 100),
    adapter('s', 10, '18.001/100'),
    impossible(voltage),
  ),
  one(
    'a range includes what lies between',
    pedal('A', '{from: 9, to: 18}', 100),
    adapter('s', 10, '13.337/100'),
    plan('10.00', {}, { feeds: { a: { volts: 13.337 } } }),
  ),
  one(
    '9.6 V is 9.6 V',
    pedal('A', 9.6, 100),
    adapter('s', 10, '9.6/100'),
    plan('10.00', {}, { feeds: { a: { volts: 9.6 } } }),
  ),
  one('9.6 V is not 9.601 V', pedal('A', 9.6, 100), adapter('s', 10, '9.601/100'), impossible(voltage)),
  one(
    'maxVolts never makes a setting acceptable',
    pedal('A', 9, 100, 'maxVolts: 18'),
    adapter('s', 10, '12/100'),
    impossible(voltage),
  ),
  one(
    'nor does it of an unregulated output',
    pedal('A', 9, 100, 'maxVolts: 18'),
    adapter('s', 10, '12/100/14', unregulated),
    impossible(voltage),
  ),
  one(
    'open-circuit volts may reach maxVolts',
    pedal('A', 9, 100, 'maxVolts: 13.5'),
    adapter('s', 10, '9/100/13.5', unregulated),
    plan('10.00'),
  ),
  one(
    'open-circuit volts may not pass maxVolts',
    pedal('A', 9, 100, 'maxVolts: 13.5'),
    adapter('s', 10, '9/100/13.501', unregulated),
    impossible(voltage),
  ),
  one(
    'open-circuit volts count without maxVolts',
    pedal('A', 9, 100),
    adapter('s', 10, '9/100/9.001', unregulated),
    impossible(voltage),
  ),
  one(
    'an unregulated output that holds its volts is as good',
    pedal('A', 9, 100),
    adapter('s', 10, '9/100/9', unregulated),
    plan('10.00'),
  ),
  one(
    'open-circuit volts may be another listed voltage',
    pedal('A', '[9, 12]', 100),
    adapter('s', 10, '9/100/12', unregulated),
    plan('10.00', {}, { feeds: { a: { volts: 9 } } }),
  ),
  one(
    'a list is not a range',
    pedal('A', '[9, 12]', 100),
    adapter('s', 10, '9/100/11.999', unregulated),
    impossible(voltage),
  ),
  one(
    'open-circuit volts may reach the end of a range',
    pedal('A', '{from: 9, to: 18}', 100),
    adapter('s', 10, '12/100/18', unregulated),
    plan('10.00'),
  ),
  one(
    'open-circuit volts may not pass the end of a range',
    pedal('A', '{from: 9, to: 18}', 100),
    adapter('s', 10, '12/100/18.001', unregulated),
    impossible(voltage),
  ),
  one(
    'unless maxVolts says so',
    pedal('A', '{from: 9, to: 18}', 100, 'maxVolts: 18.001'),
    adapter('s', 10, '12/100/18.001', unregulated),
    plan('10.00'),
  ),
  one(
    'a map of draws narrows the volts to its keys',
    pedal('A', '{from: 9, to: 18}', '{9: 100, 18: 60}'),
    adapter('s', 10, '12/500'),
    impossible(voltage),
  ),
  one(
    'and gives the draw at each',
    pedal('A', '{from: 9, to: 18}', '{9: 100, 18: 60}'),
    adapter('s', 10, '18/60'),
    plan('10.00'),
  ),
  one(
    'and not the draw of another',
    pedal('A', '{from: 9, to: 18}', '{9: 100, 18: 60}'),
    adapter('s', 10, '9/99.999'),
    impossible({ rule: 'current' }),
  ),
  one(
    'open-circuit volts are narrowed as well',
    pedal('A', '{from: 9, to: 18}', '{9: 100}'),
    adapter('s', 10, '9/100/12', unregulated),
    impossible(voltage),
  ),
  one(
    'a map cannot widen the volts',
    pedal('A', '[9, 12]', '{9: 100, 18: 60}'),
    adapter('s', 10, '18/500'),
    impossible(voltage),
  ),
  one(
    'the setting is chosen by the draw at its volts',
    pedal('A', '[9, 12]', '{9: 300, 12: 230}'),
    box('s', 10, [apart(1, '9/299.999 12/230', 'switch: each')]),
    plan('10.00', {}, { feeds: { a: { volts: 12, outputs: [1] } } }),
  ),
  one(
    'a regulated supply needs no maxVolts',
    pedal('A', 9, 100, 'maxVolts: 9'),
    adapter('s', 10, '9/100'),
    plan('10.00'),
  ),
];

const ac = (id: string, settings: string, more = ''): string =>
  `- {id: ${id}, name: ${id}, price: 10, ${more}banks: [{outputs: 1, isolated: true, power: AC, plug: barrel-2.1, settings: [${settings}]}]}`;
const acPedal = (name: string, more = ''): string => `- {name: ${name}, power: AC, volts: 9, milliamps: 100${more}}`;

export const powerCases: readonly Case[] = [
  one(
    'an AC pedal hangs on an AC output and has no polarity',
    acPedal('A'),
    ac('s', '{volts: 9, milliamps: 100}'),
    plan('10.00', {}, { feeds: { a: { polarity: null, volts: 9 } } }),
  ),
  one('an AC pedal refuses a DC output', acPedal('A'), adapter('s', 10, '9/100'), impossible({ rule: 'power' })),
  one(
    'a DC pedal refuses an AC output',
    pedal('A', 9, 100),
    ac('s', '{volts: 9, milliamps: 100}'),
    impossible({ rule: 'power' }),
  ),
  one('AC volts must agree too', acPedal('A'), ac('s', '{volts: 9.001, milliamps: 100}'), impossible(voltage)),
  one(
    'AC milliamps must suffice too',
    acPedal('A'),
    ac('s', '{volts: 9, milliamps: 99.999}'),
    impossible({ rule: 'current' }),
  ),
  one(
    'an unregulated AC output shows its open-circuit volts',
    acPedal('A'),
    ac('s', '{volts: 9, milliamps: 100, openCircuitVolts: 11}', 'regulated: false, '),
    impossible(voltage),
  ),
  one(
    'a reversing lead does nothing to AC',
    acPedal('A', ', inlet: jack-3.5'),
    ac('s', '{volts: 9, milliamps: 100}'),
    plan('11.00', { parts: 1 }, { feeds: { a: { polarity: null, parts: ['turn'] } } }),
    {
      parts: ['- {id: turn, name: turn, price: 1, fits: barrel-2.1, gives: jack-3.5, reverses: true}'],
    },
  ),
  {
    says: 'AC pedals are never chained',
    pedals: [acPedal('A'), acPedal('B')],
    supplies: [ac('s', '{volts: 9, milliamps: 1000}')],
    parts: [fan(5)],
    answer: plan('20.00', { bricks: 2 }, { supplies: { s: 2 } }),
  },
  {
    says: 'AC pedals are not even chained when that is the only way',
    pedals: [acPedal('A'), acPedal('B')],
    supplies: [ac('s', '{volts: 9, milliamps: 1000}', 'stock: 1, ')],
    parts: [fan(5)],
    answer: impossible(),
  },
  {
    says: 'one supply may have both',
    pedals: [acPedal('A'), pedal('B', 9, 100)],
    supplies: [
      box('s', 10, [
        apart(1, '9/100'),
        '{outputs: 1, isolated: true, power: AC, plug: barrel-2.1, settings: [{volts: 9, milliamps: 100}]}',
      ]),
    ],
    answer: plan('10.00', {}, { feeds: { a: { outputs: [2], polarity: null }, b: { outputs: [1] } } }),
  },
];

const nineAndTwelve = [pedal('A', 9, 100), pedal('B', 12, 100)];

export const settingCases: readonly Case[] = [
  {
    says: 'a bank switched together gives one setting',
    pedals: nineAndTwelve,
    supplies: [box('s', 10, [apart(2, '9/100 12/100', 'switch: together')])],
    answer: plan('20.00', { bricks: 2 }),
  },
  {
    says: 'outputs switched each give what each pedal needs',
    pedals: nineAndTwelve,
    supplies: [box('s', 10, [apart(2, '9/100 12/100', 'switch: each')])],
    answer: plan('10.00'),
  },
  {
    says: 'banks are switched apart',
    pedals: nineAndTwelve,
    supplies: [
      box('s', 10, [apart(2, '9/100 12/100', 'switch: together'), apart(1, '9/100 12/100', 'switch: together')]),
    ],
    answer: plan('10.00'),
  },
  {
    says: 'a bank switched together settles on what all accept, preferred or not',
    pedals: [pedal('A', '[9, 12]', 100, 'prefers: 9'), pedal('B', 12, 100)],
    supplies: [box('s', 10, [apart(2, '9/100 12/100', 'switch: together')])],
    answer: plan('10.00', { offPreferred: 1 }, { feeds: { a: { volts: 12 }, b: { volts: 12 } } }),
  },
  {
    says: 'an output has one setting for its whole chain',
    pedals: nineAndTwelve,
    supplies: [box('s', 10, [apart(1, '9/500 12/500', 'switch: each')], 'stock: 1')],
    parts: [fan(5)],
    answer: impossible(),
  },
  {
    says: 'a chain gathers those that agree on some volts',
    pedals: [pedal('A', '[9, 12]', 100), pedal('B', '[12, 18]', 100)],
    supplies: [box('s', 10, [apart(1, '9/500 12/500 18/500', 'switch: each')], 'stock: 1')],
    parts: [fan(5)],
    answer: plan('18.00', { parts: 1 }, { feeds: { a: { volts: 12, chain: 'fan' }, b: { volts: 12, chain: 'fan' } } }),
  },
];
