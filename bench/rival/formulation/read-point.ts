import type { ProgramPoint } from '../../../solver/program.js';
import type { Feed } from '../../../src/domain/plan.js';
import type { Pedal } from '../../../src/domain/pedal.js';
import { packChains } from './chain-packing.js';
import { takesThePlace } from '../../../src/loadout/ground-mode.js';
import { placeItems, type PlacedItem } from '../../../src/loadout/placement.js';
import { likeOf, type Bench } from '../../../src/loadout/bench.js';
import type { Hung } from '../../../src/loadout/loadout.js';
import type { ChainPlace, SoloUse } from '../../../src/loadout/uses.js';
import { commonMode } from './block.js';
import type { Coarseness } from './detail.js';
import type { Block, ChainColumns, Model } from './model.js';
import { namedFeeds, type LoadedUnit } from '../../../src/formulation/named-feeds.js';
import { keptOf } from '../../../src/formulation/output-numbers.js';
import type { Question } from '../../../src/formulation/question.js';

/** What a point of the program means for real units, outputs and leads. */
export type PointReading =
  | { readonly kind: 'feeds'; readonly feeds: readonly Feed[] }
  /** Nothing real is like this: these things must be told apart first. */
  | { readonly kind: 'too coarse'; readonly found: readonly Coarseness[] }
  /** Everything was told apart already; the point only holds within the rounding of a very large row. */
  | { readonly kind: 'unreadable' };

/** Deals a checked point out to units and outputs, exactly, and names what was counted. */
export function readPoint(model: Model, point: ProgramPoint, question: Question): PointReading {
  const found: Coarseness[] = [];
  const units: LoadedUnit[] = [];
  let readable = true;
  for (const block of model.blocks) {
    const loaded = readBlock(block, point, question.bench);
    if (loaded.kind === 'units') units.push(...loaded.units);
    else if (loaded.found.length > 0) found.push(...loaded.found);
    else readable = false;
  }
  if (found.length > 0) return { kind: 'too coarse', found };
  return readable ? { kind: 'feeds', feeds: namedFeeds(units, question) } : { kind: 'unreadable' };
}

type BlockReading =
  | { readonly kind: 'units'; readonly units: readonly LoadedUnit[] }
  | { readonly kind: 'stuck'; readonly found: readonly Coarseness[] };

function readBlock(block: Block, point: ProgramPoint, bench: Bench): BlockReading {
  const modes = block.counts.flatMap(({ mode, column }) => repeated(mode, at(point, column)));
  if (modes.length === 0) return { kind: 'units', units: [] };
  const found: Coarseness[] = [];
  const hung: Hung[] = [];
  const items: PlacedItem[] = [];
  const hang = (item: PlacedItem, what: Hung): void => {
    items.push(item);
    hung.push(what);
  };
  for (const { use, mode, column } of block.solos) {
    const item = { outputs: use.outputs, mode, weights: use.weights, sole: soleCount(mode, [use], bench) };
    for (const each of repeated(use, at(point, column))) hang(item, { kind: 'solo', use: each });
  }
  let stuck = false;
  for (const columns of block.chains) {
    const chains = readChains(columns, point, bench);
    if (chains === null) {
      if (columns.single) stuck = true;
      else found.push({ kind: 'chains', key: columns.key, count: chainCount(columns, point) });
      continue;
    }
    for (const chain of chains)
      hang(chainItem(block, columns, chain.places, bench), { kind: 'chain', pool: columns.pool, ...chain });
  }
  if (stuck || found.length > 0) return { kind: 'stuck', found };
  const placed = placeItems(block.uses, modes, items);
  if (placed !== null) {
    const { supply, unit } = block.uses;
    const contents = placed.map((indices) => indices.flatMap((index) => hung[index] ?? []));
    const pooled = contents.some((each) => keepsLess(each, block, point, bench)) ? pooledChains(block, point) : [];
    if (pooled.length > 0) return { kind: 'stuck', found: pooled };
    return { kind: 'units', units: contents.map((each) => ({ supply, unit, hung: each })) };
  }
  return {
    kind: 'stuck',
    found: block.units > 1 ? [{ kind: 'units', supply: block.uses.supply.id, count: modes.length }] : [],
  };
}

/** Whether fewer pedals stay where they are today than the point says: it may have dealt them to the wrong chains. */
function keepsLess(contents: readonly Hung[], { uses, kept }: Block, point: ProgramPoint, bench: Bench): boolean {
  if (uses.unit === null) return false;
  const claimed = kept.reduce((sum, { column }) => sum + at(point, column), 0);
  return keptOf({ supply: uses.supply, unit: uses.unit, hung: contents }, bench) < claimed;
}

const pooledChains = ({ chains }: Block, point: ProgramPoint): readonly Coarseness[] =>
  chains
    .filter((columns) => !columns.single && chainCount(columns, point) > 0)
    .map((columns) => ({ kind: 'chains', key: columns.key, count: chainCount(columns, point) }));

type Chain = { readonly lead: number; readonly places: readonly ChainPlace[] };

function readChains(columns: ChainColumns, point: ProgramPoint, bench: Bench): readonly Chain[] | null {
  const leads = columns.leads.flatMap((lead) => repeated(lead, at(point, lead.column)));
  const places = columns.places.flatMap(({ place, column }) => repeated(place, at(point, column)));
  if (leads.length === 0 && places.length === 0) return [];
  const likes = (place: ChainPlace): Pedal => likeOf(place.pedal, bench);
  const tails = leads.map((lead) => lead.tails);
  const packed = packChains(columns.pool, tails, places, likes, bench.policy);
  return packed === null ? null : leads.map(({ kind }, index) => ({ lead: kind, places: packed[index] ?? [] }));
}

const chainCount = (columns: ChainColumns, point: ProgramPoint): number =>
  columns.leads.reduce((sum, { column }) => sum + at(point, column), 0);

function chainItem(block: Block, { pool }: ChainColumns, places: readonly ChainPlace[], bench: Bench): PlacedItem {
  const mode = commonMode(block.uses, pool.output.bank, pool.mode);
  const weights = block.uses.limits.map((_, index) =>
    places.reduce((sum, each) => sum + (each.weights[index] ?? 0n), 0n),
  );
  return { outputs: [pool.output], mode, weights, sole: soleCount(mode, places, bench) };
}

function soleCount(mode: PlacedItem['mode'], uses: readonly (SoloUse | ChainPlace)[], bench: Bench): number {
  return mode === null ? 0 : uses.filter(({ pedal }) => takesThePlace(mode, likeOf(pedal, bench))).length;
}

const at = (point: ProgramPoint, column: number): number => point[column] ?? 0;

const repeated = <Value>(value: Value, times: number): readonly Value[] => Array.from({ length: times }, () => value);
