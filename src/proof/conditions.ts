import type { Board } from '../domain/board.js';
import type { ProofBranch, ProofCount } from '../domain/proof.js';
import { Flaw } from './flaw.js';
import { sortNamed, type InletSort } from './inlets.js';
import type { StockGroup, StockLeadKind, Stock } from './stock.js';

/** What holds in one half of a branch: the number that it goes by is at most `most`, or at least `least`. */
export type Condition = {
  readonly counts: 'units' | 'pedals' | 'leads';
  readonly concerns: (group: StockGroup) => boolean;
  /** The pedals that are counted, by their places on the board; inlets by those that stand for them. */
  readonly pedals: ReadonlySet<number>;
  /** The lead kinds that are counted. */
  readonly kinds: ReadonlySet<number>;
  readonly side: 'at most' | 'at least';
  readonly amount: number;
};

/** The two halves of a branch. @throws Flaw when it counts what there is not. */
export function conditionsOf(
  branch: ProofBranch,
  { board, stock, inlets }: { readonly board: Board; readonly stock: Stock; readonly inlets: readonly InletSort[] },
): { readonly fewer: Condition; readonly more: Condition } {
  const { count, of = [], most } = branch;
  checkPlace(branch, stock);
  const among = branch.among === undefined ? null : new Set<string>(branch.among);
  const counted = {
    counts: count === 'inlets' ? 'pedals' : count,
    concerns: (group: StockGroup) => isConcerned(group, branch, among),
    pedals:
      count === 'pedals'
        ? pedalsNamed(of, board)
        : new Set<number>(count === 'inlets' ? sortNamed(of, inlets).members : []),
    kinds: count === 'leads' ? kindsNamed(of, stock.kinds) : new Set<number>(),
  } as const;
  return {
    fewer: { ...counted, side: 'at most', amount: most },
    more: { ...counted, side: 'at least', amount: most + 1 },
  };
}

function checkPlace({ supply, among, source, unit, slot }: ProofCount, { supplies, apart, groups }: Stock): void {
  for (const id of [...(supply === null ? [] : [supply]), ...(among ?? [])])
    if (!supplies.has(id)) throw new Flaw(`it names the supply "${id}", which there is not`);
  if (supply !== null && among !== undefined) throw new Flaw(`it counts units of "${supply}" and of a set at once`);
  if (unit !== undefined && !groups.some((group) => group.supply.id === supply && group.unit === unit))
    throw new Flaw(`it counts on unit ${unit} of "${supply ?? 'any supply'}", which nothing is plugged into`);
  if (slot === undefined) return;
  const told = apart.find((entry) => entry.supply === supply && entry.source === source);
  if (told === undefined || slot > told.units)
    throw new Flaw(`it counts on unit ${slot} of "${supply ?? 'any supply'}", which is not told apart`);
}

/** What names a supply but no unit means those of its units that are not told apart; of a set all units count. */
function isConcerned(
  group: StockGroup,
  { supply, source, unit, slot }: ProofCount,
  among: ReadonlySet<string> | null,
): boolean {
  if (source !== null && group.source !== source) return false;
  if (supply === null) return among === null || among.has(group.supply.id);
  return group.supply.id === supply && group.unit === (unit ?? null) && group.slot === (slot ?? null);
}

export function pedalsNamed(ids: readonly string[], { pedals }: Board): ReadonlySet<number> {
  const places = new Map(pedals.map(({ id }, index) => [String(id), index]));
  return new Set(
    ids.map((id) => {
      const place = places.get(id);
      if (place === undefined) throw new Flaw(`it names the pedal "${id}", which is not on the board`);
      return place;
    }),
  );
}

/** The kinds that parts make up. @throws Flaw when a part is unknown, or a kind is named in part only. */
export function kindsNamed(ids: readonly string[], kinds: readonly StockLeadKind[]): ReadonlySet<number> {
  const named = new Set(ids);
  const known = new Set(kinds.flatMap(({ parts }) => parts.map(({ id }) => String(id))));
  for (const id of named) if (!known.has(id)) throw new Flaw(`it names the part "${id}", which there is not`);
  const found = kinds.flatMap((kind, index) => {
    if (!kind.parts.some(({ id }) => named.has(id))) return [];
    const missing = [...kind.atHand].find((id) => !named.has(id));
    if (missing !== undefined) throw new Flaw(`it leaves out the part "${missing}", which serves like others it names`);
    return [index];
  });
  return new Set(found);
}
