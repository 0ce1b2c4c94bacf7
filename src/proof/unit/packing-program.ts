/**
 * A linear program of packing kind, max Σ c·x with Σ a·x ≤ b and x ≥ 0, by the revised simplex method with columns that
 * come in one by one. It guides the choice of rents and proves nothing, so floating point will do. It keeps its basis from
 * one objective to the next: tags change little between neighbouring cases.
 */

/** A column: its entries, by row. */
export type PackingColumn = { readonly rows: readonly number[]; readonly amounts: readonly number[] };

export type PackingProgram = {
  readonly columns: PackingColumn[];
  /** By row: what is in the basis, a column's place or −1 − row for what the row leaves unused. */
  readonly basis: number[];
  readonly inverse: Float64Array[];
  readonly levels: Float64Array;
  readonly amounts: readonly number[];
  /** Pivots since the inverse was worked out afresh. */
  age: number;
};

export function packingProgram(amounts: readonly number[]): PackingProgram {
  return {
    columns: [],
    basis: amounts.map((_, row) => -1 - row),
    inverse: amounts.map((_, row) => Float64Array.from(amounts, (__, column) => (row === column ? 1 : 0))),
    levels: Float64Array.from(amounts),
    amounts,
    age: 0,
  };
}

const tolerance = 1e-9;
/** Rounding adds up from pivot to pivot. */
const oldest = 300;

/** Pivots until no column promises more. Returns the price of each row. `worths` are the columns'. */
export function solve(program: PackingProgram, worths: readonly number[]): Float64Array {
  const scale = worths.reduce((most, worth) => (worth > most ? worth : most), 1);
  if (program.age > oldest) refresh(program);
  const mostPivots = 10 * program.basis.length + 100;
  for (let pivots = 0; pivots < mostPivots; pivots += 1) {
    const prices = pricesOf(program, worths);
    const entering = bestColumn(program, worths, prices, scale * tolerance);
    if (entering === null || !pivot(program, entering)) return prices;
    program.age += 1;
  }
  return pricesOf(program, worths);
}

function pricesOf({ basis, inverse }: PackingProgram, worths: readonly number[]): Float64Array {
  const prices = new Float64Array(basis.length);
  for (const [row, column] of basis.entries()) {
    const worth = column < 0 ? 0 : (worths[column] ?? 0);
    const line = inverse[row];
    if (worth === 0 || line === undefined) continue;
    for (let index = 0; index < prices.length; index += 1)
      prices[index] = (prices[index] ?? 0) + worth * (line[index] ?? 0);
  }
  return prices;
}

/** The column, or −1 − row, that gains most; null when none gains. */
function bestColumn(
  { columns }: PackingProgram,
  worths: readonly number[],
  prices: Float64Array,
  least: number,
): number | null {
  let [best, gain]: [number | null, number] = [null, least];
  for (const [index, { rows, amounts }] of columns.entries()) {
    let gains = worths[index] ?? -Infinity;
    for (let entry = 0; entry < rows.length; entry += 1)
      gains -= (prices[rows[entry] ?? 0] ?? 0) * (amounts[entry] ?? 0);
    if (gains > gain) [best, gain] = [index, gains];
  }
  for (let row = 0; row < prices.length; row += 1)
    if (-(prices[row] ?? 0) > gain) [best, gain] = [-1 - row, -(prices[row] ?? 0)];
  return best;
}

/** False when the column would never leave: that is a matter of rounding, as every packing program is bounded. */
function pivot(program: PackingProgram, entering: number): boolean {
  const { basis, levels } = program;
  const direction = directionOf(program, entering);
  let [leaving, least] = [-1, Infinity];
  for (let row = 0; row < basis.length; row += 1) {
    const step = direction[row] ?? 0;
    if (step <= tolerance) continue;
    const ratio = Math.max(0, levels[row] ?? 0) / step;
    if (ratio < least - 1e-12 || (ratio <= least && step > (direction[leaving] ?? 0))) [leaving, least] = [row, ratio];
  }
  if (leaving < 0) return false;
  for (let row = 0; row < basis.length; row += 1)
    levels[row] = row === leaving ? least : (levels[row] ?? 0) - (direction[row] ?? 0) * least;
  replace(program, leaving, entering, direction);
  return true;
}

/** Puts a column into the basis in place of what stands in a row. */
function replace({ basis, inverse }: PackingProgram, leaving: number, entering: number, direction: Float64Array): void {
  const line = inverse[leaving];
  const step = direction[leaving] ?? 1;
  if (line === undefined) return;
  for (let index = 0; index < line.length; index += 1) line[index] = (line[index] ?? 0) / step;
  for (let row = 0; row < basis.length; row += 1) {
    const share = direction[row] ?? 0;
    const other = inverse[row];
    if (row === leaving || share === 0 || other === undefined) continue;
    for (let index = 0; index < line.length; index += 1)
      other[index] = (other[index] ?? 0) - share * (line[index] ?? 0);
  }
  basis[leaving] = entering;
}

/** Works the inverse out afresh: from what the rows leave unused, the basis comes in column by column. */
function refresh(program: PackingProgram): void {
  const { basis, inverse, levels, amounts } = program;
  const columns = basis.filter((column) => column >= 0);
  program.age = 0;
  for (const [row, line] of inverse.entries()) {
    basis[row] = -1 - row;
    line.fill(0)[row] = 1;
  }
  for (const column of columns) {
    const direction = directionOf(program, column);
    let leaving = -1;
    for (let row = 0; row < basis.length; row += 1) {
      const isUnused = (basis[row] ?? 0) < 0;
      if (isUnused && Math.abs(direction[row] ?? 0) > Math.abs(direction[leaving] ?? tolerance)) leaving = row;
    }
    if (leaving >= 0) replace(program, leaving, column, direction);
  }
  for (const [row, line] of inverse.entries())
    levels[row] = amounts.reduce((sum, amount, index) => sum + amount * (line[index] ?? 0), 0);
}

/** How the basis changes when a column, or −1 − row, comes in. */
function directionOf({ inverse, columns }: PackingProgram, entering: number): Float64Array {
  const { rows, amounts } = columns[entering] ?? { rows: [-1 - entering], amounts: [1] };
  return Float64Array.from(inverse, (line) => {
    let sum = 0;
    for (let entry = 0; entry < rows.length; entry += 1) sum += (line[rows[entry] ?? 0] ?? 0) * (amounts[entry] ?? 0);
    return sum;
  });
}
