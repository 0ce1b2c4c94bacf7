import type { PedalId, SupplyId } from '../../domain/quantities.js';
import type { Effort } from '../../formulation/optimiser.js';
import { questionOf } from '../../formulation/question.js';
import { feedable } from '../../loadout/supply-uses.js';
import type { Refusal } from '../answer.js';
import { withinLimits } from '../reasons.js';
import { refusalsOf } from '../refusals.js';
import { solve, type Situation } from '../solve.js';
import type { Conflict } from './conflict.js';
import { factsOf, relaxed, sameFact, type Fact } from './facts.js';
import { withPolicy } from './limit-ways.js';

/** A conflict with the numbers that make an argument of it. */
export type Argument = {
  readonly conflict: Conflict;
  /** Which supplies, owned or for sale, have an output for each of the pedals while nothing else hangs on it. */
  readonly feeders: readonly { readonly pedals: readonly PedalId[]; readonly supplies: readonly SupplyId[] }[];
  /** Of the pedals that no supply at all can feed: for every rule in the way the nearest miss. */
  readonly refusals: readonly { readonly pedal: PedalId; readonly refusals: readonly Refusal[] }[];
  /** What these pedals take at the least when one limit of the conflict is lifted; null where it was not settled. */
  readonly least: {
    readonly budget?: number | null;
    readonly bricks?: number | null;
    readonly sockets?: number | null;
  };
  /** The most of these pedals that one supply feeds at once; asked where the number of supplies matters. */
  readonly perSupply?: number | null;
};

/** The numbers for a conflict of this board and shop. */
export async function argumentFor(conflict: Conflict, situation: Situation, effort: Effort): Promise<Argument> {
  const asked = asConflict(conflict, situation);
  const limits = (['budget', 'bricks', 'sockets'] as const).filter((limit) =>
    conflict.facts.some(({ kind }) => kind === limit),
  );
  const least: { budget?: number | null; bricks?: number | null; sockets?: number | null } = {};
  for (const limit of limits) least[limit] = await leastOf(limit, conflict, asked, effort);
  const counts = limits.some((limit) => limit !== 'budget') && conflict.pedals.length > 1;
  return {
    conflict,
    feeders: feedersOf(conflict, situation),
    refusals: unfeedable(conflict, situation),
    least,
    ...(counts ? { perSupply: await mostPerSupply(conflict, asked, effort) } : {}),
  };
}

/** The board and shop with the facts of the conflict and no others. */
function asConflict({ facts }: Conflict, situation: Situation): Situation {
  const others = factsOf(situation).filter((fact) => !facts.some((each) => sameFact(each, fact)));
  return relaxed(situation, others);
}

async function leastOf(
  limit: 'budget' | 'bricks' | 'sockets',
  { pedals }: Conflict,
  asked: Situation,
  effort: Effort,
): Promise<number | null> {
  const tier = limit === 'budget' ? 'money' : 'bricks';
  const lifted = withPolicy(asked, { [limit]: null });
  const solved = await solve(lifted, { tiers: [tier], required: new Set(pedals) }, effort);
  return solved.kind === 'plan' ? (solved.values.get(tier) ?? null) : null;
}

async function mostPerSupply({ pedals }: Conflict, asked: Situation, effort: Effort): Promise<number | null> {
  const alone = withPolicy(asked, { budget: null, bricks: 1, sockets: null });
  const board = { ...alone.board, pedals: alone.board.pedals.filter(({ id }) => pedals.includes(id)) };
  const solved = await solve({ ...alone, board }, { tiers: ['unpowered'], required: new Set() }, effort);
  return solved.kind === 'plan' ? pedals.length - solved.wiring.unpowered.length : null;
}

/** Under the rules as they are, whatever the limits. Pedals that the same supplies feed share an entry. */
function feedersOf({ pedals }: Conflict, { board, catalogue }: Situation): Argument['feeders'] {
  const question = questionOf(board, catalogue, { tiers: [], partial: true });
  const groups = new Map<string, { pedals: PedalId[]; supplies: readonly SupplyId[] }>();
  for (const pedal of pedals) {
    const index = question.bench.classes.findIndex(({ members }) => members.some(({ id }) => id === pedal));
    const feeding = question.supplies
      .filter((uses) => feedable(withinLimits(uses)).has(index))
      .map(({ supply }) => supply.id);
    const supplies = [...new Set(feeding)];
    const group = groups.get(supplies.join()) ?? { pedals: [], supplies };
    group.pedals.push(pedal);
    groups.set(supplies.join(), group);
  }
  return [...groups.values()];
}

function unfeedable(conflict: Conflict, situation: Situation): Argument['refusals'] {
  const { board, catalogue } = situation;
  const unfed = feedersOf(conflict, situation).flatMap(({ pedals, supplies }) => (supplies.length === 0 ? pedals : []));
  return board.pedals
    .filter(({ id }) => unfed.includes(id))
    .map((pedal) => ({ pedal: pedal.id, refusals: refusalsOf(pedal, board, catalogue) }));
}

/** Whether a fact takes part. */
export const takesPart = ({ conflict }: Argument, kind: Fact['kind']): boolean =>
  conflict.facts.some((fact) => fact.kind === kind);
