import { adapter, apart, box, fan, flip, impossible, mini, pedal, plan, type Case } from './case.js';
import { jack, part, positive, single } from './single.js';

export const polarityCases: readonly Case[] = [
  single(
    'opposite polarities do not go together',
    [pedal('A', 9, 100, positive)],
    [],
    impossible({ rule: 'polarity' }),
  ),
  single(
    'a reversing lead turns the polarity',
    [pedal('A', 9, 100, positive)],
    [flip],
    plan(
      '14.00',
      { parts: 1 },
      { parts: { flip: 1 }, feeds: { a: { polarity: 'centre-positive', parts: ['flip'], chain: null, join: null } } },
    ),
  ),
  single(
    'a pedal that agrees takes no reversing lead',
    [pedal('A', 9, 100)],
    [flip],
    plan('10.00', {}, { feeds: { a: { polarity: 'centre-negative', parts: [] } } }),
  ),
  single(
    'two reversing leads cancel out',
    [pedal('A', 9, 100, 'inlet: odd')],
    [part('x', 1, 'barrel-2.1', 'mid', 'reverses: true'), part('y', 2, 'mid', 'odd', 'reverses: true')],
    plan('13.00', { parts: 2 }, { feeds: { a: { polarity: 'centre-negative', parts: ['x', 'y'] } } }),
  ),
  single(
    'and so do not turn the polarity',
    [pedal('A', 9, 100, `inlet: odd, ${positive}`)],
    [part('x', 1, 'barrel-2.1', 'mid', 'reverses: true'), part('y', 2, 'mid', 'odd', 'reverses: true')],
    impossible(),
  ),
  single(
    'one of two may reverse',
    [pedal('A', 9, 100, `inlet: odd, ${positive}`)],
    [part('x', 1, 'barrel-2.1', 'mid'), part('y', 2, 'mid', 'odd', 'reverses: true')],
    plan('13.00', { parts: 2 }),
  ),
  {
    says: 'a polarity switch saves the lead',
    pedals: [pedal('A', 9, 100, positive)],
    supplies: [adapter('plain', 10, '9/100'), box('both', 13.99, [apart(1, '9/100', 'polarity: either')])],
    parts: [flip],
    answer: plan('13.99', {}, { feeds: { a: { supply: 'both', polarity: 'centre-positive', parts: [] } } }),
  },
  {
    says: "a polarity switch is each output's own",
    pedals: [pedal('A', 9, 100, positive), pedal('B', 9, 100)],
    supplies: [box('s', 10, [apart(2, '9/100 12/100', 'polarity: either, switch: together')])],
    answer: plan('10.00', {}, { feeds: { a: { polarity: 'centre-positive' }, b: { polarity: 'centre-negative' } } }),
  },
  {
    says: 'a polarity switch sets the whole chain',
    pedals: [pedal('A', 9, 100, positive), pedal('B', 9, 100, positive)],
    supplies: [box('s', 10, [apart(1, '9/200', 'polarity: either')], 'stock: 1')],
    parts: [fan(2), flip],
    answer: plan('18.00', { parts: 1 }, { parts: { fan: 1 } }),
  },
  {
    says: 'and the odd one takes a reversing lead',
    pedals: [pedal('A', 9, 100, positive), pedal('B', 9, 100), pedal('C', 9, 100, positive)],
    supplies: [box('s', 10, [apart(1, '9/300', 'polarity: either')], 'stock: 1')],
    parts: [fan(3), flip],
    answer: plan(
      '22.00',
      { parts: 2 },
      { parts: { fan: 1, flip: 1 }, feeds: { a: { parts: [] }, b: { parts: ['flip'] } } },
    ),
  },
  single(
    'ground is not polarity',
    [pedal('A', 9, 100, 'ground: positive')],
    [],
    plan('10.00', {}, { feeds: { a: { polarity: 'centre-negative' } } }),
  ),
];

export const plugCases: readonly Case[] = [
  single('plug and inlet must agree', [jack('A')], [], impossible({ rule: 'plug' })),
  single(
    'one adapter will do',
    [jack('A')],
    [mini],
    plan('15.00', { parts: 1 }, { feeds: { a: { parts: ['mini'] } } }),
  ),
  single(
    'adapters may be two deep, named from the supply on',
    [pedal('A', 9, 100, 'inlet: odd')],
    [part('last', 2, 'jack-3.5', 'odd'), mini],
    plan('17.00', { parts: 2 }, { feeds: { a: { parts: ['mini', 'last'] } } }),
  ),
  single(
    'and not three',
    [pedal('A', 9, 100, 'inlet: far')],
    [mini, part('x', 2, 'jack-3.5', 'odd'), part('y', 2, 'odd', 'far')],
    impossible({ rule: 'plug' }),
  ),
  single(
    'nor two and a reversing lead',
    [pedal('A', 9, 100, `inlet: odd, ${positive}`)],
    [mini, part('x', 2, 'jack-3.5', 'odd'), flip],
    impossible(),
  ),
  single(
    'an adapter works one way',
    [jack('A')],
    [part('back', 1, 'jack-3.5', 'barrel-2.1')],
    impossible({ rule: 'plug' }),
  ),
  single(
    'an adapter and a reversing lead, whichever first',
    [jack('A', positive)],
    [mini, flip],
    plan('19.00', { parts: 2 }),
  ),
  single(
    'the reversing lead may only fit behind the adapter',
    [jack('A', positive)],
    [mini, part('turn', 3, 'jack-3.5', 'jack-3.5', 'reverses: true')],
    plan('18.00', { parts: 2 }, { feeds: { a: { parts: ['mini', 'turn'] } } }),
  ),
  single(
    'the cheaper way wins, though it is longer',
    [pedal('A', 9, 100, 'inlet: odd')],
    [part('long', 9, 'barrel-2.1', 'odd'), part('x', 4, 'barrel-2.1', 'mid'), part('y', 4, 'mid', 'odd')],
    plan('18.00', { parts: 2 }),
  ),
  single(
    'at the same price the shorter way wins',
    [pedal('A', 9, 100, 'inlet: odd')],
    [part('x', 4, 'barrel-2.1', 'mid'), part('y', 4, 'mid', 'odd'), part('short', 8, 'barrel-2.1', 'odd')],
    plan('18.00', { parts: 1 }),
  ),
  single(
    'the same adapter twice takes two',
    [pedal('A', 9, 100, 'inlet: jack-3.5'), pedal('B', 9, 100, 'inlet: jack-3.5')],
    [mini],
    plan('20.00', { parts: 2 }, { parts: { mini: 2 } }),
    { supplies: [box('s', 10, [apart(2, '9/100')])] },
  ),
  single(
    'connector names are free text',
    [pedal('A', 9, 100, 'inlet: "Grandad s odd plug, no. 3"')],
    [part('x', 1, 'barrel-2.1', '"Grandad s odd plug, no. 3"')],
    plan('11.00', { parts: 1 }),
  ),
];
