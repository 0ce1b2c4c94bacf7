/** For every field of a pedal, pedals that differ from a plain one of 10 mA in it. */
import type { Pedal } from '../../src/domain/pedal.js';
import { pedalId, supplyId } from '../../src/domain/quantities.js';
import { listed, milliamps, pedalOf, volts } from './builders.js';

type Differing = {
  /** Whether a plan for the one may be wrong for the other. */
  readonly bears: boolean;
  readonly by: readonly Partial<Pedal>[];
};

/** The compiler asks for every field of a pedal. */
const differing: Readonly<Record<keyof Pedal, Differing>> = {
  id: { bears: false, by: [{}] },
  name: { bears: false, by: [{ name: 'Another' }] },
  power: { bears: true, by: [{ power: 'AC', polarity: null }] },
  polarity: { bears: true, by: [{ polarity: 'centre-positive' }, { polarity: 'unknown' }] },
  inlet: { bears: true, by: [{ inlet: 'jack-3.5' }] },
  ground: { bears: true, by: [{ ground: 'positive' }, { ground: 'unknown' }] },
  accepts: {
    bears: true,
    by: [{ accepts: listed(9, 12) }, { accepts: { kind: 'range', from: volts(9), to: volts(9) } }],
  },
  prefers: { bears: true, by: [{ prefers: volts(9) }] },
  survives: { bears: true, by: [{ survives: volts(9) }] },
  draw: {
    bears: true,
    by: [
      { draw: { kind: 'flat', microamps: milliamps(10.001) } },
      { draw: { kind: 'per voltage', microamps: new Map([[volts(9), milliamps(10)]]) } },
      { draw: { kind: 'per voltage', microamps: new Map([[volts(9), milliamps(11)]]) } },
    ],
  },
  startup: { bears: true, by: [{ startup: milliamps(10) }, { startup: milliamps(11) }] },
  figure: { bears: true, by: [{ figure: 'guess' }] },
  digital: { bears: true, by: [{ digital: true }] },
  highGain: { bears: true, by: [{ highGain: true }] },
  alone: { bears: true, by: [{ alone: true }] },
  assumed: { bears: false, by: [{ assumed: { power: 'DC' } }] },
  unknown: { bears: false, by: [{ unknown: ['milliamps'] }] },
  kept: { bears: false, by: [{ kept: 'later' }] },
  battery: {
    bears: true,
    by: [
      { battery: { type: 'AA', count: 1, of: pedalId('one') } },
      { battery: { type: 'AA', count: 1, of: pedalId('two') } },
      { battery: { type: 'AA', count: 2, of: pedalId('one') } },
      { battery: { type: 'AAA', count: 1, of: pedalId('one') } },
    ],
  },
  adapter: {
    bears: true,
    by: [
      { adapter: { supply: supplyId('own-one'), only: false } },
      { adapter: { supply: supplyId('own-two'), only: false } },
      { adapter: { supply: supplyId('own-one'), only: true } },
    ],
  },
};

const plain = pedalOf('plain', 10);
const variants = (bears: boolean): readonly (readonly [field: string, pedals: readonly [Pedal, ...Pedal[]]])[] =>
  Object.entries(differing).flatMap(([field, each]) =>
    each.bears === bears
      ? [[field, [plain, ...each.by.map((more, index) => pedalOf(`${field}-${index}`, 10, more))]] as const]
      : [],
  );

/** By field: a plain pedal and others, no two of which are alike. */
export const unlike = variants(true);
/** By field: a plain pedal and others that are all alike. */
export const alike = variants(false);

/** One pedal with its figures in another order, and one with another figure. */
export const inOrders: readonly [Pedal, Pedal, Pedal] = [
  perVoltage('one', [9, 30], [12, 20]),
  perVoltage('two', [12, 20], [9, 30]),
  perVoltage('three', [9, 30], [12, 21]),
];

function perVoltage(id: string, ...figures: readonly (readonly [number, number])[]): Pedal {
  const microamps = new Map(figures.map(([at, draw]) => [volts(at), milliamps(draw)]));
  return pedalOf(id, 10, { accepts: listed(9, 12), draw: { kind: 'per voltage', microamps } });
}
