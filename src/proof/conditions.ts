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

/** The two halves of a branch below some conditions. @throws Flaw when it counts what there is not. */
export function conditionsOf(
  branch: ProofBranch,
  path: readonly Condition[],
  { board, stock, inlets }: { readonly board: Board; readonly stock: Stock; readonly inlets: readonly InletSort[] },
): { readonly fewer: Condition; readonly more: Condition } {
  const { count, of = [], most } = branch;
  checkPlace(branch, stock);
  checkLikewise(branch, path, stock);
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
  const concerns = (group: StockGroup): boolean => counted.concerns(group) || isLikewise(group, branch);
  return {
    fewer: { ...counted, concerns, side: 'at most', amount: most },
    more: { ...counted, side: 'at least', amount: most + 1 },
  };
}

/**
 * The units of a group carry alike and may be numbered at will, as far as nothing is decided that tells them apart: a plan in
 * which any of these has some of what is counted is one in which the first of them has.
 * @throws Flaw when something is, or the unit that is named is not the first.
 */
function checkLikewise(branch: ProofBranch, path: readonly Condition[], { apart, groups }: Stock): void {
  const { supply, source, unit, slot = 0, most, likewise = [] } = branch;
  if (likewise.length === 0) return;
  const told = apart.find((entry) => entry.supply === supply && entry.source === source);
  if (slot === 0 || told === undefined || unit !== undefined || most > 0)
    throw new Flaw(
      'it takes units for alike where it does not tell whether one that is told apart has any of something',
    );
  const first = groups.find((group) => isUnit(group, branch, slot));
  for (const other of likewise) {
    if (other <= slot || other > told.units)
      throw new Flaw(`it takes unit ${other} of "${told.supply}" for unit ${slot}`);
    const group = groups.find((each) => isUnit(each, branch, other));
    if (first === undefined || group === undefined) continue;
    if (decidedOf(group, path, groups) !== decidedOf(first, path, groups))
      throw new Flaw(`it takes units ${slot} and ${other} of "${told.supply}" for alike, which are decided otherwise`);
  }
}

const isUnit = (group: StockGroup, { supply, source }: ProofCount, slot: number): boolean =>
  group.supply.id === supply && group.source === source && group.unit === null && group.slot === slot;

const isLikewise = (group: StockGroup, branch: ProofBranch): boolean =>
  branch.likewise?.some((slot) => isUnit(group, branch, slot)) === true;

/** What is decided of a group by itself, and which conditions count it together with others. */
function decidedOf(group: StockGroup, path: readonly Condition[], groups: readonly StockGroup[]): string {
  const decided = path.flatMap(({ concerns, counts, pedals, kinds, side, amount }, index) => {
    if (!concerns(group)) return [];
    if (groups.some((other) => other !== group && concerns(other))) return [String(index)];
    return [JSON.stringify([counts, [...pedals].sort(), [...kinds].sort(), side, amount])];
  });
  return decided.sort().join(' ');
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
