import type { Objective, ProgramPoint, Program } from '../../../solver/program.js';

/** A program put in other words: any of its points can be read as a point of the one that it was made from. */
export type Restatement = {
  readonly program: Program;
  readonly objective: Objective;
  /** The same point in the columns of the program that this one was made from. */
  readonly restore: (point: ProgramPoint) => ProgramPoint;
};
