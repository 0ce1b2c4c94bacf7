import { kitOf } from '../../../src/domain/kit.js';
import { ownAdapterOf } from '../../../src/domain/own-adapter.js';
import { ownBatteryOf } from '../../../src/domain/own-battery.js';
import { microampHours, millivolts, pedalId, supplyId } from '../../../src/domain/quantities.js';
import { handoutOf, type PlanHandout } from '../../../src/report/words/handout.js';
import { factor, onCharge } from '../../support/builders.js';
import { bankFrom, boardOf, catalogueOf, feedOf, partOf, pedalOf, planOf, policy, supplyOf } from './samples.js';

/** Which sources the plan has besides batteries. */
export type Sources = { readonly mains?: boolean; readonly bank?: boolean; readonly adapter?: boolean };

/**
 * A plan with a pedal on one block battery, which is owned, and one on six cells; with one on a supply, one on a power bank and
 * one on its own adapter where these are asked for.
 */
export function onBatteries({ mains = false, bank = false, adapter = false }: Sources = {}): PlanHandout {
  const taking = (id: string, type: string, count: number) =>
    pedalOf(id, { name: `The ${id}`, battery: { type, count, of: pedalId(id) } });
  const [wah, tuner] = [taking('wah', '9V-block', 1), taking('tuner', 'AA', 6)];
  const station = pedalOf('station', {
    name: 'The station',
    polarity: 'unknown',
    ground: 'unknown',
    adapter: { supply: supplyId('own-station'), only: true },
  });
  const battery = (type: string, volts: number, mAh: number) =>
    ({
      kind: 'battery',
      type,
      millivolts: millivolts(volts * 1000),
      microampHours: microampHours(mAh * 1000),
    }) as const;
  const block = partOf('block', battery('9V-block', 9, 550), { name: 'Block' });
  const cell = partOf('cell', battery('AA', 1.5, 2500), { name: 'Cell' });
  const sets = [ownBatteryOf(wah, block), ownBatteryOf(tuner, cell)].filter((set) => set !== null);
  const supplies = [
    supplyOf('quay', [bankFrom(1, 2)], { name: 'Quay' }),
    supplyOf('barge', [bankFrom(1, 2)], { name: 'Barge', ...onCharge(20) }),
  ];
  const feeds = [
    ...sets.map(({ id }, at) => feedOf(at === 0 ? 'wah' : 'tuner', id, 1)),
    ...(mains ? [feedOf('drive', 'quay', 1)] : []),
    ...(bank ? [feedOf('looper', 'barge', 2)] : []),
    ...(adapter
      ? [
          feedOf('station', 'own-station', 1, {
            polarity: 'unknown',
            readings: { 'centre-negative': [], 'centre-positive': [] },
          }),
        ]
      : []),
  ];
  const fed = new Set<string>(feeds.map(({ pedal }) => pedal));
  const board = boardOf(
    [
      wah,
      ...(fed.has('drive') ? [pedalOf('drive', { name: 'The drive' })] : []),
      tuner,
      ...(fed.has('looper') ? [pedalOf('looper', { name: 'The looper' })] : []),
      ...(fed.has('station') ? [station] : []),
    ],
    {
      policy: {
        ...policy,
        batteries: { change: factor(8), pay: factor(100) },
        runtime: { hours: factor(3), usable: factor(0.8) },
      },
      gear: { supplies: [...sets, ...(adapter ? [ownAdapterOf(station, null)] : [])], parts: [] },
      owned: { supplies: new Map([[supplyId('own-station'), 1]]), parts: new Map([[block.id, 2]]) },
    },
  );
  const catalogue = catalogueOf(supplies, [block, cell]);
  const wiring = planOf(board, catalogue, feeds);
  const handout = handoutOf({
    kit: kitOf(board, catalogue),
    answer: { kind: 'plan', aim: 'cost', wiring, gap: null, reasons: [] },
  });
  if (handout.kind !== 'plan') throw new Error('no plan');
  return handout;
}
