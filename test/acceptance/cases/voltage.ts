import { adapter, apart, box, fan, impossible, pedal, plan, sharing, type Case } from './case.js';

const voltage = { rule: 'voltage' };
/** One pedal and one adapter of 10.00. */
const one = (says: string, of: string, from: string, answer: Case['answer'], more: Partial<Case> = {}): Case => ({
  says,
  pedals: [of],
  supplies: [from],
  answer,
  ...more,
});
/** A pedal of 100 mA on an adapter: the volts that it gets there, or the rule against it. */
const at = (says: string, volts: string, settings: string, ends: number | 'voltage' | 'current', more = ''): Case => {
  const [accepts = '', milliamps = '100'] = volts.split(' of ');
  const holds = settings.split('/').length < 3;
  return one(
    says,
    pedal('A', accepts, milliamps, more),
    adapter('s', 10, settings, holds ? '' : 'regulated: false'),
    typeof ends === 'number' ? plan('10.00', {}, { feeds: { a: { volts: ends } } }) : impossible({ rule: ends }),
  );
};

const range = '{from: 9, to: 18}';

export const voltageCases: readonly Case[] = [
  at('a listed voltage will do', '[9, 12, 18]', '12/100', 12),
  at('what is not listed will not', '[9, 12]', '10/100', 'voltage'),
  at('a range includes its lower end', range, '9/100', 9),
  at('a range excludes a millivolt below', range, '8.999/100', 'voltage'),
  at('a range includes its upper end', range, '18/100', 18),
  at('a range excludes a millivolt above', range, '18.001/100', 'voltage'),
  at('a range includes what lies between', range, '13.337/100', 13.337),
  at('9.6 V is 9.6 V', '9.6', '9.6/100', 9.6),
  at('9.6 V is not 9.601 V', '9.6', '9.601/100', 'voltage'),
  at('maxVolts never makes a setting acceptable', '9', '12/100', 'voltage', 'maxVolts: 18'),
  at('nor does it of an unregulated output', '9', '12/100/14', 'voltage', 'maxVolts: 18'),
  at('open-circuit volts may reach maxVolts', '9', '9/100/13.5', 9, 'maxVolts: 13.5'),
  at('open-circuit volts may not pass maxVolts', '9', '9/100/13.501', 'voltage', 'maxVolts: 13.5'),
  at('open-circuit volts count without maxVolts', '9', '9/100/9.001', 'voltage'),
  at('an unregulated output that holds its volts is as good', '9', '9/100/9', 9),
  at('open-circuit volts may be another listed voltage', '[9, 12]', '9/100/12', 9),
  at('a list is not a range', '[9, 12]', '9/100/11.999', 'voltage'),
  at('open-circuit volts may reach the end of a range', range, '12/100/18', 12),
  at('open-circuit volts may not pass the end of a range', range, '12/100/18.001', 'voltage'),
  at('unless maxVolts says so', range, '12/100/18.001', 12, 'maxVolts: 18.001'),
  at('a map of draws narrows the volts to its keys', `${range} of {9: 100, 18: 60}`, '12/500', 'voltage'),
  at('and gives the draw at each', `${range} of {9: 100, 18: 60}`, '18/60', 18),
  at('and not the draw of another', `${range} of {9: 100, 18: 60}`, '9/99.999', 'current'),
  at('open-circuit volts are narrowed as well', `${range} of {9: 100}`, '9/100/12', 'voltage'),
  at('a map cannot widen the volts', '[9, 12] of {9: 100, 18: 60}', '18/500', 'voltage'),
  one(
    'the setting is chosen by the draw at its volts',
    pedal('A', '[9, 12]', '{9: 300, 12: 230}'),
    box('s', 10, [apart(1, '9/299.999 12/230', 'switch: each')]),
    plan('10.00', {}, { feeds: { a: { volts: 12, outputs: [1] } } }),
  ),
  at('a regulated supply needs no maxVolts', '9', '9/100', 9, 'maxVolts: 9'),
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
  ...sharing(
    { pedals: [acPedal('A'), acPedal('B')], parts: [fan(5)] },
    [
      'AC pedals are never chained',
      plan('20.00', { bricks: 2 }, { supplies: { s: 2 } }),
      { supplies: [ac('s', '{volts: 9, milliamps: 1000}')] },
    ],
    [
      'AC pedals are not even chained when that is the only way',
      impossible(),
      { supplies: [ac('s', '{volts: 9, milliamps: 1000}', 'stock: 1, ')] },
    ],
  ),
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
