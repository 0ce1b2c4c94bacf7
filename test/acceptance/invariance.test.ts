import { expect, test } from 'vitest';
import { parse } from 'yaml';

import { ask } from './ask.js';
import { allCases } from './cases/all.js';
import { boardText, catalogueText, type Case } from './cases/case.js';

/** What a file says, as plain data. */
type Data = Readonly<Record<string, unknown>>;
type Both = { readonly board: Data; readonly catalogue: Data };

const cases = Object.values(allCases).flat();

const list = (value: unknown): readonly Data[] => (Array.isArray(value) ? (value as readonly Data[]) : []);
const mapped = (data: Data, key: string, change: (items: readonly Data[]) => readonly Data[]): Data =>
  data[key] === undefined ? data : { ...data, [key]: change(list(data[key])) };

const reversed = <Item>(items: readonly Item[]): readonly Item[] => [...items].reverse();

/** All lists of things the other way round. */
const backwards = ({ board, catalogue }: Both): Both => ({
  board: mapped(board, 'pedals', reversed),
  catalogue: mapped(mapped(catalogue, 'supplies', reversed), 'parts', reversed),
});

/** Supplies and leads that nobody here can use, however cheap. */
const padded = ({ board, catalogue }: Both): Both => ({
  board,
  catalogue: {
    ...catalogue,
    supplies: [
      uselessSupply('useless-a', { power: 'AC', plug: 'nobody-has-this', settings: [{ volts: 777, milliamps: 9999 }] }),
      ...list(catalogue['supplies']),
      uselessSupply('useless-b', { plug: 'barrel-2.1', settings: [{ volts: 776, milliamps: 9999 }] }),
    ],
    parts: [
      { id: 'useless-c', name: 'c', price: 0, fits: 'nobody-has-this', gives: 'nobody-else-has-this', reverses: true },
      ...list(catalogue['parts']),
      { id: 'useless-d', name: 'd', price: 0, fits: 'barrel-2.1', gives: 'nobody-has-this' },
    ],
  },
});

const uselessSupply = (id: string, bank: Data): Data => ({
  id,
  name: id,
  price: 0,
  mains: { from: 100, to: 240 },
  regulated: true,
  banks: [{ outputs: 1, isolated: true, ...bank }],
});

/** Every current twice as strong: draws, startups, ratings and totals. */
const doubled = ({ board, catalogue }: Both): Both => ({
  board: {
    ...mapped(board, 'pedals', (pedals) => pedals.map((one) => doubledFields(one, ['milliamps', 'startup']))),
    ...(board['gear'] === undefined ? {} : { gear: mapped(board['gear'] as Data, 'supplies', doubledSupplies) }),
  },
  catalogue: mapped(mapped(catalogue, 'supplies', doubledSupplies), 'batteries', (batteries) =>
    batteries.map((one) => doubledFields(one, ['milliampHours'])),
  ),
});

const doubledSupplies = (supplies: readonly Data[]): readonly Data[] =>
  supplies.map((supply) =>
    mapped(doubledInlet(doubledCharge(doubledTotal(supply))), 'banks', (banks) => banks.map(doubledBank)),
  );
const doubledCharge = (data: Data): Data =>
  data['charge'] === undefined ? data : { ...data, charge: doubledFields(data['charge'] as Data, ['wattHours']) };
const doubledInlet = (data: Data): Data =>
  data['inlet'] === undefined
    ? data
    : { ...data, inlet: doubledFields(data['inlet'] as Data, ['milliamps', 'startup']) };
const doubledBank = (bank: Data): Data =>
  mapped(doubledTotal(bank), 'settings', (all) => all.map((one) => doubledFields(one, ['milliamps'])));
const doubledTotal = (data: Data): Data =>
  data['total'] === undefined ? data : { ...data, total: doubledFields(data['total'] as Data, ['milliamps', 'watts']) };
const doubledFields = (data: Data, keys: readonly string[]): Data => ({
  ...data,
  ...Object.fromEntries(keys.filter((key) => data[key] !== undefined).map((key) => [key, twice(data[key])])),
});
/** Twice a number of at most three decimals, or of a map of such numbers. */
const twice = (value: unknown): unknown =>
  typeof value === 'number'
    ? Number((2 * value).toFixed(3))
    : Object.fromEntries(Object.entries(value as Data).map(([key, one]) => [key, twice(one)]));

/** Other names and ids, in the other order of the alphabet. */
const renamed = ({ board, catalogue }: Both): Both => ({
  board: {
    ...mapped(board, 'pedals', (pedals) =>
      pedals.map((one, at) => ({ ...one, name: `X ${900 - at}`, id: `x${900 - at}` })),
    ),
    ...(board['owned'] === undefined ? {} : { owned: renamedOwned(board['owned'] as Data) }),
    ...(board['gear'] === undefined ? {} : { gear: renamedGoods(board['gear'] as Data) }),
  },
  catalogue: renamedGoods(catalogue),
});

const renamedGoods = (goods: Data): Data => mapped(mapped(goods, 'supplies', renamedAll), 'parts', renamedAll);
const renamedAll = (things: readonly Data[]): readonly Data[] =>
  things.map((one) => ({ ...one, ...(one['id'] === undefined ? {} : { id: otherId(one['id'] as string) }) }));
const renamedOwned = ({ supplies, parts, ...others }: Data): Data => ({
  ...others,
  ...(supplies === undefined ? {} : { supplies: (supplies as readonly string[]).map(otherId) }),
  ...(parts === undefined
    ? {}
    : { parts: Object.fromEntries(Object.entries(parts as Data).map(([id, units]) => [otherId(id), units])) }),
});
const otherId = (id: string): string =>
  Array.from(id, (letter) => String(1000 - (letter.codePointAt(0) ?? 0))).join('-');

/** All of that at once. */
const changed = (both: Both): Both => backwards(padded(doubled(renamed(both))));

test('no case scores otherwise with other names, lists turned round, useless goods added and currents doubled', async () => {
  let compared = 0;
  for (const one of cases) {
    const both = changed({ board: dataOf(boardText(one)), catalogue: dataOf(catalogueText(one)) });
    const found = await ask(JSON.stringify(both.board), JSON.stringify(both.catalogue), optionsOf(one));
    expect(found.status, one.says).toBe(one.answer.status);
    if (one.answer.status === 'proven') expect(found.score, one.says).toEqual(one.answer.score);
    compared += 1;
  }
  expect(compared).toBe(cases.length);
});

const dataOf = (text: string): Data => parse(text) as Data;
const optionsOf = ({ aim = 'cost', partial = false }: Case) => ({ aim, partial });
