import type { FrameJob } from './content.js';
import { stagesOf, type Stage } from './label-stages.js';
import type { Rents } from './rents.js';

/** The pedals of a class that may hang on a unit. */
export type Line = Omit<Stage, 'isEarly'> & {
  readonly count: number;
  /** The later lines whose pedals it could replace at no loss. */
  readonly replaceable: readonly number[];
};

/** A line for every class, those that can replace others before these. */
export function linesOf(job: FrameJob, rents: Rents): readonly Line[] {
  const stages = stagesOf(job, rents);
  const firsts = stages.filter(({ pedal }, at) => stages[at - 1]?.pedal !== pedal);
  const lineOf = new Map(firsts.map(({ pedal }, index) => [pedal, index]));
  return firsts.map((stage, index) => {
    const others = stage.replaceable.map((at) => lineOf.get(stages[at]?.pedal ?? -1) ?? index);
    const count = stages.filter(({ pedal }) => pedal === stage.pedal).length;
    return { ...stage, count, replaceable: [...new Set(others)].filter((other) => other > index) };
  });
}
