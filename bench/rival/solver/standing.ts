import { checkPoint } from '../../../solver/check.js';
import { objectiveValue } from './integers.js';
import type { Objective, ProgramPoint, Program } from '../../../solver/program.js';

/** A solution that has been checked in integers, and what it is worth. */
export type Incumbent = { readonly point: ProgramPoint; readonly value: number };

/** How far a search has come: what is in hand, and what nothing can undercut. */
export type CompactProgress = { readonly value: number | null; readonly bound: number };

/** The best checked solution and the best exact bound of one search. Whatever an engine says reaches it as a mere point. */
export class Standing {
  private readonly program: Program;
  private readonly objective: Objective;
  private readonly onProgress: ((progress: CompactProgress) => void) | undefined;
  private best: Incumbent | null = null;
  private leastPossible: number;

  constructor(program: Program, objective: Objective, onProgress: ((progress: CompactProgress) => void) | undefined) {
    this.program = program;
    this.objective = objective;
    this.onProgress = onProgress;
    this.leastPossible = objective.constant;
  }

  get incumbent(): Incumbent | null {
    return this.best;
  }

  /** No solution is worth less. */
  get bound(): number {
    return this.leastPossible;
  }

  /** Whether the incumbent and the bound have met: it is optimal. */
  get closed(): boolean {
    return this.best !== null && this.best.value <= this.leastPossible;
  }

  /** The point's value when it is a solution, which is kept when it is the best so far; else null. */
  offer(point: ProgramPoint): number | null {
    if (checkPoint(this.program, point).length > 0) return null;
    const value = objectiveValue(this.objective, point);
    if (this.best === null || value < this.best.value) {
      this.best = { point, value };
      this.report();
    }
    return value;
  }

  /** Takes note of a bound that has been shown in exact arithmetic. */
  raise(bound: number): void {
    if (bound <= this.leastPossible) return;
    this.leastPossible = bound;
    this.report();
  }

  private report(): void {
    this.onProgress?.({ value: this.best?.value ?? null, bound: this.leastPossible });
  }
}
