import { tiersOf, type Tier } from '../domain/aim.js';
import { isLeadTier, mostCounted, type LeadKind } from '../domain/counted-tiers.js';
import { isPedalTier } from '../domain/pedal-tier.js';
import type { Part } from '../domain/part.js';
import type { Proof, ProofTier } from '../domain/proof.js';
import type { ProofGround } from './claim.js';
import { piecesPaid } from './batteries.js';
import { Flaw } from './flaw.js';
import { countsNoise, countsSupplies, inUnits, isMoney } from './measure.js';
import { judges } from './pedal-tiers.js';

/** The steps list the aim's tiers, each once and in order, and each step ranks plans as its tiers do. @throws Flaw. */
export function checkRanking(proof: Proof, ground: ProofGround): void {
  const listed = proof.steps.flatMap(({ tiers }) => tiers.map(({ tier }) => tier));
  // Where no pedal may stay without power, every plan is equal in that.
  const expected = tiersOf(proof.aim, ground.board.policy).filter((tier) => proof.partial || tier !== 'unpowered');
  if (listed.join() !== expected.join())
    throw new Flaw(`its steps speak of ${listed.join(', ')}; the aim ${proof.aim} ranks ${expected.join(', ')}`);
  for (const { tiers } of proof.steps) checkWeights(tiers, ground);
}

/** No sum of all that comes after a tier reaches what one unit of the tier weighs. */
function checkWeights(tiers: readonly ProofTier[], ground: ProofGround): void {
  for (const entry of tiers) if (isMoney(entry.tier)) checkUnit(entry, ground);
  let after = 0n;
  for (const entry of tiers.toReversed()) {
    if (!isMoney(entry.tier) && entry.unit !== 1) throw new Flaw(`it counts ${entry.tier} in units of ${entry.unit}`);
    if (BigInt(entry.weight) <= after)
      throw new Flaw(`its weight of ${entry.tier} does not outweigh the tiers after it`);
    after += BigInt(entry.weight) * inUnits(mostOf(entry.tier, ground), entry);
  }
}

/** Whatever a plan costs is a whole number of the tier's units. */
function checkUnit(entry: ProofTier, { stock, board }: ProofGround): void {
  for (const price of [...supplyPrices(stock), ...leadPrices(stock)]) inUnits(price, entry);
  if (countsNoise(entry.tier)) inUnits(board.policy.noisePrice, entry);
  if (countsSupplies(entry.tier)) inUnits(board.policy.supplyPrice, entry);
}

type Stock = ProofGround['stock'];
const supplyPrices = ({ groups }: Stock): readonly number[] => groups.map(({ price }) => price);
const leadPrices = ({ kinds }: Stock): readonly number[] =>
  kinds.flatMap(({ offers }) => offers.map(({ price }) => price));

/** The most that a tier comes to in any plan, in minor units where it is money. */
export function mostOf(tier: Tier, ground: ProofGround): number {
  const { pedals, policy } = ground.board;
  if (isPedalTier(tier)) return pedals.filter(judges[tier].mayCount).length;
  if (isLeadTier(tier)) return mostCounted(tier, mostLeads(ground));
  switch (tier) {
    case 'unpowered':
      return pedals.length;
    case 'bricks':
      return mostUnits(ground);
    case 'exposed':
      return mostExposed(ground);
    case 'money':
      return mostMoney(ground);
    case 'outlay':
      return mostMoney(ground) + policy.supplyPrice * mostUnits(ground);
    case 'moved':
      return ground.board.wiring.length;
    case 'cost':
    case 'newCost':
      return mostMoney(ground) + policy.supplyPrice * mostUnits(ground) + policy.noisePrice * mostExposed(ground);
  }
}

/** It takes a digital pedal other than itself to expose a pedal. */
export function mostExposed({ board: { pedals } }: ProofGround): number {
  const digital = pedals.filter((pedal) => pedal.digital).length;
  return pedals.filter((pedal) => pedal.highGain && digital > (pedal.digital ? 1 : 0)).length;
}

/** Every unit in use feeds a pedal or an inlet, and every inlet's unit a pedal. */
const mostUnits = (ground: ProofGround): number => ground.board.pedals.length + mostInlets(ground);

const mostInlets = ({ board: { pedals }, inlets }: ProofGround): number =>
  Math.min(
    pedals.length,
    inlets.reduce((sum, { members }) => sum + members.length, 0),
  );

/** A supply for every pedal and every inlet, every lead that pedals can have, and every battery that they can run on. */
function mostMoney(ground: ProofGround): number {
  return mostUnits(ground) * dearest(supplyPrices(ground.stock)) + mostOnLeads(ground) + mostOnBatteries(ground);
}

function mostOnBatteries({ board, stock }: ProofGround): number {
  const pieces = stock.groups.flatMap(({ supply }) =>
    board.pedals.map((pedal) => piecesPaid(pedal, supply, board.policy) ?? 0),
  );
  return pieces.reduce((sum, each) => sum + each, 0) * dearest(leadPrices(stock));
}

const dearest = (prices: readonly number[]): number => prices.reduce((most, price) => Math.max(most, price), 0);

/** What all leads together can cost. */
export function mostOnLeads(ground: ProofGround): number {
  const { adapter, join, chain } = mostLeads(ground);
  return (adapter + join + chain) * dearest(leadPrices(ground.stock));
}

/** Two adapters for every pedal and every inlet, a join lead for every pedal, a chain lead for every two. */
function mostLeads(ground: ProofGround): Readonly<Record<LeadKind, number>> {
  const {
    board: { pedals, policy },
    stock,
  } = ground;
  const has = (kind: Part['role']['kind']): boolean =>
    stock.kinds.some(({ role, offers }) => role.kind === kind && offers.length > 0);
  return {
    adapter: has('adapter') ? 2 * mostUnits(ground) : 0,
    join: has('join') ? pedals.length : 0,
    chain: policy.chains === 'allow' && has('chain') ? Math.floor(pedals.length / 2) : 0,
  };
}
