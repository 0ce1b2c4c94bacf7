/** Linear programs as the simplex takes them, at random, and what another engine says of them. */
import fc from 'fast-check';
import highsModule, { type Highs } from 'highs';

import { COLD, Simplex, type SimplexRow, type SimplexStart } from '../../../solver/cover/simplex.js';
import type { SparseColumn } from '../../../solver/cover/sparse-columns.js';

export type LinearProgram = { readonly rows: readonly SimplexRow[]; readonly columns: readonly SparseColumn[] };

type Shape = {
  readonly rows: readonly [least: number, most: number];
  readonly columns: number;
  readonly senses: readonly SimplexRow['sense'][];
  readonly entry: fc.Arbitrary<number>;
  readonly cost: fc.Arbitrary<number>;
  readonly bound: fc.Arbitrary<number>;
  /** Entries of a column at the most. */
  readonly entries: number;
};

/** Programs with up to so many columns; a column never has two entries in a row. */
export const programsOf = ({
  rows,
  columns,
  senses,
  entry,
  cost,
  bound,
  entries,
}: Shape): fc.Arbitrary<LinearProgram> =>
  fc.integer({ min: rows[0], max: rows[1] }).chain((size) =>
    fc.record({
      rows: fc.array(fc.record({ sense: fc.constantFrom(...senses), bound }), { minLength: size, maxLength: size }),
      columns: fc.array(columnsOf(size, entries, entry, cost), {
        minLength: Math.ceil(columns / 2),
        maxLength: columns,
        size: 'max',
      }),
    }),
  );

const columnsOf = (
  size: number,
  entries: number,
  entry: fc.Arbitrary<number>,
  cost: fc.Arbitrary<number>,
): fc.Arbitrary<SparseColumn> =>
  fc
    .record({
      entries: fc.uniqueArray(fc.tuple(fc.nat(size - 1), entry), {
        selector: ([row]) => row,
        minLength: 1,
        maxLength: entries,
        size: 'max',
      }),
      cost,
    })
    .map((column) => ({
      rows: column.entries.map(([row]) => row),
      values: column.entries.map(([, value]) => value),
      cost: column.cost,
    }));

const loadHighs = highsModule as unknown as typeof highsModule.default;

/** The least cost by HiGHS; with an elastic price every row may be broken at it, else null says that there is no point. */
export type Oracle = (program: LinearProgram, elastic?: number) => number | null;

export async function linearOracle(): Promise<Oracle> {
  const highs = await loadHighs();
  return (program, elastic) => leastCost(highs, elastic === undefined ? program : withHelpers(program, elastic));
}

function withHelpers({ rows, columns }: LinearProgram, elastic: number): LinearProgram {
  const helpers = rows.flatMap(({ sense }, row) =>
    [1, -1]
      .filter((value) => sense === 'equal' || (sense === 'at least') === value > 0)
      .map((value) => ({ rows: [row], values: [value], cost: elastic })),
  );
  return { rows, columns: [...columns, ...helpers] };
}

function leastCost(highs: Highs, { rows, columns }: LinearProgram): number | null {
  const starts = [0];
  for (const column of columns) starts.push((starts.at(-1) ?? 0) + column.rows.length);
  const data = {
    numCols: columns.length,
    numRows: rows.length,
    colCost: Float64Array.from(columns, ({ cost }) => cost),
    colLower: new Float64Array(columns.length),
    colUpper: new Float64Array(columns.length).fill(Infinity),
    rowLower: Float64Array.from(rows, ({ sense, bound }) => (sense === 'at most' ? -Infinity : bound)),
    rowUpper: Float64Array.from(rows, ({ sense, bound }) => (sense === 'at least' ? Infinity : bound)),
    matrix: {
      format: 'csc' as const,
      numRows: rows.length,
      numCols: columns.length,
      starts: Int32Array.from(starts),
      indices: Int32Array.from(columns.flatMap((column) => column.rows)),
      values: Float64Array.from(columns.flatMap((column) => column.values)),
    },
  };
  return highs.withModel(data, (model) => {
    model.options.set({ output_flag: false });
    model.run();
    const status = model.getModelStatus();
    if (status === highs.constants.modelStatus.optimal) return model.info.get('objective_function_value') as number;
    if (status === highs.constants.modelStatus.infeasible) return null;
    throw new Error(`HiGHS ended with the model status ${status}`);
  });
}

/** Dearer than any price that a row of these programs can have. */
export const prohibitive = 1e6;

/** The simplex of a program at such a price of breaking rows, begun but not solved. */
export function simplexOf({ rows, columns }: LinearProgram, elastic: number, start: SimplexStart = COLD): Simplex {
  const simplex = new Simplex(rows, elastic, 1e-6 + elastic * 1e-11);
  for (const column of columns) simplex.add(column);
  simplex.start(start);
  return simplex;
}
