import type { DualEngine } from '../../bench/rival/engines/engines.js';
import type { Objective, Program } from '../../solver/program.js';

/** An engine that is asked once for what it has answered before, for tests that ask the same again and again. */
export function remembering(engine: DualEngine): DualEngine {
  return {
    ...engine,
    solve: once((program, objective, limits) => engine.solve(program, objective, limits)),
    ...(engine.relaxationDuals && { relaxationDuals: once(engine.relaxationDuals.bind(engine)) }),
  };
}

function once<Limits, Answer>(
  ask: (program: Program, objective: Objective, limits: Limits) => Promise<Answer>,
): typeof ask {
  const answers = new Map<string, Promise<Answer>>();
  return async (program, objective, limits) => {
    const question = JSON.stringify([program, objective]);
    const answer = answers.get(question) ?? ask(program, objective, limits);
    answers.set(question, answer);
    return answer;
  };
}
