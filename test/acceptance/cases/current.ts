import { adapter, apart, box, fan, flip, impossible, pair, pedal, plan, stack, type Case } from './case.js';

const current = { rule: 'current' };
const headroom = (alone: number, chained: number, supply: number) => ({
  headroom: `{alone: ${alone}, chained: ${chained}, supply: ${supply}}`,
});

/** Pedals, one adapter of 10.00 of which there is one, and a chain lead of 8.00. */
const onOne = (
  says: string,
  pedals: readonly string[],
  settings: string,
  policy: Case['policy'],
  fits: boolean,
): Case => ({
  says,
  pedals,
  supplies: [adapter('s', 10, settings, 'stock: 1')],
  parts: [fan(5), flip, stack, pair],
  ...(policy === undefined ? {} : { policy }),
  answer: !fits ? impossible() : pedals.length === 1 ? plan('10.00') : plan('18.00', { parts: 1 }),
});

/** Two pedals that take 300 mA each at switch-on, and one supply with a total of its own and of its one bank. */
const ofTotals = (says: string, ofSupply: string, ofBank: string, fits: boolean): Case => ({
  says,
  pedals: [pedal('A', 9, 100, 'startup: 300'), pedal('B', 9, 100, 'startup: 300')],
  supplies: [box('s', 10, [apart(2, '9/300', `total: {${ofBank}}`)], `total: {${ofSupply}}, stock: 1`)],
  policy: headroom(1, 1, 1.2),
  answer: fits ? plan('10.00') : impossible(),
});

/** The same two on one chain, of a supply with a total. */
const ofChain = (says: string, total: string, fits: boolean): Case => ({
  says,
  pedals: [pedal('A', 9, 100, 'startup: 300'), pedal('B', 9, 100, 'startup: 300')],
  supplies: [box('s', 10, [apart(1, '9/600')], `total: {${total}}, stock: 1`)],
  parts: [fan(2)],
  policy: headroom(1, 1, 1.2),
  answer: fits ? plan('18.00', { parts: 1 }) : impossible(),
});

export const currentCases: readonly Case[] = [
  onOne('100 mA × 1.2 fits into 120 mA', [pedal('A', 9, 100)], '9/120', headroom(1.2, 2, 1), true),
  onOne('100 mA × 1.2 does not fit into 119.999 mA', [pedal('A', 9, 100)], '9/119.999', headroom(1.2, 2, 1), false),
  onOne('100.001 mA × 1.2 does not fit into 120 mA', [pedal('A', 9, 100.001)], '9/120', headroom(1.2, 2, 1), false),
  onOne('83.333 mA × 1.2 fits into 100 mA', [pedal('A', 9, 83.333)], '9/100', headroom(1.2, 2, 1), true),
  onOne('83.334 mA × 1.2 does not fit into 100 mA', [pedal('A', 9, 83.334)], '9/100', headroom(1.2, 2, 1), false),
  onOne(
    '33.3 mA × 1.1 fits into 36.63 mA, whatever floating point makes of it',
    [pedal('A', 9, 33.3)],
    '9/36.63',
    headroom(1.1, 2, 1),
    true,
  ),
  onOne('a factor of 1.001 counts', [pedal('A', 9, 100)], '9/100', headroom(1.001, 2, 1), false),
  onOne(
    'a guess is multiplied: 80 mA × 1.25 × 1.2 fits into 120 mA',
    [pedal('A', 9, 80, 'figure: guess')],
    '9/120',
    { ...headroom(1.2, 2, 1), guess: '1.25' },
    true,
  ),
  onOne(
    'and does not fit into 119.999 mA',
    [pedal('A', 9, 80, 'figure: guess')],
    '9/119.999',
    { ...headroom(1.2, 2, 1), guess: '1.25' },
    false,
  ),
  onOne(
    '75 mA × 1.333 fits into 99.975 mA',
    [pedal('A', 9, 75, 'figure: guess')],
    '9/99.975',
    { guess: '1.333' },
    true,
  ),
  onOne(
    '75 mA × 1.333 does not fit into 99.974 mA',
    [pedal('A', 9, 75, 'figure: guess')],
    '9/99.974',
    { guess: '1.333' },
    false,
  ),
  onOne('a label is not multiplied', [pedal('A', 9, 100, 'figure: label')], '9/100', { guess: '3' }, true),
  onOne('a manual is not multiplied', [pedal('A', 9, 100, 'figure: manual')], '9/100', { guess: '3' }, true),
  onOne('a measured figure is not multiplied', [pedal('A', 9, 100, 'figure: measured')], '9/100', { guess: '3' }, true),
  onOne(
    'a guess of one draw for each voltage is multiplied as well',
    [pedal('A', 9, '{9: 80}', 'figure: guess')],
    '9/119.999',
    undefined,
    false,
  ),
  onOne(
    '60 + 40 mA, × 2 on a chain, fit into 200 mA',
    [pedal('A', 9, 60), pedal('B', 9, 40)],
    '9/200',
    headroom(1.2, 2, 1),
    true,
  ),
  onOne('and not into 199.999 mA', [pedal('A', 9, 60), pedal('B', 9, 40)], '9/199.999', headroom(1.2, 2, 1), false),
  onOne(
    'only the guess on a chain is multiplied: 40 × 1.5 + 40',
    [pedal('A', 9, 40, 'figure: guess'), pedal('B', 9, 40)],
    '9/200',
    headroom(1.2, 2, 1),
    true,
  ),
  onOne(
    'and it is multiplied',
    [pedal('A', 9, 40, 'figure: guess'), pedal('B', 9, 40)],
    '9/199.999',
    headroom(1.2, 2, 1),
    false,
  ),
  onOne(
    'sums are exact: 0.1 + 0.2 fit into 0.3 mA',
    [pedal('A', 9, 0.1), pedal('B', 9, 0.2)],
    '9/0.3',
    undefined,
    true,
  ),
  onOne(
    '`chained` alone counts on a chain, even when it is the smaller factor',
    [pedal('A', 9, 150), pedal('B', 9, 100)],
    '9/250',
    headroom(2, 1, 1),
    true,
  ),
  onOne(
    'and `alone` alone counts for one pedal, which takes no chain lead to evade it',
    [pedal('A', 9, 150)],
    '9/250',
    headroom(2, 1, 1),
    false,
  ),
  {
    says: 'a chain draws what its pedals draw at its volts',
    pedals: [pedal('A', '[9, 12]', '{9: 100, 12: 60}'), pedal('B', '[9, 12]', '{9: 50, 12: 40}')],
    supplies: [box('s', 10, [apart(1, '9/299.999 12/200', 'switch: each')], 'stock: 1')],
    parts: [fan(2)],
    policy: headroom(1.2, 2, 1),
    answer: plan('18.00', { parts: 1 }, { feeds: { a: { volts: 12 }, b: { volts: 12 } } }),
  },
  {
    says: 'the reason names the rule',
    pedals: [pedal('A', 9, 100)],
    supplies: [adapter('s', 10, '9/119.999')],
    policy: headroom(1.2, 2, 1),
    answer: impossible({ ...current, pedals: ['a'] }),
  },
];

export const startupCases: readonly Case[] = [
  onOne(
    'a startup of 350 mA fits into 350 mA',
    [pedal('A', 9, 100, 'startup: 350')],
    '9/350',
    headroom(1.2, 2, 1),
    true,
  ),
  onOne(
    'a startup of 350 mA does not fit into 349.999 mA',
    [pedal('A', 9, 100, 'startup: 350')],
    '9/349.999',
    headroom(1.2, 2, 1),
    false,
  ),
  onOne('no factor multiplies a startup', [pedal('A', 9, 100, 'startup: 120')], '9/120', headroom(1.2, 2, 1), true),
  onOne(
    '`guess` does not multiply a startup',
    [pedal('A', 9, 80, 'startup: 120, figure: guess')],
    '9/120',
    undefined,
    true,
  ),
  onOne('a startup below the draw relieves nobody', [pedal('A', 9, 100, 'startup: 50')], '9/99.999', undefined, false),
  onOne(
    'on a chain those without a startup take their draw: 300 + 100 fit into 400 mA',
    [pedal('A', 9, 100, 'startup: 300'), pedal('B', 9, 100)],
    '9/400',
    headroom(1, 1, 1),
    true,
  ),
  onOne(
    'and not into 399.999 mA',
    [pedal('A', 9, 100, 'startup: 300'), pedal('B', 9, 100)],
    '9/399.999',
    headroom(1, 1, 1),
    false,
  ),
  onOne(
    'the order of the pedals does not matter',
    [pedal('B', 9, 100), pedal('A', 9, 100, 'startup: 300')],
    '9/399.999',
    headroom(1, 1, 1),
    false,
  ),
  onOne(
    'all start at once: 300 + 350 fit into 650 mA',
    [pedal('A', 9, 100, 'startup: 300'), pedal('B', 9, 110, 'startup: 350')],
    '9/650',
    undefined,
    true,
  ),
  onOne(
    'and not into 649.999 mA',
    [pedal('A', 9, 100, 'startup: 300'), pedal('B', 9, 110, 'startup: 350')],
    '9/649.999',
    undefined,
    false,
  ),
  onOne(
    'a startup below the draw takes the draw: 301 + 100 are too much for 400.999 mA',
    [pedal('A', 9, 200, 'startup: 301'), pedal('B', 9, 100, 'startup: 50')],
    '9/400.999',
    undefined,
    false,
  ),
  onOne(
    'and fit a step higher',
    [pedal('A', 9, 200, 'startup: 301'), pedal('B', 9, 100, 'startup: 50')],
    '9/401',
    undefined,
    true,
  ),
  onOne(
    'the others count with their guess: 300 + 100 × 1.5',
    [pedal('A', 9, 100, 'startup: 300'), pedal('B', 9, 100, 'figure: guess')],
    '9/450',
    undefined,
    true,
  ),
  onOne(
    'and are refused a step below',
    [pedal('A', 9, 100, 'startup: 300'), pedal('B', 9, 100, 'figure: guess')],
    '9/449.999',
    undefined,
    false,
  ),
  ofTotals('startups count in totals: 300 + 300 fit into 600 mA', 'milliamps: 600', 'milliamps: 600', true),
  ofTotals('and not into 599.999 mA of the supply', 'milliamps: 599.999', 'milliamps: 600', false),
  ofTotals('nor of the bank', 'milliamps: 600', 'milliamps: 599.999', false),
  ofTotals('at 9 V they are 5.4 W', 'watts: 5.4', 'watts: 5.4', true),
  ofTotals('and not 5.399 W of the supply', 'watts: 5.399', 'watts: 5.4', false),
  ofTotals('nor of the bank', 'watts: 5.4', 'watts: 5.399', false),
  ofChain('a chain starts whole in 600 mA', 'milliamps: 600', true),
  ofChain('and not in 599.999 mA', 'milliamps: 599.999', false),
];
