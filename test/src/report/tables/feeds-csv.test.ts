import { describe, expect, it } from 'vitest';

import { buyCsv } from '../../../../src/report/tables/buy-csv.js';
import { feedsCsv } from '../../../../src/report/tables/feeds-csv.js';
import { readCsv } from '../../../support/read-csv.js';
import { allHandouts, movingPlan, planOf, plainPlan } from '../handouts.js';

/** Each row by the names of its columns, without those that are empty. */
function recordsOf(text: string): readonly Readonly<Record<string, string>>[] {
  const [head = [], ...rows] = readCsv(text.slice(1));
  return rows.map((row) => {
    expect(row).toHaveLength(head.length);
    return Object.fromEntries(row.flatMap((cell, at) => (cell === '' ? [] : [[head[at] ?? '', cell]])));
  });
}

describe('the feeds as CSV', () => {
  it('have a row for each pedal', () => {
    expect(recordsOf(feedsCsv(plainPlan()))[1]).toEqual({
      Lead: '2',
      Pedal: 'Estuary echo',
      'Pedal id': 'estuary-echo',
      Supply: 'Quay 6',
      'Supply id': 'quay-6',
      Unit: '1',
      Owned: 'yes',
      Output: '5',
      'Set to': '9 V',
      Volts: '9',
      Power: 'DC',
      Polarity: 'centre-negative',
      Plug: '2.1 mm barrel',
      Ground: 'isolated',
      'Output load mA': '216',
      'Output rating mA': '400',
      'Output load %': '54',
      'Meter reads': '9 V',
      Note: 'up to 350 of 400 mA at switch-on',
    });
  });

  it('name joins, chains, adapters and switches', () => {
    const records = recordsOf(feedsCsv(planOf()));
    expect(records.find((one) => one['Pedal'] === 'old-wah')).toMatchObject({
      Lead: '1b',
      'Chain lead': 'fan',
      Adapters: 'flip',
    });
    expect(records.find((one) => one['Pedal'] === 'big-preamp')).toMatchObject({
      Output: '1+2',
      'Set to': '9 V + 9 V',
      Volts: '18',
      Join: 'series',
      'Join lead': 'stack',
    });
    expect(records.find((one) => one['Pedal'] === 'synth')).toMatchObject({
      Unit: '2',
      Owned: 'no',
      'Polarity switch': 'centre-negative',
      Adapters: 'flip; mini',
    });
    expect(records.find((one) => one['Pedal'] === 'tube-delay')).toMatchObject({ Power: 'AC', 'Meter reads': '9 V' });
  });

  it('end with the pedals without power, and why', () => {
    const { Note: note, ...rest } = recordsOf(feedsCsv(planOf())).at(-1) ?? {};
    expect(rest).toEqual({ Pedal: 'nowhere', 'Pedal id': 'nowhere' });
    expect(note).toMatch(/^No power: needs 24 V/);
  });

  it('say behind the rest what re-plugging changes', () => {
    const records = recordsOf(feedsCsv(movingPlan()));
    const plain = recordsOf(feedsCsv(planOf()));
    const changed = records.map(({ Pedal: pedal, Change, Today, Why: why }) => ({ pedal, Change, Today, why }));
    expect(changed.find(({ pedal }) => pedal === 'looper')).toMatchObject({
      Change: 'moves',
      Today: 'shared output 4, 12 V',
      why: 'voltage: looper accepts 9 V; output 4 of shared (unit 1) gives 12 V.',
    });
    expect(changed.at(-1)).toMatchObject({ pedal: 'nowhere', Change: 'is unplugged' });
    expect(records.map(({ Change: _c, Today: _t, Why: _w, ...rest }) => rest)).toEqual(plain);
  });

  it('list every pedal in every answer', () => {
    for (const handout of allHandouts()) {
      const ids = recordsOf(feedsCsv(handout)).map((record) => record['Pedal id']);
      expect([...ids].sort()).toEqual(handout.speech.board.pedals.map(({ id }) => String(id)).sort());
    }
  });
});

describe('the shopping list as CSV', () => {
  it('has a row for each thing to buy, whose prices add up to what the plan costs', () => {
    const plan = planOf();
    const records = recordsOf(buyCsv(plan));
    expect(records[0]).toEqual({
      Kind: 'supply',
      Item: 'joiner',
      Id: 'joiner',
      Units: '2',
      'Unit price': '50.00',
      Price: '100.00',
      Currency: 'EUR',
    });
    const cents = records.reduce((sum, record) => sum + Math.round(Number(record['Price']) * 100), 0);
    expect(cents).toBe(plan.wiring.score.money);
    expect(records).toHaveLength(9);
  });

  it('is empty but for its head when there is nothing to buy or no plan', () => {
    for (const handout of [plainPlan(), ...allHandouts().slice(3, 5)])
      expect(buyCsv(handout)).toBe('\ufeffKind,Item,Id,Units,Unit price,Price,Currency\r\n');
  });
});
