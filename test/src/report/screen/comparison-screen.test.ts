import { kitOf } from '../../../../src/domain/kit.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { Comparison } from '../../../../src/planning/compare/comparison.js';
import { compare } from '../../../../src/planning/compare/compare.js';
import { supplyId } from '../../../../src/domain/quantities.js';
import { comparisonJson } from '../../../../src/report/json/comparison-codec.js';
import { comparisonText } from '../../../../src/report/screen/comparison-screen.js';
import { widthOf } from '../../../../src/report/screen/layout.js';
import { euros } from '../../../support/builders.js';
import { trio } from '../trio.js';

const { board, shop } = trio;
const asked = [{ raft: 1, dory: 1 }, { quay: 1, dory: 2 }, { dory: 2 }].map(
  (units) => new Map(Object.entries(units).map(([id, count]) => [supplyId(id), count])),
);

const comparison: Comparison = await compare(kitOf(board, shop), { best: 3, asked });
const plain = { width: 80, colour: false };

describe('a comparison on a screen', () => {
  it('has a row an option with all that is bought, what it would take, and what else nothing beats', () => {
    expect(comparisonText(kitOf(board, shop), comparison, plain)).toBe(`Trio: purchases compared
The 3 best purchases at Test shop, and 2 that you asked for. Best is what costs
least, with 20.00 EUR counted for each exposed pedal; then what takes fewer
supplies.
Proven best, one after the other; purchases that only add to one of these are
left out.

Side by side
────────────
     Choice                      Price  Exposed  Supplies  Leads  Spare  Fullest
  1  Best, quietest          36.00 EUR        0         3      0      0     67 %
       3 × dory              36.00 EUR
  2  Cheapest with none      42.00 EUR        0         2      0      2     67 %
     exposed, 2 supplies
       1 × raft              30.00 EUR
       1 × dory              12.00 EUR
       (asked for)
  3  Next best               60.00 EUR        0         2      0      5     67 %
       2 × raft              60.00 EUR
  –  Asked for              114.00 EUR        0         1      0      3     67 %
       1 × quay              90.00 EUR
       2 × dory              24.00 EUR
       (not needed: 2 × dory)
  –  Asked for               24.00 EUR        -         -      -      -        -
       2 × dory              24.00 EUR
       (fails)

  Quietest: the cheapest of those with the fewest exposed pedals. Exposed:
  high-gain pedals that share a ground with a digital one. Supplies: in use,
  owned ones too; each on the mains takes a socket. Leads: chain leads, join
  leads and adapters in use. Spare: outputs that stay free. Fullest: the output
  nearest to its limit, reserve included.

What it would take to be the best
─────────────────────────────────
  • Option 2 would be the best at 36.00 EUR or less for all of it: 6.00 EUR
    below its price.
  • 2 × dory cannot power the board: echo, fuzz and drive: each of these 3
    pedals can be fed, and all but any one of them, but not all at once.
    Together with 1 × dory it can: 36.00 EUR for all of it.

What else nothing beats
───────────────────────
  On price, exposed pedals and supplies in use at once. Whatever is not here is
  beaten by one of these, or of those above.
  30.00 EUR  2 exposed  1 supply  1 × raft
  90.00 EUR  0 exposed  1 supply  1 × quay

Before you plug anything in
───────────────────────────
  This shows no wiring. The plan of the best says what goes where, and what is
  to be read, set and measured first.
`);
  });

  it('has choices that differ in what they give, who may hum, and what is over the budget', async () => {
    const poor = { ...board, policy: { ...board.policy, budget: euros(40) } };
    const compared = await compare(kitOf(poor, shop), { asked });
    const text = comparisonText(kitOf(poor, shop), compared, plain);
    expect(text).not.toContain('What else nothing beats');
    expect(text.slice(0, text.indexOf('\nWhat it would take'))).toBe(`Trio: purchases compared
4 choices at Test shop that differ in what they give, and 2 that you asked for.
The budget is 40.00 EUR: what is over it is told. Best is what costs least, with
20.00 EUR counted for each exposed pedal; then what takes fewer supplies.
Proven: nothing beats any of these on price, exposed pedals and supplies in use
at once; there are no others.

Side by side
────────────
     Choice                      Price  Exposed  Supplies  Leads  Spare  Fullest
  1  Best, quietest          36.00 EUR        0         3      0      0     67 %
       3 × dory              36.00 EUR
  2  Cheapest with none      42.00 EUR        0         2      0      2     67 %
     exposed, 2 supplies
       1 × raft              30.00 EUR
       1 × dory              12.00 EUR
       (asked for)
       (2.00 EUR over the budget)
  3  Fewest supplies,        30.00 EUR        2         1      0      1     67 %
     cheapest
       1 × raft              30.00 EUR
  4  Cheapest with none      90.00 EUR        0         1      0      1     67 %
     exposed, 1 supply
       1 × quay              90.00 EUR
       (50.00 EUR over the budget)
  –  Asked for              114.00 EUR        0         1      0      3     67 %
       1 × quay              90.00 EUR
       2 × dory              24.00 EUR
       (not needed: 2 × dory)
       (74.00 EUR over the budget)
  –  Asked for               24.00 EUR        -         -      -      -        -
       2 × dory              24.00 EUR
       (fails)

  Quietest: the cheapest of those with the fewest exposed pedals. Fewest
  supplies: the cheapest of those. Exposed: high-gain pedals that share a ground
  with a digital one. Supplies: in use, owned ones too; each on the mains takes
  a socket. Leads: chain leads, join leads and adapters in use. Spare: outputs
  that stay free. Fullest: the output nearest to its limit, reserve included.

Who may hum
───────────
  High gain on one ground with digital will probably whine or hum.
  • Option 3: fuzz beside echo; drive beside echo.
`);
  });

  it('is as wide as the screen at the most, in every width and without Unicode', () => {
    fc.assert(
      fc.property(fc.integer({ min: 60, max: 160 }), fc.boolean(), (width, unicode) => {
        const lines = comparisonText(kitOf(board, shop), comparison, { width, colour: false, unicode }).split('\n');
        expect(Math.max(...lines.map(widthOf))).toBeLessThanOrEqual(Math.max(60, width));
        if (!unicode) expect(lines.join('')).toMatch(/^[\x20-\x7e]*$/);
      }),
    );
  });

  it('says the same with colour', () => {
    const coloured = comparisonText(kitOf(board, shop), comparison, { ...plain, colour: true });
    expect(coloured.replace(/\u001b\[\d+m/g, '')).toBe(comparisonText(kitOf(board, shop), comparison, plain));
  });

  it('shows what a file holds as text only', () => {
    const evil = 'evil\u001b[2J\u202ename';
    const named = { ...shop, supplies: shop.supplies.map((supply) => ({ ...supply, name: `${supply.name}${evil}` })) };
    const text = comparisonText(kitOf({ ...board, name: evil }, { ...named, name: evil }), comparison, plain);
    expect(text).not.toMatch(/[\u001b\u202e]/);
  });

  it('says what is not known when the time ran out', () => {
    const open: Comparison = {
      ...comparison,
      isProven: false,
      best: { wanted: 9, end: 'stopped' },
      unbeaten: { ...comparison.unbeaten, complete: false },
    };
    const text = comparisonText(kitOf(board, shop), open, plain);
    expect(text).toContain('Not all of the 9 best are proven: the search stopped early.');
    expect(text).toMatch(/as far as is known: the\s+search stopped early/);
    expect(text).not.toContain('Whatever is not here');
    const kinds = comparisonText(kitOf(board, shop), { ...open, listing: 'kinds' }, plain);
    expect(kinds).toMatch(/What is not marked as best found is\s+proven/);
    expect(kinds).toMatch(/there\s+may\s+be\s+other\s+choices/);
  });
});

describe('a comparison as JSON', () => {
  const object = JSON.parse(comparisonJson(kitOf(board, shop), comparison)) as Record<string, unknown>;

  it('keeps its keys and their order', () => {
    expect(Object.keys(object)).toEqual([
      ...[
        'format',
        'board',
        'catalogue',
        'aim',
        'status',
        'currency',
        'wanted',
        'end',
        'options',
        'tradeOffs',
        'reasons',
        'listing',
        'budget',
        'unbeaten',
      ],
    ]);
    const options = object['options'] as readonly Record<string, unknown>[];
    expect(Object.keys(options[0] ?? {})).toEqual([
      ...['rank', 'asked', 'status', 'buy', 'price', 'idle', 'score', 'sockets', 'spareOutputs', 'tightest', 'prefer'],
      ...['unbeaten', 'plan', 'bestAt', 'suppliesPrice', 'leadsPrice', 'overBudget'],
    ]);
    expect(Object.keys(options.at(-1) ?? {})).toEqual(['rank', 'asked', 'status', 'buy', 'price', 'reasons', 'beside']);
  });

  it('counts all that is bought in price and score', () => {
    const options = object['options'] as readonly Record<string, unknown>[];
    const idle = options.find((option) => (option['idle'] as readonly unknown[] | undefined)?.length === 1);
    expect(idle).toMatchObject({
      price: '114.00',
      score: { money: '114.00' },
      idle: [{ id: 'dory', units: 2, price: '12.00' }],
      plan: { score: { money: '90.00' } },
    });
  });
});
