import { gathered } from '../gathered.js';
import { columnCaps, type Decisions } from './decisions.js';
import { featurePrices, type DualPrices } from './dual-prices.js';
import type { CoverColumn, CoverProgram, PricingAnswer } from './program.js';

/** What pricing found under dual prices: the groups' bounds, and columns worth having. */
type Pricing<Content> = {
  /** Null where not all groups were looked at: then nothing is bounded. */
  readonly worths: readonly number[] | null;
  readonly fresh: readonly CoverColumn<Content>[];
};

/** Takes a column into the relaxation. @returns whether it was not there yet. */
type Take<Content> = (column: CoverColumn<Content>) => boolean;
type Priced<Content> = (group: number, effort: 'quick' | 'exact') => PricingAnswer<Content>;

/**
 * With so many new columns a round has enough: under the dual prices that they lead to, most groups that were not looked at have
 * none ("Partial pricing", in "Computational techniques of the simplex method", 2003).
 */
const enough = 10;

/** Pricing at one node, round after round: each finds columns that are new to the relaxation, or has looked at all groups. */
export class PricingRounds<Content> {
  readonly #program: CoverProgram<Content>;
  readonly #decisions: Decisions;
  readonly #effort: 'quick' | 'exact';
  /** Groups that can be exchanged for one another, or a single one; each is looked at as a whole. */
  readonly #kinds: readonly (readonly number[])[];
  /** Where the last round that did not look at all of them ended. */
  #turn = 0;
  /** Groups that had columns are likely to have more: the others wait until they have none. */
  #lively: readonly number[] = [];

  constructor(program: CoverProgram<Content>, decisions: Decisions, effort: 'quick' | 'exact') {
    this.#program = program;
    this.#decisions = decisions;
    this.#effort = effort;
    this.#kinds = kindsOf(program);
  }

  /**
   * Looks at the groups that had columns in the last round, then at the others in turn, each for what comes easily. Only when none
   * has anything are those that this leaves in doubt priced exactly, where that is wanted, until one has a column.
   */
  next(duals: DualPrices, take: Take<Content>): Pricing<Content> {
    const pricing = this.#round(pricer(this.#program, this.#decisions, duals), take);
    this.#lively = [...new Set(pricing.fresh.map(({ group }) => group))];
    return pricing;
  }

  #round(price: Priced<Content>, take: Take<Content>): Pricing<Content> {
    const early = gathered(this.#lively, (group) => price(group, 'quick').columns).filter(take);
    return early.length > 0 ? { worths: null, fresh: early } : this.#inTurn(price, take);
  }

  #inTurn(price: Priced<Content>, take: Take<Content>): Pricing<Content> {
    const worths = this.#program.groups.map(() => 0);
    const fresh: CoverColumn<Content>[] = [];
    const { length } = this.#kinds;
    let isVain = true;
    for (let looked = 0; looked < length; looked += 1) {
      if (fresh.length >= enough) {
        this.#turn = (this.#turn + looked) % length;
        return { worths: null, fresh };
      }
      for (const group of this.#kinds[(this.#turn + looked) % length] ?? []) {
        const { bound, columns } = price(group, 'quick');
        worths[group] = bound;
        isVain &&= columns.length === 0;
        fresh.push(...columns.filter(take));
      }
    }
    return isVain && this.#effort === 'exact' ? exactly(worths, price, take) : { worths, fresh };
  }
}

/** Prices the groups that may be worth something exactly, until one has a column. */
function exactly<Content>(worths: number[], price: Priced<Content>, take: Take<Content>): Pricing<Content> {
  for (const [group, worth] of worths.entries()) {
    if (worth <= 0) continue;
    const { bound, columns } = price(group, 'exact');
    worths[group] = Math.min(worth, bound);
    if (columns.length > 0) return { worths, fresh: columns.filter(take) };
  }
  return { worths, fresh: [] };
}

/** The columns that come easily in any group. */
export function easyColumns<Content>(
  program: CoverProgram<Content>,
  decisions: Decisions,
  duals: DualPrices,
): readonly CoverColumn<Content>[] {
  const price = pricer(program, decisions, duals);
  return gathered(program.groups, (_, group) => price(group, 'quick').columns);
}

function kindsOf({ groups }: Pick<CoverProgram<unknown>, 'groups'>): readonly (readonly number[])[] {
  const kinds = new Map<string | number, number[]>();
  for (const [group, { alike }] of groups.entries()) {
    const kind = kinds.get(alike ?? group);
    if (kind === undefined) kinds.set(alike ?? group, [group]);
    else kind.push(group);
  }
  return [...kinds.values()];
}

/**
 * Prices groups that may still be used. Of groups that can be exchanged for one another and have the same prices and caps one is
 * asked and gets the columns: until it has as many as it may have, and so a price of its own, the others need none.
 */
function pricer<Content>(
  program: CoverProgram<Content>,
  { conditions, most }: Decisions,
  duals: DualPrices,
): Priced<Content> {
  const pricesIn = featurePrices(program, conditions, duals);
  const capsIn = columnCaps(conditions, program);
  const known = new Map<string, number>();
  return (group, effort) => {
    if ((most[group] ?? 0) === 0) return { bound: 0, columns: [] };
    const [prices, caps] = [pricesIn(group), capsIn(group)];
    const ask = () => program.price({ group, duals: prices, scale: duals.scale, floor: 0, caps, effort });
    const alike = program.groups[group]?.alike ?? null;
    if (alike === null) return ask();
    const key = JSON.stringify([alike, effort, [...prices], [...caps]]);
    const bound = known.get(key);
    if (bound !== undefined) return { bound, columns: [] };
    const answer = ask();
    known.set(key, answer.bound);
    return answer;
  };
}
