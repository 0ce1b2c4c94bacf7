import type { Chains } from './instances.js';
import type { Solve } from './measure.js';
import type { Options } from './options.js';
import type { EngineSetName } from './set-names.js';
import { sameSize, type Size } from './sizes.js';

/** The runs of one size, profile of chains and set: a row of a table. */
export type Group<Run = Solve> = {
  readonly size: Size;
  readonly chains: Chains;
  readonly set: EngineSetName;
  /** At least one. */
  readonly solves: readonly Run[];
  /** Those of the set that others are compared with; empty when it was not measured. */
  readonly reference: readonly Run[];
};

/** The set that the others' times are divided by. */
const referenceSet: EngineSetName = 'loadouts';

/** The rows in the order of the options, without those that nothing was measured for. */
export function groupsOf<Run extends Pick<Solve, 'shape' | 'set'>>(
  solves: readonly Run[],
  { sizes, chains, engines }: Pick<Options, 'sizes' | 'chains' | 'engines'>,
): readonly Group<Run>[] {
  return sizes.flatMap((size) =>
    chains.flatMap((profile) => {
      const alike = solves.filter(({ shape }) => shape.chains === profile && sameSize(shape, size));
      const of = (name: EngineSetName): readonly Run[] => alike.filter(({ set }) => set === name);
      return engines
        .map((set) => ({ size, chains: profile, set, solves: of(set), reference: of(referenceSet) }))
        .filter((group) => group.solves.length > 0);
    }),
  );
}
