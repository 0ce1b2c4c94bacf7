import { countsLead, leadTiers, perCountedTier } from '../../../src/domain/counted-tiers.js';
import { natureOf } from '../../../src/domain/source.js';
import { allPedals, pedalsOf } from '../../../src/loadout/bench.js';
import { feedable, type SupplyUses } from '../../../src/loadout/supply-uses.js';
import { addBlock } from './block.js';
import type { Detail } from './detail.js';
import type { Block, Model } from './model.js';
import { ProgramBuilder, Sum } from './program-builder.js';
import type { Question } from '../../../src/formulation/question.js';
import type { CompactSheet } from './sheet.js';

/**
 * Board, catalogue and policy as an integer program: how many units of each supply, and how many pedals of each class in
 * each of the ways that the supply offers. Coarse detail makes it small and a relaxation; see `Detail`.
 */
export function compactProgram(question: Question, supplies: readonly SupplyUses[], detail: Detail): Model {
  const { bench } = question;
  const builder = new ProgramBuilder();
  const sheet: CompactSheet = {
    bench,
    detail,
    builder,
    measures: {
      unpowered: new Sum(),
      money: new Sum(),
      exposed: new Sum(),
      bricks: new Sum(),
      sockets: new Sum(),
      ...perCountedTier(() => new Sum()),
      newlyExposed: new Sum(),
      moved: new Sum(),
    },
    cover: bench.classes.map(() => new Sum()),
    leadUse: bench.kinds.map(() => new Sum()),
    kept: bench.classes.map(() => new Sum()),
  };
  const blocks = supplies.flatMap((uses) => addSupply(uses, question, sheet));
  stayRows(sheet);
  coverRows(question, sheet);
  leadRows(sheet);
  policyRows(question, sheet);
  countRow(question, sheet);
  return { program: builder.build(), blocks, measures: sheet.measures };
}

/** Units told apart one by one, then the pooled rest; the price is paid for units beyond the owned ones. */
function addSupply(uses: SupplyUses, question: Question, sheet: CompactSheet): readonly Block[] {
  const most = mostUnits(uses, question);
  const apart = Math.min(sheet.detail.units.get(uses.supply.id) ?? 0, most);
  const blocks: Block[] = [];
  for (let index = 0; index < apart; index += 1) blocks.push(addBlock(uses, index, 1, sheet));
  if (most > apart) blocks.push(addBlock(uses, apart, most - apart, sheet));
  for (const [index, later] of blocks.entries()) {
    const earlier = blocks[index - 1];
    if (earlier === undefined) continue;
    sheet.builder.atMost('units in order', unitSum([later]).addEach(earlier.counts, -later.units), 0);
  }
  priceUnits(uses, blocks, most, sheet);
  return blocks;
}

/** What a policy limits the number of. */
const limitedCounts = ['bricks', 'sockets'] as const;

/** Every unit in use feeds at least one pedal. */
function mostUnits(uses: SupplyUses, { bench }: Question): number {
  const pedals = pedalsOf(feedable(uses), bench);
  const { policy } = bench;
  const counted = natureOf(uses.supply.source);
  const limits = limitedCounts.map((of) => (counted[of] > 0 ? (policy[of] ?? Infinity) : Infinity));
  return Math.min(uses.owned + uses.forSale, pedals, ...limits);
}

function priceUnits(uses: SupplyUses, blocks: readonly Block[], most: number, sheet: CompactSheet): void {
  const { price } = uses.supply;
  if (price === null || most <= 0) return;
  if (uses.owned === 0) {
    sheet.measures.money.plus(unitSum(blocks), price);
    return;
  }
  if (uses.owned >= most) return;
  const bought = sheet.builder.column('bought', most - uses.owned);
  sheet.builder.atMost('bought', unitSum(blocks).add(bought, -1), uses.owned);
  sheet.measures.money.add(bought, price);
}

const unitSum = (blocks: readonly Block[]): Sum => new Sum().addEach(blocks.flatMap(({ counts }) => counts));

/** Every pedal is fed once, or counted as unpowered where the plan may be partial. */
function coverRows(question: Question, sheet: CompactSheet): void {
  for (const [pedal, { members }] of sheet.bench.classes.entries()) {
    const fed = sheet.cover[pedal] ?? new Sum();
    const free = question.partial ? members.length - (question.required.get(pedal) ?? 0) : 0;
    if (free > 0) {
      const column = sheet.builder.column('unpowered', free);
      fed.add(column);
      sheet.measures.unpowered.add(column);
    }
    sheet.builder.equal('fed', fed, members.length);
  }
}

/** A pedal that is not fed where it is today is moved; one that is pinned may not be. */
function stayRows({ bench, kept, measures, builder }: CompactSheet): void {
  for (const [pedal, { members, berth, pinned }] of bench.classes.entries()) {
    if (berth === null) continue;
    const stay = kept[pedal] ?? new Sum();
    const moved = builder.column('moved', members.length);
    builder.equal('stays or moved', new Sum().plus(stay).add(moved), members.length);
    measures.moved.add(moved);
    if (!pinned) continue;
    // A row without columns would say nothing: a column that is always zero makes it say that this cannot be.
    if (stay.shares.length === 0) stay.add(builder.column('nowhere', 0));
    builder.atLeast('pinned', stay, members.length);
  }
}

/** Rule `stock` for leads: those in use are taken from the owned ones and from those for sale, each at its price. */
function leadRows(sheet: CompactSheet): void {
  const most = 2 * allPedals(sheet.bench);
  for (const kind of sheet.bench.kinds) {
    const { index, supplyOf } = kind;
    const use = sheet.leadUse[index];
    if (use === undefined || use.shares.length === 0) continue;
    const taken = new Sum();
    for (const { pieces, price } of supplyOf) {
      const column = sheet.builder.column('leads', Math.min(pieces, most));
      taken.add(column);
      for (const tier of leadTiers) if (countsLead(tier, kind)) sheet.measures[tier].add(column);
      if (price > 0) sheet.measures.money.add(column, price);
    }
    sheet.builder.equal('leads', taken.plus(use, -1), 0);
  }
}

/** Rule `limit`: budget (without the noise price), bricks and mains sockets; and the question's own limit of exposed pedals. */
function policyRows({ bench: { policy }, mostExposed }: Question, { builder, measures }: CompactSheet): void {
  if (policy.budget !== null) builder.atMost('budget', measures.money, policy.budget);
  for (const of of limitedCounts) {
    const most = policy[of];
    if (most !== null) builder.atMost(of, measures[of], most);
  }
  if (mostExposed !== null) builder.atMost('exposed', measures.exposed, mostExposed);
}

/**
 * The number of supply units in use, as a column of its own: a fraction of it is the first thing to branch on, and to round
 * up in a bound.
 */
function countRow({ board }: Question, { builder, measures }: CompactSheet): void {
  const count = builder.column('all units', board.pedals.length);
  builder.equal('all units', new Sum().plus(measures.bricks).add(count, -1), 0);
}
