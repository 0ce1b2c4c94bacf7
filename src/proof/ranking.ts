import type { Board, Catalogue } from '../domain/board.js';
import { tiersOf, type Tier } from '../domain/aim.js';
import type { Part } from '../domain/part.js';
import type { Proof, ProofTier } from '../domain/proof.js';
import { Flaw } from './flaw.js';
import { inUnits, isMoney } from './measure.js';

/** The steps list the aim's tiers, each once and in order, and each step ranks plans as its tiers do. @throws Flaw. */
export function checkRanking(board: Board, catalogue: Catalogue, proof: Proof): void {
  const listed = proof.steps.flatMap(({ tiers }) => tiers.map(({ tier }) => tier));
  // Where no pedal may stay without power, every plan is equal in that.
  const expected = tiersOf(proof.aim).filter((tier) => proof.partial || tier !== 'unpowered');
  if (listed.join() !== expected.join())
    throw new Flaw(`its steps speak of ${listed.join(', ')}; the aim ${proof.aim} ranks ${expected.join(', ')}`);
  for (const { tiers } of proof.steps) checkWeights(tiers, board, catalogue);
}

/** No sum of all that comes after a tier reaches what one unit of the tier weighs. */
function checkWeights(tiers: readonly ProofTier[], board: Board, catalogue: Catalogue): void {
  for (const entry of tiers) if (isMoney(entry.tier)) checkUnit(entry, board, catalogue);
  let after = 0n;
  for (const entry of tiers.toReversed()) {
    if (!isMoney(entry.tier) && entry.unit !== 1) throw new Flaw(`it counts ${entry.tier} in units of ${entry.unit}`);
    if (BigInt(entry.weight) <= after)
      throw new Flaw(`its weight of ${entry.tier} does not outweigh the tiers after it`);
    after += BigInt(entry.weight) * inUnits(mostOf(entry.tier, board, catalogue), entry);
  }
}

/** Whatever a plan costs is a whole number of the tier's units. */
function checkUnit(entry: ProofTier, { gear, policy }: Board, { supplies, parts }: Catalogue): void {
  for (const { price, stock } of [...gear.supplies, ...supplies, ...gear.parts, ...parts])
    if (stock !== 0) inUnits(price ?? 0, entry);
  if (entry.tier === 'cost') inUnits(policy.noisePrice, entry);
}

/** The most that a tier comes to in any plan, in minor units where it is money. */
function mostOf(tier: Tier, board: Board, catalogue: Catalogue): number {
  const { pedals, policy } = board;
  const highGain = pedals.filter((pedal) => pedal.highGain).length;
  switch (tier) {
    case 'unpowered':
    case 'bricks':
      return pedals.length;
    case 'exposed':
      return highGain;
    case 'offPreferred':
      return pedals.filter(({ prefers }) => prefers !== null).length;
    case 'parts':
      return mostParts(board, catalogue);
    case 'money':
      return mostMoney(board, catalogue);
    case 'cost':
      return mostMoney(board, catalogue) + policy.noisePrice * highGain;
  }
}

/** A supply for every pedal, and every lead that pedals can have. */
function mostMoney(board: Board, catalogue: Catalogue): number {
  const dearest = (things: readonly { readonly price: number | null }[]): number =>
    things.reduce((most, { price }) => Math.max(most, price ?? 0), 0);
  return (
    board.pedals.length * dearest([...board.gear.supplies, ...catalogue.supplies]) +
    mostParts(board, catalogue) * dearest([...board.gear.parts, ...catalogue.parts])
  );
}

/** Two adapters and a join lead for every pedal, a chain lead for every two. */
function mostParts({ pedals, gear, policy }: Board, { parts }: Catalogue): number {
  const has = (kind: Part['role']['kind']): boolean => [...gear.parts, ...parts].some(({ role }) => role.kind === kind);
  const chains = policy.chains === 'allow' && has('chain') ? Math.floor(pedals.length / 2) : 0;
  return (has('adapter') ? 2 * pedals.length : 0) + (has('join') ? pedals.length : 0) + chains;
}
