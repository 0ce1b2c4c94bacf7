import { pedalTiers } from '../../../src/domain/pedal-tier.js';
import { likeOf, pedalsOf } from '../../../src/loadout/bench.js';
import { exposedIn, takesThePlace } from '../../../src/loadout/ground-mode.js';
import { outruns } from '../../../src/loadout/load.js';
import type { ChainPlace, ChainPool } from '../../../src/loadout/uses.js';
import { addExposed, type CompactSheet } from './sheet.js';
import { chainKey } from './detail.js';
import type { Block, ChainColumns } from './model.js';
import { Sum } from './program-builder.js';

type Units = Pick<Block, 'uses' | 'index' | 'units' | 'counts'>;

/** Adds the chains that a block's units can carry: those told apart one by one, then the pooled rest. */
export function addChains(block: Units, sheet: CompactSheet): readonly ChainColumns[] {
  return block.uses.chains.flatMap((pool) => {
    const key = chainKey(block.uses, block.index, pool);
    const most = mostChains(block, pool, sheet);
    const apart = Math.min(sheet.detail.chains.get(key) ?? 0, most);
    const columns: ChainColumns[] = [];
    for (let index = 0; index < apart; index += 1) columns.push(chainColumns(key, pool, 1, true, sheet));
    if (most > apart) columns.push(chainColumns(key, pool, most - apart, false, sheet));
    orderRows(columns, most, sheet);
    return columns;
  });
}

/** There are no more chains than outputs, nor than pairs of pedals. */
function mostChains(block: Units, pool: ChainPool, sheet: CompactSheet): number {
  const pedals = pedalsOf(new Set(pool.places.map(({ pedal }) => pedal)), sheet.bench);
  const outputs = block.uses.supply.banks[pool.output.bank]?.outputs ?? 0;
  return Math.min(outputs * block.units, Math.floor(pedals / 2));
}

function chainColumns(key: string, pool: ChainPool, most: number, single: boolean, sheet: CompactSheet): ChainColumns {
  const leads = pool.leads.map((lead) => {
    const column = sheet.builder.column('chain', most);
    sheet.leadUse[lead.kind]?.add(column);
    return { ...lead, column };
  });
  const places = pool.places.map((place) => ({ place, column: placeColumn(place, pool, sheet) }));
  const columns = { key, pool, single, leads, places };
  if (single) sheet.builder.atMost('one chain', count(columns), 1);
  capacityRows(columns, sheet);
  tailRows(columns, sheet);
  chainLinkRows(columns, sheet);
  startupRow(columns, sheet);
  return columns;
}

function placeColumn(place: ChainPlace, pool: ChainPool, sheet: CompactSheet): number {
  const column = sheet.builder.column('place', pedalsOf([place.pedal], sheet.bench));
  sheet.cover[place.pedal]?.add(column);
  for (const kind of place.route) sheet.leadUse[kind]?.add(column);
  for (const tier of pedalTiers) if (place[tier]) sheet.measures[tier].add(column);
  if (exposedIn(pool.mode, likeOf(place.pedal, sheet.bench))) addExposed(place.pedal, column, sheet);
  return column;
}

const count = ({ leads }: Pick<ChainColumns, 'leads'>, share: number | bigint = 1): Sum =>
  new Sum().addEach(leads, share);

/** Rule `current`: Σ load × `chained` ≤ rating × chains. Exact for one chain, a relaxation for several. */
function capacityRows(columns: ChainColumns, sheet: CompactSheet): void {
  const { numerator, denominator } = sheet.bench.policy.headroom.chained;
  const sum = count(columns, -columns.pool.rating * BigInt(denominator));
  for (const { place, column } of columns.places) sum.add(column, place.load * BigInt(numerator));
  sheet.builder.atMost('chain current', sum, 0);
}

/** Rule `startup`: Σ surge ≤ rating × chains, as above; where no pedal outruns the factor `chained`, `current` implies it. */
function startupRow(columns: ChainColumns, sheet: CompactSheet): void {
  const { chained } = sheet.bench.policy.headroom;
  if (!columns.places.some(({ place }) => outruns(place, chained))) return;
  const sum = count(columns, -columns.pool.rating);
  for (const { place, column } of columns.places) sum.add(column, place.surge);
  sheet.builder.atMost('chain startup', sum, 0);
}

/** Rule `chain`: two pedals or more on every chain, and no more than its lead has tails. */
function tailRows(columns: ChainColumns, sheet: CompactSheet): void {
  const tooMany = new Sum().addEach(columns.places);
  for (const { column, tails } of columns.leads) tooMany.add(column, -tails);
  sheet.builder.atMost('tails', tooMany, 0);
  sheet.builder.atMost('two on a chain', count(columns, 2).addEach(columns.places, -1), 0);
}

/** A class of n pedals hangs on a pool at most n × its chains; one digital pedal a `sole` chain. */
function chainLinkRows(columns: ChainColumns, sheet: CompactSheet): void {
  const sole = count(columns, -1);
  const soleSize = sole.shares.length;
  for (const [pedal, sum] of placesByClass(columns)) {
    if (takesThePlace(columns.pool.mode, likeOf(pedal, sheet.bench)))
      for (const [column] of sum.shares) sole.add(column);
    sheet.builder.atMost('chain link', sum.addEach(columns.leads, -pedalsOf([pedal], sheet.bench)), 0);
  }
  if (sole.shares.length > soleSize) sheet.builder.atMost('sole digital on a chain', sole, 0);
}

function placesByClass({ places }: ChainColumns): ReadonlyMap<number, Sum> {
  const sums = new Map<number, Sum>();
  for (const { place, column } of places) {
    sums.set(place.pedal, (sums.get(place.pedal) ?? new Sum()).add(column));
  }
  return sums;
}

/** Chains told apart are used in order, the pooled rest last, so that like answers are not tried again and again. */
function orderRows(columns: readonly ChainColumns[], most: number, sheet: CompactSheet): void {
  for (const [index, later] of columns.entries()) {
    const earlier = columns[index - 1];
    if (earlier === undefined) continue;
    sheet.builder.atMost('chains in order', count(later).addEach(earlier.leads, later.single ? -1 : -most), 0);
  }
}
