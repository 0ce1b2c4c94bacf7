import fc from 'fast-check';

import type { Board, Catalogue, Policy } from '../../src/domain/board.js';
import { ownAdapterId, ownAdapterOf } from '../../src/domain/own-adapter.js';
import { ownBatteryOf } from '../../src/domain/own-battery.js';
import type { Pedal } from '../../src/domain/pedal.js';
import { microamps } from '../../src/domain/quantities.js';
import type { Source } from '../../src/domain/source.js';
import type { Supply } from '../../src/domain/supply.js';
import { block, caseOf, type Case } from './arbitraries.js';
import { percent, weighted } from './arbitrary-choices.js';
import { factor, onCharge, volts } from './builders.js';

type Fed = Extract<Source, { readonly kind: 'fed' }>;

/** Inlets that most supplies can feed, some of them in one way only. */
const inlets: fc.Arbitrary<Fed> = fc
  .record({
    alternating: percent(5),
    plug: weighted([12, 'barrel-2.1'], [1, 'jack-3.5']),
    positive: percent(10),
    accepts: weighted<readonly number[]>([6, [9]], [2, [9, 12]], [1, [12]], [1, [18]]),
    range: percent(10),
    milliamps: weighted([3, 80], [2, 200], [1, 250], [1, 10]),
    startup: weighted<number | null>([6, null], [1, 240], [1, 400]),
  })
  .map(({ alternating, plug, positive, accepts, range, milliamps, startup }) => ({
    kind: 'fed',
    inlet: {
      power: alternating ? 'AC' : 'DC',
      plug,
      polarity: alternating ? null : positive ? 'centre-positive' : 'centre-negative',
      accepts: range
        ? { kind: 'range', from: volts(9), to: volts(18) }
        : { kind: 'listed', millivolts: accepts.map(volts) },
      microamps: microamps(milliamps * 1000),
      startup: startup === null ? null : microamps(startup * 1000),
    },
  }));

/**
 * Tiny cases in which one or two of the supplies are fed from the others, and nothing but these feeds some pedals; both of two
 * may have the same inlet.
 */
export const fedCase = (pedals: number, supplies: number, parts = 2): fc.Arbitrary<Case> =>
  fc
    .record({
      of: caseOf({ min: 1, max: pedals }, { min: 2, max: supplies }, parts),
      first: inlets,
      second: fc.oneof(fc.constant(null), inlets),
      same: percent(40),
      at: fc.nat({ max: supplies - 1 }),
      /** Its outputs are the only ones of their volts. */
      odd: percent(40),
    })
    .map(({ of: { board, catalogue }, first, second, same, at, odd }) => {
      const ids = [...board.gear.supplies, ...catalogue.supplies]
        .filter(({ source }) => source.kind === 'mains')
        .map(({ id }) => id);
      const other = same ? first : second;
      const fed = (supply: Supply): Supply => {
        const place = ids.indexOf(supply.id);
        if (place < 0) return supply;
        if (place === at % Math.max(1, ids.length)) return { ...supply, source: first };
        const isSecond = other !== null && ids.length > 2 && place === (at + 1) % ids.length;
        return isSecond ? { ...supply, source: other } : supply;
      };
      return withSupplies({ board, catalogue }, fed, odd);
    });

function withSupplies({ board, catalogue }: Case, fed: (supply: Supply) => Supply, odd: boolean): Case {
  const [gear, shop] = [board.gear.supplies.map(fed), catalogue.supplies.map(fed)];
  const needed = [...gear, ...shop].find(({ source }) => source.kind === 'fed');
  const others = (supply: Supply): Supply =>
    odd && supply.source.kind === 'mains' && needed !== undefined
      ? { ...supply, banks: supply.banks.map((bank) => ({ ...bank, settings: bank.settings.slice(0, 1) })) }
      : supply;
  const made: Board = { ...board, gear: { ...board.gear, supplies: gear.map(others) } };
  const sold: Catalogue = { ...catalogue, supplies: shop.map(others) };
  return { board: made, catalogue: sold };
}

/** Cases with fed supplies in which one of the others may be a power bank, all pedals may take batteries, and sockets are few. */
export const sourceCase = (pedals: number, supplies: number, parts = 2): fc.Arbitrary<Case> =>
  fc
    .record({
      of: fedCase(pedals, supplies, parts),
      wattHours: weighted<number | null>([2, null], [1, 3.6], [1, 20], [2, 74]),
      batteries: percent(50),
      sockets: weighted<number | null>([2, null], [1, 0], [2, 1]),
    })
    .map(({ of, wattHours, batteries, sockets }) => {
      const { board, catalogue } = wattHours === null ? of : withBank(of, wattHours);
      const all = batteries ? withBatteries({ board, catalogue }) : { board, catalogue };
      const policy: Policy = {
        ...all.board.policy,
        sockets: sockets ?? board.policy.sockets,
        runtime: board.policy.runtime ?? { hours: factor(2.5), usable: factor(1) },
        batteries: board.policy.batteries ?? { change: factor(2.5), pay: factor(12) },
      };
      return { board: { ...all.board, policy }, catalogue: all.catalogue };
    });

/** The first supply on mains is a power bank. */
function withBank({ board, catalogue }: Case, wattHours: number): Case {
  const first = [...catalogue.supplies, ...board.gear.supplies].find(({ source }) => source.kind === 'mains');
  const changed = (supply: Supply): Supply => (supply === first ? { ...supply, ...onCharge(wattHours) } : supply);
  return {
    board: { ...board, gear: { ...board.gear, supplies: board.gear.supplies.map(changed) } },
    catalogue: { ...catalogue, supplies: catalogue.supplies.map(changed) },
  };
}

/** Every pedal that takes none yet takes one block, which is for sale. */
function withBatteries({ board, catalogue }: Case): Case {
  const pedals = board.pedals.map((pedal) => ({
    ...pedal,
    battery: pedal.battery ?? { type: 'block', count: 1, of: pedal.id },
  }));
  const sets = pedals.flatMap((pedal) => ownBatteryOf(pedal, block) ?? []);
  const others = board.gear.supplies.filter(({ source }) => source.kind !== 'battery');
  const isSold = catalogue.parts.some(({ id }) => id === block.id);
  return {
    board: {
      ...board,
      pedals,
      gear: { ...board.gear, supplies: [...others, ...sets] },
      owned: {
        ...board.owned,
        supplies: new Map([...board.owned.supplies, ...sets.map(({ id }) => [id, 1] as const)]),
      },
    },
    catalogue: isSold ? catalogue : { ...catalogue, parts: [...catalogue.parts, block] },
  };
}

/** The same at a venue of 230 V, where the first pedal came with an adapter, of which it is not always known that it may be used there. */
export const adapterCase = (of: fc.Arbitrary<Case>): fc.Arbitrary<Case> =>
  fc.tuple(of, fc.boolean()).map(([{ board, catalogue }, isStated]) => {
    const [first, ...others] = board.pedals;
    if (first?.adapter !== null) return { board, catalogue };
    const pedal: Pedal = { ...first, adapter: { supply: ownAdapterId(first.id), only: false } };
    const adapter = ownAdapterOf(pedal, isStated ? { from: volts(220), to: volts(240) } : null);
    return {
      board: {
        ...board,
        policy: { ...board.policy, mains: [volts(230)] },
        pedals: [pedal, ...others],
        gear: { ...board.gear, supplies: [...board.gear.supplies, adapter] },
        owned: { ...board.owned, supplies: new Map([...board.owned.supplies, [adapter.id, 1]]) },
      },
      catalogue,
    };
  });
