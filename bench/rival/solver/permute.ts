import type { Objective, Program, LinearTerm } from '../../../solver/program.js';
import type { Restatement } from './restatement.js';

/** The same program with its rows and columns in another order, which the seed decides. */
export function permute(program: Program, objective: Objective, seed: number): Restatement {
  const random = randomNumbers(seed);
  const order = shuffled(program.columns.keys(), random);
  const position: number[] = [];
  order.forEach((column, index) => (position[column] = index));
  const moved = (terms: readonly LinearTerm[]): readonly LinearTerm[] =>
    terms.map(({ column, coefficient }) => ({ column: position[column] ?? 0, coefficient }));
  const rows = shuffled(program.rows, random).map((row) => ({ ...row, terms: moved(row.terms) }));
  const columns = order.flatMap((column) => program.columns[column] ?? []);
  return {
    program: { columns, rows },
    objective: { ...objective, terms: moved(objective.terms) },
    restore: (point) => position.map((index) => point[index] ?? Number.NaN),
  };
}

/** The items in another order, each order as likely as any other. */
function shuffled<Item>(items: Iterable<Item>, random: () => number): readonly Item[] {
  const remaining = [...items];
  const drawn: Item[] = [];
  while (remaining.length > 0) {
    const index = Math.floor(random() * remaining.length);
    const last = remaining.pop();
    if (last === undefined) break;
    drawn.push(index < remaining.length ? (remaining[index] ?? last) : last);
    if (index < remaining.length) remaining[index] = last;
  }
  return drawn;
}

/** Numbers from 0 up to 1, the same ones for the same seed (mulberry32, a public-domain generator). */
export function randomNumbers(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
