import type { Board, Catalogue } from '../../src/domain/board.js';
import type { Pedal } from '../../src/domain/pedal.js';
import { microampHours } from '../../src/domain/quantities.js';
import type { Supply } from '../../src/domain/supply.js';
import { inputsFromText } from '../../src/reading/inputs-from-text.js';
import {
  bankOf,
  factor,
  fedBy,
  listed,
  milliamps,
  onCharge,
  partOf,
  settingOf,
  supplyOf,
  volts,
} from '../../test/support/builders.js';
import { boardFileOf, catalogueFileOf } from '../../test/support/as-files.js';
import { instance, type InstanceShape } from '../instances.js';

/**
 * The instance with five power banks and five fed supplies in place of as many others, and five batteries: pedals of up to 50 mA take
 * one of two types. Where there are so few sockets, money is no limit. Read as files are, which makes the batteries of each pedal.
 */
export function everySource(
  shape: InstanceShape,
  sockets: number | null = null,
): { board: Board; catalogue: Catalogue } {
  const sources = [...banks, ...fed];
  const { board, catalogue } = instance({ ...shape, supplies: shape.supplies - sources.length });
  const policy = {
    ...board.policy,
    ...(sockets === null ? {} : { sockets, budget: null }),
    runtime: { hours: factor(3), usable: factor(0.8) },
    batteries: { change: factor(8), pay: factor(50) },
  };
  const asked = { ...board, policy, pedals: board.pedals.map(withBattery) };
  const sold = {
    ...catalogue,
    supplies: [...catalogue.supplies, ...sources],
    parts: [...catalogue.parts, ...batteries],
  };
  const read = inputsFromText(
    { file: 'board.json', text: JSON.stringify(boardFileOf(asked)) },
    { file: 'shop.json', text: JSON.stringify(catalogueFileOf(sold)) },
  );
  if (read.kind === 'faulty') throw new Error(JSON.stringify(read.faults));
  return read.value;
}

/** The most that a pedal draws on a battery, in microamps. */
const mostDrawn = 50_000;

function withBattery(pedal: Pedal, at: number): Pedal {
  const { draw, id } = pedal;
  if (draw.kind !== 'flat' || draw.microamps > mostDrawn) return pedal;
  const set = at % 3 === 0 ? { type: 'AA', count: 6 } : { type: '9V-block', count: 1 };
  return { ...pedal, battery: { ...set, of: id } };
}

const usbA = { plug: 'usb-a', polarity: 'centre-positive' } as const;

/** With outputs of 9 V, or of 5 V, from which converter leads make more. */
const banks: readonly Supply[] = [
  { price: 49, outputs: 2, wattHours: 8, gives: 9 },
  { price: 89, outputs: 3, wattHours: 27, gives: 9 },
  { price: 19, outputs: 2, wattHours: 37, gives: 5 },
  { price: 29, outputs: 3, wattHours: 74, gives: 5 },
  { price: 39, outputs: 4, wattHours: 99, gives: 5 },
].map(({ price, outputs, wattHours, gives }, at) => {
  const bank = gives === 5 ? bankOf(outputs, [settingOf(5, 2400)], usbA) : bankOf(outputs, [settingOf(9, 500)]);
  return supplyOf(`bank-${at + 1}`, price, [bank], onCharge(wattHours));
});

/** Two converter leads from 5 V, two boxes for 9 V and one for 12 V. */
const fed: readonly Supply[] = [
  { price: 8, outputs: [1, 9, 400], inlet: [5, 900] },
  { price: 10, outputs: [1, 12, 300], inlet: [5, 900] },
  { price: 19, outputs: [2, 9, 150], inlet: [9, 350] },
  { price: 39, outputs: [6, 9, 120], inlet: [9, 800] },
  { price: 49, outputs: [4, 9, 250], inlet: [12, 1200] },
].map(({ price, outputs: [outputs = 1, gives = 9, rating = 100], inlet: [takes = 9, draw = 100] }, at) =>
  supplyOf(
    `fed-${at + 1}`,
    price,
    [bankOf(outputs, [settingOf(gives, rating)])],
    fedBy({ accepts: listed(takes), microamps: milliamps(draw), ...(takes === 5 ? usbA : {}) }),
  ),
);

const batteries = [
  { type: '9V-block', price: 2.5, volts: 9, mAh: 400 },
  { type: '9V-block', price: 3.5, volts: 9, mAh: 550 },
  { type: '9V-block', price: 8, volts: 9, mAh: 1200 },
  { type: 'AA', price: 0.8, volts: 1.5, mAh: 2000 },
  { type: 'AA', price: 1.6, volts: 1.5, mAh: 2800 },
].map(({ type, price, mAh, ...battery }, at) =>
  partOf(`battery-${at + 1}`, price, {
    kind: 'battery',
    type,
    millivolts: volts(battery.volts),
    microampHours: microampHours(mAh * 1000),
  }),
);
