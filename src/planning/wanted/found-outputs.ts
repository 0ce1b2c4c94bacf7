import { withGear } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import type { Feed, InletFeed } from '../../domain/plan.js';
import type { PartId, PedalId } from '../../domain/quantities.js';
import { supplyWith, wantedSupplyId, type MadeUpKit } from './made-up-kit.js';
import { alike, type Need } from './needs.js';

/** Outputs to look for that are alike, one for each of the pedals, or of the inlets whose ids stand among theirs. */
export type WantedOutputs = Need & { readonly pedals: readonly PedalId[] };

/** Whether it is an output to look for that the feed hangs on. */
export const isOnWanted = ({ supply }: Pick<Feed, 'supply'>): boolean => supply === wantedSupplyId;

/** In the order of the first pedal of each. */
export const outputsOf = (feeds: readonly Feed[], made: MadeUpKit): readonly WantedOutputs[] =>
  alike(feeds.map((feed) => ({ need: needBehind(feed, made), pedal: feed.pedal }))).map((same) => ({
    ...same[0].need,
    pedals: same.map(({ pedal }) => pedal),
  }));

function needBehind({ pedal, adapters }: Feed, { needs }: MadeUpKit): Need {
  const need = adapters.flatMap((id) => needs.get(id) ?? [])[0];
  if (need === undefined) throw new Error(`${pedal} hangs on no output that could be looked for`);
  return need;
}

/** The feed without the lead that stands for the output. */
export function withoutOutput<Fed extends Feed>(feed: Fed, { needs }: MadeUpKit): Fed {
  const others = (ids: readonly PartId[]): readonly PartId[] => ids.filter((id) => !needs.has(id));
  const { adapters, readings } = feed;
  return {
    ...feed,
    adapters: others(adapters),
    ...(readings !== undefined && {
      readings: {
        'centre-negative': others(readings['centre-negative']),
        'centre-positive': others(readings['centre-positive']),
      },
    }),
  };
}

/**
 * As if the outputs were found that inlets hang on: without them nobody could judge what hangs on the supplies that have these
 * inlets. The kit stays as it is where there are none.
 */
export function withFound(
  kit: Kit,
  inlets: readonly InletFeed[],
  made: MadeUpKit,
): { readonly kit: Kit; readonly inlets: readonly InletFeed[] } {
  const { source } = made;
  if (inlets.length === 0 || source === null) return { kit, inlets };
  const outputs = inlets.map((feed) => ({ ...needBehind(feed, made), outputs: 1 }));
  const there = inlets.map((feed, at) => ({ ...withoutOutput(feed, made), outputs: [at + 1] }));
  return {
    kit: withGear(kit, { supplies: [supplyWith('the supply to look for,', outputs, source)] }),
    inlets: there,
  };
}
