import { apart, box, fan, impossible, pedal, plan, type Case } from './case.js';

const headroom = (alone: number, chained: number, supply: number) => ({
  headroom: `{alone: ${alone}, chained: ${chained}, supply: ${supply}}`,
});

const two = [pedal('A', 9, 100), pedal('B', 9, 100)];
/** Two pedals that fit on one unit, or else take two. */
const within = (says: string, supply: string, fits: boolean, policy?: Case['policy'], pedals = two): Case => ({
  says,
  pedals,
  supplies: [supply],
  ...(policy === undefined ? {} : { policy }),
  answer: fits ? plan('10.00', {}, { supplies: { s: 1 } }) : plan('20.00', { bricks: 2 }, { supplies: { s: 2 } }),
});
const pairOf = (total: string) => box('s', 10, [apart(2, '9/100')], `total: ${total}`);
const wide = (total: string) => box('s', 10, [apart(2, '9/200')], `total: ${total}`);
const bankOf = (total: string) => box('s', 10, [apart(2, '9/100', `total: ${total}`)]);

export const totalCases: readonly Case[] = [
  within('200 mA × 1.2 fit a total of 240 mA', pairOf('{milliamps: 240}'), true, headroom(1, 1, 1.2)),
  within('200 mA × 1.2 do not fit a total of 239.999 mA', pairOf('{milliamps: 239.999}'), false, headroom(1, 1, 1.2)),
  within("a bank's total counts the same", bankOf('{milliamps: 240}'), true, headroom(1, 1, 1.2)),
  within('and refuses the same', bankOf('{milliamps: 239.999}'), false, headroom(1, 1, 1.2)),
  within('1.8 W × 1.2 fit 2.16 W', pairOf('{watts: 2.16}'), true, headroom(1, 1, 1.2)),
  within('1.8 W × 1.2 do not fit 2.159 W', pairOf('{watts: 2.159}'), false, headroom(1, 1, 1.2)),
  within("a bank's watts fit", bankOf('{watts: 2.16}'), true, headroom(1, 1, 1.2)),
  within("a bank's watts are refused", bankOf('{watts: 2.159}'), false, headroom(1, 1, 1.2)),
  within(
    '`alone` does not count in totals',
    box('s', 10, [apart(2, '9/200')], 'total: {milliamps: 200}'),
    true,
    headroom(2, 2, 1),
  ),
  within('a guess counts multiplied: 100 + 66.666 × 1.5 is 199.999', wide('{milliamps: 199.999}'), true, undefined, [
    pedal('A', 9, 100),
    pedal('B', 9, 66.666, 'figure: guess'),
  ]),
  within('to half a microamp: 100 + 66.667 × 1.5 is 200.0005', wide('{milliamps: 200}'), false, undefined, [
    pedal('A', 9, 100),
    pedal('B', 9, 66.667, 'figure: guess'),
  ]),
  within(
    'watts are volts × milliamps at each setting',
    box('s', 10, [apart(2, '9/100 18/50', 'switch: each')], 'total: {watts: 1.8}'),
    true,
    undefined,
    [pedal('A', 9, 100), pedal('B', 18, 50)],
  ),
  within(
    'and are refused a milliwatt below',
    box('s', 10, [apart(2, '9/100 18/50', 'switch: each')], 'total: {watts: 1.799}'),
    false,
    undefined,
    [pedal('A', 9, 100), pedal('B', 18, 50)],
  ),
  within('nine microwatts over are over: 9 V × 200.001 mA', wide('{watts: 1.8}'), false, undefined, [
    pedal('A', 9, 100),
    pedal('B', 9, 100.001),
  ]),
  within(
    "a bank's total leaves the other bank alone",
    box('s', 10, [apart(1, '9/100', 'total: {milliamps: 100}'), apart(1, '9/100', 'total: {milliamps: 100}')]),
    true,
  ),
  within(
    'both totals count',
    box('s', 10, [apart(2, '9/100', 'total: {milliamps: 200}')], 'total: {milliamps: 199.999}'),
    false,
  ),
  {
    says: 'the setting may be chosen for its watts',
    pedals: [pedal('A', '[9, 12]', '{9: 100, 12: 70}')],
    supplies: [box('s', 10, [apart(1, '9/100 12/100', 'switch: each')], 'total: {watts: 0.84}')],
    answer: plan('10.00', {}, { feeds: { a: { volts: 12 } } }),
  },
  {
    says: 'a chain counts whole',
    pedals: two,
    supplies: [box('s', 10, [apart(1, '9/500')], 'total: {milliamps: 199.999}, stock: 1')],
    parts: [fan(2)],
    answer: impossible(),
  },
  {
    says: 'a total can rule out a single pedal',
    pedals: [pedal('A', 9, 100)],
    supplies: [pairOf('{milliamps: 99.999}')],
    answer: impossible({ rule: 'total' }),
  },
];
