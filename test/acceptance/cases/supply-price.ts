import { adapter, apart, box, pedal, plan, shared, type Case } from './case.js';

const two = [pedal('A', 9, 100), pedal('B', 9, 100)];

/** Two adapters for 24, or one box for 31: 7 more for a supply fewer. */
const fewer = (says: string, aim: NonNullable<Case['aim']>, supplyPrice: string, answer: Case['answer']): Case => ({
  says,
  pedals: two,
  supplies: [adapter('wall', 12, '9/100'), box('brick', 31, [apart(2, '9/100')])],
  aim,
  policy: { supplyPrice },
  answer,
});
const oneBrick = plan('31.00', {}, { supplies: { brick: 1 } });
const twoWalls = plan('24.00', { bricks: 2 }, { supplies: { wall: 2 } });

export const supplyPriceCases: readonly Case[] = [
  fewer('cost: 7.01 for a supply fewer is more than 7', 'cost', '7.01', oneBrick),
  fewer('cost: 7 for a supply fewer ties, and fewer supplies decide', 'cost', '7', oneBrick),
  fewer('cost: 6.99 for a supply fewer is less than 7', 'cost', '6.99', twoWalls),
  fewer('quiet: money counts supplies in use, too', 'quiet', '7.01', oneBrick),
  fewer('quiet: 6.99 for a supply fewer is less than 7', 'quiet', '6.99', twoWalls),
  fewer('bricks: fewer supplies come first at any price', 'bricks', '0', oneBrick),
  {
    says: 'cost: owned supplies in use count, too',
    pedals: two,
    supplies: [adapter('wall', 12, '9/100'), box('brick', 7, [apart(2, '9/100')])],
    board: 'owned: {supplies: [wall, wall]}',
    policy: { supplyPrice: '7.01' },
    answer: plan('7.00', {}, { supplies: { brick: 1 } }),
  },
  {
    says: 'cost: noise and supplies in use are weighed together: 20 + 6.99 + 3 against 24 + 6',
    pedals: [pedal('D', 9, 100, 'digital: true'), pedal('H', 9, 10, 'highGain: true')],
    supplies: [box('cheap', 20, [shared(2, '9/100')]), adapter('wall', 12, '9/100')],
    policy: { noisePrice: '6.99', supplyPrice: '3' },
    answer: plan('20.00', { exposed: 1 }, { supplies: { cheap: 1 }, exposed: ['h'] }),
  },
];
