/**
 * The restricted master in whole numbers, put to an engine beside the search ("Primal heuristics for branch and price", 2019,
 * calls it the restricted master heuristic). What the engine says is worth nothing: a point counts only once it keeps every
 * row in exact integers, and then only as columns that the search completes and counts by itself. No bound rests on it.
 */
import { gathered } from '../gathered.js';
import { checkPoint } from '../check.js';
import type { Engine } from '../engines/engine.js';
import type { LinearTerm, Objective, Program, ProgramColumn, ProgramPoint } from '../program.js';
import type { Timing } from '../timing.js';
import type { ColumnPool } from './column-pool.js';
import { reducedCosts, type DualPrices } from './dual-prices.js';
import type { CoverColumn, CoverProgram, FixedColumn } from './program.js';

/** Who looks for better solutions beside the search, and when. */
export type Beside = {
  readonly engine: Engine;
  /** How long the search has to itself first, and between two questions. */
  readonly afterMs: number;
};

/** What it needs of the search that it serves. */
export type Searching<Content> = {
  readonly program: CoverProgram<Content>;
  readonly pool: ColumnPool<Content>;
  /** Dual prices at the root; null as long as there are none. */
  readonly rootDuals: DualPrices | null;
  /** The columns of every solution that was found. */
  readonly offered: ReadonlySet<CoverColumn<Content>>;
  offer(columns: readonly CoverColumn<Content>[]): boolean;
};

/** An engine that takes longer hardly ever comes by anything. */
const timeoutMs = 3_000;
/** With more columns javascript-lp-solver takes much longer. */
const mostColumns = 300;

/** Asks again and again, as long as there are columns that it was not asked about; ends with the signal. Never rejects. */
export async function seekBeside<Content>(
  search: Searching<Content>,
  { engine, afterMs }: Beside,
  { later }: Timing,
  signal: AbortSignal,
): Promise<void> {
  let known: readonly number[] = [];
  while (await later(afterMs, signal)) {
    const chosen = bestColumns(search);
    if (chosen.length === 0 || chosen.every((index) => known.includes(index))) continue;
    known = chosen;
    const { program, objective } = integerMaster(search, chosen);
    const point = await pointOf(engine, program, objective, signal);
    // Whatever is wrong with it: it is as if nothing had been said.
    if (signal.aborted || point === null || checkPoint(program, point).length > 0) continue;
    const fixed = search.program.fixed.length;
    search.offer(
      gathered(chosen, (index, place) => {
        const column = search.pool.columns[index];
        return column === undefined ? [] : Array.from({ length: point[fixed + place] ?? 0 }, () => column);
      }),
    );
  }
}

async function pointOf(
  engine: Engine,
  program: Program,
  objective: Objective,
  signal: AbortSignal,
): Promise<ProgramPoint | null> {
  try {
    const claim = await engine.solve(program, objective, { timeoutMs, signal });
    const point = claim.kind === 'optimal' || claim.kind === 'stopped' ? claim.point : null;
    return Array.isArray(point) ? point : null;
  } catch {
    return null;
  }
}

/** Those of the solutions so far, and those of the least reduced costs at the root, in the order of the pool. */
function bestColumns<Content>({ program, pool, rootDuals, offered }: Searching<Content>): readonly number[] {
  if (rootDuals === null) return [];
  const reducedCost = reducedCosts(program, [], rootDuals);
  return pool.columns
    .map((column, index) => ({ index, reduced: offered.has(column) ? -Infinity : reducedCost(column) }))
    .sort((one, other) => (one.reduced < other.reduced ? -1 : Number(one.reduced > other.reduced)))
    .slice(0, mostColumns)
    .map(({ index }) => index)
    .sort((one, other) => one - other);
}

/** The rows over the fixed columns and those chosen, each as often as can be of use. */
function integerMaster<Content>(
  { program: { rows, fixed, groups }, pool }: Searching<Content>,
  chosen: readonly number[],
): { readonly program: Program; readonly objective: Objective } {
  const terms = rows.map((): LinearTerm[] => []);
  const costs: LinearTerm[] = [];
  const columns: ProgramColumn[] = [];
  const add = (name: string, upper: number, cost: number, entries: FixedColumn['entries']): void => {
    const column = columns.length;
    columns.push({ name, upper });
    costs.push({ column, coefficient: cost });
    for (const { row, coefficient } of entries) terms[row]?.push({ column, coefficient });
  };
  for (const { name, most, cost, entries } of fixed) add(name, Math.min(most, plenty), cost, entries);
  for (const { column, entries } of gathered(chosen, (index) => poolColumn(pool, index)))
    add(String(column.group), groups[column.group]?.most ?? 0, column.cost, entries);
  const bounded = rows.map(({ name, sense, bound }, row) => ({
    name,
    terms: terms[row] ?? [],
    lower: sense === 'at most' ? null : bound,
    upper: sense === 'at least' ? null : bound,
  }));
  return { program: { columns, rows: bounded }, objective: { name: 'cost', terms: costs, constant: 0 } };
}

function poolColumn<Content>({ columns, entries }: ColumnPool<Content>, index: number) {
  const [column, of] = [columns[index], entries[index]];
  if (column === undefined || of === undefined) return [];
  return [{ column, entries: of.rows.map((row, entry) => ({ row, coefficient: of.values[entry] ?? 0 })) }];
}

/** What there is no limit on is never needed more often. */
const plenty = 1_000;
