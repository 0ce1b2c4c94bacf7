/** Smaller pivots make numbers that mean nothing. */
const PIVOT_TOLERANCE = 1e-9;

/** The inverse of a square matrix that is held row by row, by Gauss and Jordan; null when it is singular. Spoils the matrix. */
export function inverseOf(matrix: Float64Array, size: number): Float64Array | null {
  const inverse = new Float64Array(size * size);
  for (let row = 0; row < size; row += 1) inverse[row * size + row] = 1;
  for (let column = 0; column < size; column += 1) {
    const pivotRow = largestBelow(matrix, size, column);
    const pivot = matrix[pivotRow * size + column] ?? 0;
    if (Math.abs(pivot) < PIVOT_TOLERANCE) return null;
    swapRows(matrix, size, pivotRow, column);
    swapRows(inverse, size, pivotRow, column);
    for (let at = 0; at < size; at += 1) {
      matrix[column * size + at] = (matrix[column * size + at] ?? 0) / pivot;
      inverse[column * size + at] = (inverse[column * size + at] ?? 0) / pivot;
    }
    for (let row = 0; row < size; row += 1) {
      const factor = matrix[row * size + column] ?? 0;
      if (row === column || factor === 0) continue;
      subtractRow(matrix, size, row, column, factor, column);
      subtractRow(inverse, size, row, column, factor, 0);
    }
  }
  return inverse;
}

function largestBelow(matrix: Float64Array, size: number, column: number): number {
  let best = column;
  for (let row = column + 1; row < size; row += 1) {
    if (Math.abs(matrix[row * size + column] ?? 0) > Math.abs(matrix[best * size + column] ?? 0)) best = row;
  }
  return best;
}

function swapRows(matrix: Float64Array, size: number, one: number, two: number): void {
  if (one === two) return;
  for (let at = 0; at < size; at += 1) {
    const kept = matrix[one * size + at] ?? 0;
    matrix[one * size + at] = matrix[two * size + at] ?? 0;
    matrix[two * size + at] = kept;
  }
}

function subtractRow(
  matrix: Float64Array,
  size: number,
  row: number,
  from: number,
  factor: number,
  begin: number,
): void {
  for (let at = begin; at < size; at += 1) {
    matrix[row * size + at] = (matrix[row * size + at] ?? 0) - factor * (matrix[from * size + at] ?? 0);
  }
}
