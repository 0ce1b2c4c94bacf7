import { expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { explain } from '../../../../src/planning/explain/explain.js';
import { explanationJson } from '../../../../src/report/json/explanation-codec.js';
import { pedalOf } from '../../../support/builders.js';
import { bankHolding, fourHours, lock, onBlocks } from '../../../support/impossible-sources.js';
import { box, caseOf, type Given } from '../../planning/given.js';

type Printed = Readonly<Record<string, unknown>>;

/** The way out of one kind, as it is printed, but for what all ways have. */
async function printed(change: string, given: Given): Promise<Printed | undefined> {
  const { board, catalogue } = caseOf(given);
  const kit = kitOf(board, catalogue);
  const json = explanationJson(kit, await explain(kit, { shrinkMs: 100_000 }), null);
  const { ways } = JSON.parse(json) as { readonly ways: readonly Printed[] };
  const { message, cheapest, plan, ...own } = ways.find((way) => way['change'] === change) ?? {};
  expect([typeof message, typeof cheapest, typeof plan]).toEqual(['string', 'boolean', 'object']);
  return own;
}

it('prints batteries to look for', async () => {
  expect(await printed('battery', onBlocks(2.3, 10))).toEqual({
    change: 'battery',
    pedal: 'wah',
    battery: { type: '9V-block', count: 1, volts: 9, milliampHours: 19 },
  });
});

it('prints how many hours would do', async () => {
  expect(await printed('hours', onBlocks(2, 1))).toEqual({ change: 'hours', of: 'battery', from: 8, to: 0.5 });
});

it('prints what output an inlet needs', async () => {
  const given = { pedals: [pedalOf('p1', 60), pedalOf('p2', 70)], supplies: [box(1, {}, { stock: 1 }), lock] };
  const settings = [{ volts: 12, milliamps: 150 }];
  expect(await printed('inlet', given)).toEqual({
    change: 'inlet',
    supply: 'lock',
    output: { power: 'DC', plug: 'barrel-2.1', polarity: 'centre-negative', settings },
  });
});

it('prints what a power bank has to hold', async () => {
  const policy = { ...fourHours, sockets: 0 };
  const given = { pedals: [pedalOf('looper', 100)], supplies: [bankHolding(1.8)], policy };
  expect(await printed('supply', given)).toMatchObject({ change: 'supply', pedal: 'looper', wattHours: 7.2 });
});
