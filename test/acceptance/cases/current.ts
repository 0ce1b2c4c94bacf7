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

/** So many milliamps are enough, and a microamp less is not. */
const edge = (
  says: string,
  milliamps: number,
  pedals: readonly string[],
  policy: Case['policy'] = headroom(1, 1, 1),
): readonly Case[] => {
  const less = (milliamps * 1000 - 1) / 1000;
  return [
    onOne(`${says}: ${milliamps} mA will do`, pedals, `9/${milliamps}`, policy, true),
    onOne(`${says}: ${less} mA will not`, pedals, `9/${less}`, policy, false),
  ];
};

/** 9 V pedals by their milliamps, and what else is said of them. */
const nine = (...all: readonly (readonly [milliamps: number | string, more?: string])[]): readonly string[] =>
  all.map(([milliamps, more], at) => pedal('AB'.charAt(at), 9, milliamps, more));

const usual = headroom(1.2, 2, 1);

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
  ...edge('100 mA × 1.2', 120, nine([100]), usual),
  onOne('100.001 mA × 1.2 does not fit into 120 mA', nine([100.001]), '9/120', usual, false),
  onOne('83.333 mA × 1.2 fits into 100 mA', nine([83.333]), '9/100', usual, true),
  onOne('83.334 mA × 1.2 does not fit into 100 mA', nine([83.334]), '9/100', usual, false),
  ...edge('33.3 mA × 1.1, whatever floating point makes of it', 36.63, nine([33.3]), headroom(1.1, 2, 1)),
  onOne('a factor of 1.001 counts', nine([100]), '9/100', headroom(1.001, 2, 1), false),
  ...edge('a guess is multiplied: 80 mA × 1.25 × 1.2', 120, nine([80, 'figure: guess']), { ...usual, guess: '1.25' }),
  ...edge('75 mA × 1.333', 99.975, nine([75, 'figure: guess']), { guess: '1.333' }),
  ...['label', 'manual', 'measured'].map((figure) =>
    onOne(`figure: ${figure} is not multiplied`, nine([100, `figure: ${figure}`]), '9/100', { guess: '3' }, true),
  ),
  ...edge('a guess of one draw for each voltage is multiplied as well', 120, nine(['{9: 80}', 'figure: guess'])),
  ...edge('60 + 40 mA, × 2 on a chain', 200, nine([60], [40]), usual),
  ...edge('only the guess on a chain is multiplied: 40 × 1.5 + 40', 200, nine([40, 'figure: guess'], [40]), usual),
  ...edge('sums are exact: 0.1 + 0.2', 0.3, nine([0.1], [0.2])),
  ...edge(
    '`chained` alone counts on a chain, even when it is the smaller factor',
    250,
    nine([150], [100]),
    headroom(2, 1, 1),
  ),
  onOne(
    'and `alone` alone counts for one pedal, which takes no chain lead to evade it',
    nine([150]),
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
  ...edge('a startup of 350 mA', 350, nine([100, 'startup: 350']), usual),
  onOne('no factor multiplies a startup', nine([100, 'startup: 120']), '9/120', usual, true),
  ...edge('nor does `guess`', 120, nine([80, 'startup: 120, figure: guess'])),
  ...edge('a startup below the draw relieves nobody', 100, nine([100, 'startup: 50'])),
  ...edge('on a chain those without a startup take their draw: 300 + 100', 400, nine([100, 'startup: 300'], [100])),
  ...edge('in any order', 400, nine([100], [100, 'startup: 300'])),
  ...edge('all start at once: 300 + 350', 650, nine([100, 'startup: 300'], [110, 'startup: 350'])),
  ...edge('a startup below the draw takes the draw', 401, nine([200, 'startup: 301'], [100, 'startup: 50'])),
  ...edge('others count with their guess: 300 + 100 × 1.5', 450, nine([100, 'startup: 300'], [100, 'figure: guess'])),
  ofTotals('startups count in totals: 300 + 300 fit into 600 mA', 'milliamps: 600', 'milliamps: 600', true),
  ofTotals('and not into 599.999 mA of the supply', 'milliamps: 599.999', 'milliamps: 600', false),
  ofTotals('nor of the bank', 'milliamps: 600', 'milliamps: 599.999', false),
  ofTotals('at 9 V they are 5.4 W', 'watts: 5.4', 'watts: 5.4', true),
  ofTotals('and not 5.399 W of the supply', 'watts: 5.399', 'watts: 5.4', false),
  ofTotals('nor of the bank', 'watts: 5.4', 'watts: 5.399', false),
  ofChain('a chain starts whole in 600 mA', 'milliamps: 600', true),
  ofChain('and not in 599.999 mA', 'milliamps: 599.999', false),
];
