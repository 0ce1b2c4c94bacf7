import { describe, expect, test } from 'vitest';

import { ask, type Plan } from './ask.js';
import { allCases } from './cases/all.js';
import { boardText, catalogueText, type Also, type Case } from './cases/case.js';

describe.each(Object.entries(allCases))('%s', (_, cases) => {
  test.each(cases.map((one) => [one.says, one] as const))('%s', async (_says, one) => {
    const found = await ask(boardText(one), catalogueText(one), optionsOf(one));
    expect(found.status).toBe(one.answer.status);
    if (one.answer.status === 'impossible') {
      expectNothing(found);
      for (const reason of one.answer.reasons)
        expect(found.reasons).toContainEqual(expect.objectContaining(reason) as unknown);
      return;
    }
    expect(found.score).toEqual(one.answer.score);
    expectConsistent(found, one);
    expectAlso(found, one.answer.also);
  });
});

const optionsOf = ({ aim = 'cost', partial = false }: Case) => ({ aim, partial });

function expectNothing(found: Plan): void {
  expect(found.feeds).toEqual([]);
  expect(found.buy).toEqual({ supplies: [], parts: [], batteries: [] });
  expect(found.exposed).toEqual([]);
  expect(found.reasons.length).toBeGreaterThan(0);
  for (const reason of found.reasons) expect(reason['message']).toEqual(expect.stringMatching(/\S/));
}

/** What the words of a result say about one another, whatever the plan. */
function expectConsistent(found: Plan, { pedals }: Case): void {
  const { score, feeds, buy } = found;
  expect(found.unpowered).toHaveLength(Number(score['unpowered']));
  expect(found.exposed).toHaveLength(Number(score['exposed']));
  expect(found.moved).toEqual([]);
  expect(feeds.length + found.unpowered.length).toBe(pedals.length);
  expect(new Set([...feeds.map((feed) => feed.pedal), ...found.unpowered]).size).toBe(pedals.length);
  const onSupplies = feeds.filter(({ source }) => source !== 'battery');
  const units = [...onSupplies, ...found.inlets.map(({ from }) => from)];
  expect(new Set(units.map(({ supply, unit }) => `${supply} ${unit}`)).size).toBe(score['bricks']);
  const chains = new Set(
    feeds.flatMap(({ supply, unit, outputs, chain }) =>
      chain === null ? [] : [`${supply} ${unit} ${outputs.join('+')} ${chain}`],
    ),
  );
  const joined = feeds.filter(({ join }) => join !== null).length;
  const adapters = [...feeds, ...found.inlets].flatMap((feed) => feed.parts).length;
  expect(chains.size + joined + adapters).toBe(score['parts']);
  const spent = [...buy.supplies, ...buy.parts, ...buy.batteries].reduce(
    (sum, { units, price }) => sum + units * Number(price),
    0,
  );
  expect(spent).toBeCloseTo(Number(score['money']), 6);
}

function expectAlso(found: Plan, also: Also): void {
  const units = (list: Plan['buy']['parts']) => Object.fromEntries(list.map((one) => [one.id, one.units]));
  if (also.supplies !== undefined) expect(units(found.buy.supplies)).toEqual(also.supplies);
  if (also.parts !== undefined) expect(units(found.buy.parts)).toEqual(also.parts);
  if (also.exposed !== undefined) expect(found.exposed).toEqual(also.exposed);
  if (also.unpowered !== undefined) expect(found.unpowered).toEqual(also.unpowered);
  if (also.confirm !== undefined) expect(found.confirm).toEqual(also.confirm);
  for (const [pedal, fields] of Object.entries(also.feeds ?? {}))
    expect(found.feeds.find((feed) => feed.pedal === pedal)).toMatchObject(fields);
}
