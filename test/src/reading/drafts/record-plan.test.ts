import { describe, expect, it } from 'vitest';

import { supplyId } from '../../../../src/domain/quantities.js';
import type { Wiring } from '../../../../src/domain/plan.js';
import { inputsFromText } from '../../../../src/reading/inputs-from-text.js';
import { withPlanRecorded } from '../../../../src/reading/drafts/record-plan.js';
import { choose } from '../../../../src/planning/choose/choose.js';
import { euros } from '../../../support/builders.js';

const shop = `catalogue: Shop
currency: EUR
assume: {power: DC, plug: barrel-2.1, polarity: centre-negative, regulated: true}
supplies:
  - {id: quay, name: Quay, price: 40, banks: [{outputs: 2, isolated: true, settings: [{volts: 9, milliamps: 500}]}]}
parts:
  - {id: flip, name: Reversing lead, price: 4, fits: barrel-2.1, gives: barrel-2.1, reverses: true}
`;
const head = `board: Mine      # all of it
currency: EUR
assume: {power: DC, polarity: centre-negative, inlet: barrel-2.1, ground: negative}
policy: {headroom: {alone: 1, chained: 1, supply: 1}, chains: never}
pedals:
  - {name: Echo, volts: 9, milliamps: 180}   # dear to me
  - {name: Wah, volts: 9, milliamps: 10, polarity: centre-positive}
`;
const wiring = `wiring:
  - {pedal: echo, supply: quay, unit: 1, output: 1, volts: 9, lead: 1}
  - {pedal: wah, supply: quay, unit: 1, output: 2, volts: 9, parts: [flip], lead: 2}
`;

/** What is in the file when its best plan has been recorded. */
async function recorded(board: string): Promise<string | null> {
  const read = inputsFromText({ file: 'board.yaml', text: board }, { file: 'shop.yaml', text: shop });
  if (read.kind === 'faulty') throw new Error(JSON.stringify(read.faults));
  const answer = await choose(read.value);
  if (answer.kind !== 'plan') throw new Error('it has no plan');
  return recordedAs(board, answer.wiring);
}

function recordedAs(board: string, plan: Wiring): string | null {
  const read = (text: string) => inputsFromText({ file: 'board.yaml', text }, { file: 'shop.yaml', text: shop });
  const given = read(board);
  if (given.kind === 'faulty') throw new Error(JSON.stringify(given.faults));
  return withPlanRecorded({ kit: given.value, text: board, read }, plan);
}

describe('a plan in its board file', () => {
  it.each([
    ['nothing is owned', '', 'owned: {supplies: [quay], parts: {flip: 1}}\n'],
    ['owned is empty', 'owned: {}   # none\n', 'owned: {supplies: [quay], parts: {flip: 1}}   # none\n'],
    [
      'supplies are owned, and no lead',
      'owned:\n  supplies: [quay]   # one\n  # no leads\n',
      'owned:\n  supplies: [quay]   # one\n  parts: {flip: 1}\n  # no leads\n',
    ],
    [
      'lists are empty',
      'owned:\n  parts: {}   # none\n  supplies: []\n',
      'owned:\n  parts: {flip: 1}   # none\n  supplies: [quay]\n',
    ],
    [
      'leads are counted',
      'owned:\n  parts:\n    flip: 0   # given away\n  supplies:\n    - quay   # mine\n',
      'owned:\n  parts:\n    flip: 1   # given away\n  supplies:\n    - quay   # mine\n',
    ],
  ])('brings what it buys with it: %s', async (_, owned, after) => {
    expect(await recorded(`${head}${owned}`)).toBe(`${head}${after}${wiring}`);
  });

  it('puts more units below those that there are', async () => {
    const more = '  - {name: Fuzz, volts: 9, milliamps: 5}\n';
    expect(await recorded(`${head}${more}owned:\n  supplies:\n    - quay   # mine\n  parts: {flip: 1}\n`)).toContain(
      'owned:\n  supplies:\n    - quay   # mine\n    - quay\n  parts: {flip: 1}\nwiring:\n',
    );
  });

  it('leaves places that are kept out of the wiring, and counts what is paid for them as owned', async () => {
    const later = head.replace('milliamps: 180}', 'milliamps: 180, later: true}');
    expect(await recorded(later)).toBe(
      `${later}owned: {supplies: [quay], parts: {flip: 1}}\n${wiring
        .replace(/ {2}- \{pedal: echo.*\n/, '')
        .replace('lead: 2', 'lead: 1')}`,
    );
  });

  it('lists the leads for either reading of a polarity that nobody has read', async () => {
    const unknown = head.replace('milliamps: 180}', 'milliamps: 180, polarity: unknown}');
    const text = (await recorded(unknown)) ?? '';
    expect(text).toContain('parts: {flip: 2}');
    expect(text).toContain('- {pedal: echo, supply: quay, unit: 1, output: 1, volts: 9, parts: [flip], lead: 1}');
  });

  it('is JSON again where it was', async () => {
    const board = {
      board: 'Mine',
      currency: 'EUR',
      policy: { headroom: { alone: 1, chained: 1, supply: 1 }, chains: 'never' },
      assume: { power: 'DC', polarity: 'centre-negative', inlet: 'barrel-2.1', ground: 'negative' },
      pedals: [{ name: 'Echo', volts: 9, milliamps: 180 }],
      owned: { supplies: [], parts: {} },
    };
    const entry = { pedal: 'echo', supply: 'quay', unit: 1, output: 1, volts: 9, lead: 1 };
    for (const indent of [0, 2]) {
      const text = (await recorded(JSON.stringify(board, null, indent))) ?? '';
      expect(JSON.parse(text)).toEqual({ ...board, owned: { supplies: ['quay'], parts: {} }, wiring: [entry] });
    }
  });

  it('is as it was where the plan is how it is plugged', async () => {
    const text = `${head}owned: {supplies: [quay], parts: {flip: 1}}\n${wiring}`;
    expect(await recorded(text)).toBe(text);
  });

  it('is nowhere where the file would not say just that', () => {
    const empty = { feeds: [], inlets: [], unpowered: [], exposed: [], score: {} as Wiring['score'] };
    // Two units of what is not described: read again, the file is wrong.
    const buy = { supplies: [{ id: supplyId('dory'), units: 2, price: euros(1) }], parts: [] };
    expect(recordedAs(head, { ...empty, buy })).toBe(null);
    const anchor = head.replace('{name: Echo, volts: 9', '&a {name: Echo, volts: 9');
    expect(recordedAs(anchor, { ...empty, buy: { supplies: [], parts: [] } })).toBe(anchor);
  });
});
