import type { Bench } from '../../../src/loadout/bench.js';
import type { Detail } from './detail.js';
import type { Model } from './model.js';
import type { ProgramBuilder, Sum } from './program-builder.js';

/** What blocks write into: the program and the sums that span all supplies. */
export type CompactSheet = {
  readonly bench: Bench;
  readonly detail: Detail;
  readonly builder: ProgramBuilder;
  readonly measures: Model['measures'];
  /** Σ of all uses, by pedal class. */
  readonly cover: readonly Sum[];
  /** Σ of those that stay where they are plugged today, by pedal class. */
  readonly kept: readonly Sum[];
  /** Σ of all uses of a lead, by lead kind. */
  readonly leadUse: readonly Sum[];
};

/** Counts a column of exposed pedals; by itself where they are not exposed today. */
export function addExposed(pedal: number, column: number, { bench, measures }: CompactSheet): void {
  measures.exposed.add(column);
  if (bench.classes[pedal]?.exposedToday !== true) measures.newlyExposed.add(column);
}
