import fc from 'fast-check';

import type { Catalogue, Board } from '../../src/domain/board.js';
import { microamps } from '../../src/domain/quantities.js';
import type { Source } from '../../src/domain/source.js';
import type { Supply } from '../../src/domain/supply.js';
import { caseOf, type Case } from './arbitraries.js';
import { percent, weighted } from './arbitrary-choices.js';
import { volts } from './builders.js';

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
