import type { Board, Catalogue } from '../../src/domain/board.js';
import type { Pedal } from '../../src/domain/pedal.js';
import { microampHours } from '../../src/domain/quantities.js';
import type { Supply } from '../../src/domain/supply.js';
import { inputsFromText } from '../../src/reading/inputs-from-text.js';
import { bankOf, factor, onCharge, partOf, settingOf, supplyOf, volts } from '../../test/support/builders.js';
import { boardFileOf, catalogueFileOf } from '../../test/support/as-files.js';
import { instance } from '../instances.js';
import type { Size } from '../sizes.js';

const bankCount = 5;

/**
 * The instance of a size and a seed with five power banks in place of as many supplies, and five batteries: pedals of up to 50 mA take
 * one of two types. Read as files are, which makes the batteries of each pedal.
 */
export function everySource({ pedals, supplies }: Size, seed: number): { board: Board; catalogue: Catalogue } {
  const { board, catalogue } = instance({ pedals, supplies: supplies - bankCount, chains: 'all', seed });
  const policy = {
    ...board.policy,
    runtime: { hours: factor(3), usable: factor(0.8) },
    batteries: { change: factor(8), pay: factor(50) },
  };
  const asked = { ...board, policy, pedals: board.pedals.map(withBattery) };
  const sold = {
    ...catalogue,
    supplies: [...catalogue.supplies, ...banks],
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

const banks: readonly Supply[] = [
  { price: 45, outputs: 3, wattHours: 8 },
  { price: 59, outputs: 4, wattHours: 12 },
  { price: 79, outputs: 3, wattHours: 20 },
  { price: 99, outputs: 6, wattHours: 27 },
  { price: 129, outputs: 8, wattHours: 74 },
].map(({ price, outputs, wattHours }, at) =>
  supplyOf(`bank-${at + 1}`, price, [bankOf(outputs, [settingOf(9, 500)])], onCharge(wattHours)),
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
