import { resolve } from 'node:path';

import { expect, test } from 'vitest';

import { withThings } from '../../../../src/domain/changed-kit.js';
import { inletId } from '../../../../src/domain/inlet.js';
import { kitOf } from '../../../../src/domain/kit.js';
import { supplyId, type PedalId } from '../../../../src/domain/quantities.js';
import { readInputs } from '../../../../src/node/disk/read-inputs.js';
import { keepsPinned } from '../../../../src/planning/asking/keeps-pinned.js';
import { placesFor } from '../../../../src/planning/check/places-for.js';
import { choose } from '../../../../src/planning/choose/choose.js';
import { chooseAround } from '../../../../src/planning/choose/choose-around.js';
import { nothingToday } from '../../../../src/loadout/today.js';
import { bankOf, boardOf, partOf, pedalOf, settingOf, supplyOf } from '../../../support/builders.js';

const fixture = (path: string): string => resolve(import.meta.dirname, '../../../../fixtures', path);
const read = await readInputs(fixture('boards/tideway.yaml'), fixture('shops/quayside.yaml'));
if (read.kind === 'faulty') throw new Error('the example is faulty');
const kit = read.value;
const best = await choose(kit);
if (best.kind !== 'plan') throw new Error('the example has no plan');
const plan = best.wiring;

const placesOf = (pedal: PedalId) => placesFor(kit, plan, pedal);

test('every output of the supplies in use is told once, and a pedal can stay where it is', () => {
  for (const { pedal, supply, unit, outputs } of plan.feeds.filter(({ join }) => join === null)) {
    const places = placesOf(pedal);
    const own = places.filter(
      ({ place }) => place.supply === supply && place.unit === unit && place.outputs[0] === outputs[0],
    );
    expect(own).toHaveLength(1);
    expect(own[0]?.berth, pedal).not.toBeNull();
    const names = places.map(({ place }) => JSON.stringify(place));
    expect(new Set(names).size).toBe(names.length);
  }
});

test('where a pedal cannot hang by itself a rule is named, and nothing is to be pinned', () => {
  const all = plan.feeds.flatMap(({ pedal }) => placesOf(pedal));
  const closed = all.filter(({ berth }) => berth === null);
  expect(closed.length).toBeGreaterThan(0);
  expect(closed.length).toBeLessThan(all.length);
  for (const { trial } of closed) expect(trial.findings.length).toBeGreaterThan(0);
});

test('a plan around a pin keeps it, and is never better than one without', async () => {
  let [kept, heldUp] = [0, 0];
  for (const { pedal } of plan.feeds)
    for (const { berth } of placesOf(pedal)) {
      if (berth === null) continue;
      const answer = await chooseAround(kit, [{ pedal, ...berth }]);
      if (answer.kind !== 'plan') {
        expect(answer.kind).toBe('held up');
        heldUp += 1;
        continue;
      }
      kept += 1;
      expect(answer.gap).toBeNull();
      expect(
        keepsPinned(answer.wiring, { ...nothingToday, berths: new Map([[pedal, berth]]), pinned: new Set([pedal]) }),
      ).toBe(true);
      const { money, exposed } = answer.wiring.score;
      const price = Number(kit.board.policy.noisePrice);
      expect(money + price * exposed).toBeGreaterThanOrEqual(plan.score.money + price * plan.score.exposed);
    }
  expect(kept).toBeGreaterThan(8);
  expect(heldUp).toBeLessThan(kept);
});

test('a pedal can share an output that is taken on an owned chain, and a plan with both of them there keeps both', async () => {
  const box = supplyOf('box', 0, [bankOf(2, [settingOf(9, 150)]), bankOf(1, [settingOf(9, 500)])]);
  const fan = partOf('fan', 0, { kind: 'chain', tails: 3 });
  const board = boardOf([pedalOf('boost', 5), pedalOf('octave', 30), pedalOf('alone', 8, { alone: true })], {
    gear: { supplies: [box], parts: [fan] },
    owned: { supplies: new Map([[box.id, 1]]), parts: new Map([[fan.id, 1]]) },
  });
  const mine = kitOf(board, null);
  const found = await choose(mine);
  if (found.kind !== 'plan') throw new Error('there is a plan');
  let shared = 0;
  for (const pedal of board.pedals)
    for (const place of placesFor(mine, found.wiring, pedal.id)) {
      const there = found.wiring.feeds.filter(
        (feed) => feed.outputs[0] === place.place.outputs[0] && feed.pedal !== pedal.id,
      );
      const canShare = there.length > 0 && [...there, { pedal: pedal.id }].every((one) => one.pedal !== 'alone');
      expect(place.shared !== null).toBe(canShare);
      if (place.shared === null) continue;
      const { berth, company } = place.shared;
      expect(company).toEqual(there.map((feed) => feed.pedal));
      const pins = [pedal.id, ...company].map((one) => ({ pedal: one, ...berth }));
      const answer = await chooseAround(mine, pins);
      const chained = answer.kind === 'plan' ? answer.wiring.feeds.filter(({ chain }) => chain === fan.id) : [];
      expect(chained.map((feed) => feed.pedal).sort()).toEqual(['boost', 'octave']);
      shared += 1;
    }
  expect(shared).toBe(2);
});

test('a battery is a place for its own pedal alone', async () => {
  const street = await readInputs(fixture('boards/street-board.yaml'), fixture('shops/slipway.yaml'));
  if (street.kind === 'faulty') throw new Error('the example is faulty');
  const found = await choose(street.value);
  if (found.kind !== 'plan') throw new Error('the example has no plan');
  const batteriesFor = (pedal: string) =>
    placesFor(street.value, found.wiring, pedal as PedalId).filter(({ trial }) => trial.batteries.length > 0);
  expect(batteriesFor('gannet-looper')).toEqual([]);
  const [place, ...others] = batteriesFor('sedge-wah');
  expect(others).toEqual([]);
  expect(place?.berth).toMatchObject({ supply: 'battery-sedge-wah-block', outputs: [1] });
  const [drive] = batteriesFor('sandling-drive');
  if (drive === undefined || drive.berth === null) throw new Error('the battery is no place for the drive');
  const around = await chooseAround(street.value, [{ pedal: 'sandling-drive' as PedalId, ...drive.berth }]);
  if (around.kind !== 'plan') throw new Error('no plan keeps the drive on its battery');
  // The output that it leaves is free for the wah, which needs no battery then.
  expect(around.wiring.batteries.map(({ pedal }) => pedal)).toEqual(['sandling-drive']);
});

test('an inlet can go where a supply stands on mains or a charge, and not onto its own or another fed one', async () => {
  const bandstand = await readInputs(fixture('boards/bandstand.yaml'), fixture('shops/pontoon.yaml'));
  if (bandstand.kind === 'faulty') throw new Error('the example is faulty');
  const answer = await choose(bandstand.value);
  if (answer.kind !== 'plan') throw new Error('the example has a plan');
  const { value: other } = bandstand;
  // All that it takes, but for what it stands on.
  const [like] = other.supplies.get(supplyId('lighter-74'))?.banks ?? [];
  const alike = withThings(other, (supply) => ({
    ...supply,
    banks: supply.banks.map((bank) => ({ ...bank, ...(like && { ...like, outputs: bank.outputs }) })),
  }));
  for (const [kit, why] of [
    [other, 'gives 400 mA at 9 V'],
    [alike, 'which stands neither on the mains nor on a charge of its own'],
  ] as const) {
    const places = placesFor(kit, answer.wiring, inletId({ supply: supplyId('step-9'), unit: 1 }));
    const open = places.filter(({ berth }) => berth !== null).map(({ place }) => place);
    expect(open).toEqual([1, 2].map((output) => ({ supply: 'lighter-74', unit: 1, outputs: [output] })));
    const [closed] = places.filter(({ berth }) => berth === null);
    expect(closed?.place.supply).toBe('step-9');
    expect(closed?.trial.findings.map(({ message }) => message).join(' ')).toContain(why);
  }
});
