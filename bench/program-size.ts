import { kitOf } from '../src/domain/kit.js';
import { compactProgram } from './rival/formulation/compact-program.js';
import { coarse } from './rival/formulation/detail.js';
import { questionOf } from '../src/formulation/question.js';
import { withoutDominated } from '../src/loadout/dominance.js';
import { tiersOf } from '../src/domain/aim.js';
import { instance, type InstanceShape } from './instances.js';

/** The first program of a search: how large it is and how long it takes to write down. */
export type ProgramSize = {
  /** Supplies that can feed anything, and those of them that no other one replaces. */
  readonly usable: number;
  readonly kept: number;
  readonly columns: number;
  readonly rows: number;
  readonly terms: number;
  readonly buildMs: number;
};

/** The coarse program that the search of an instance begins with. */
export function programSize(shape: InstanceShape): ProgramSize {
  const { board, catalogue } = instance(shape);
  const started = performance.now();
  const question = questionOf(kitOf(board, catalogue), { tiers: tiersOf('cost', board.policy), partial: false });
  const kept = withoutDominated(question.supplies, question.bench);
  const { program } = compactProgram(question, kept, coarse);
  const buildMs = performance.now() - started;
  return {
    usable: question.supplies.length,
    kept: kept.length,
    columns: program.columns.length,
    rows: program.rows.length,
    terms: program.rows.reduce((sum, { terms }) => sum + terms.length, 0),
    buildMs,
  };
}
