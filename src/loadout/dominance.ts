import type { Pedal } from '../domain/pedal.js';
import type { Source } from '../domain/source.js';
import type { Bank, Setting, Supply, Total } from '../domain/supply.js';
import { acceptsVolts, polaritiesOf } from './outlet.js';
import { pedalLoad } from './load.js';
import { mostUnits, type Bench } from './bench.js';
import { inletSortOf } from './inlet-sort.js';
import type { SupplyUses } from './supply-uses.js';

/**
 * Leaves out supplies that another one matches in every respect at no higher price. That is right only while there are
 * units enough of the better one, so it must be for sale without a limit that could ever be felt; owned units stay.
 * What is left has plans of the same score in every tier. Units that something is plugged into today are never left out.
 */
export function withoutDominated(all: readonly SupplyUses[], bench: Bench): readonly SupplyUses[] {
  const units = mostUnits(bench);
  const useful = new Map(all.map((uses) => [uses, usefulBanks(uses.supply, bench)]));
  const order = [...all].sort((a, b) => (a.supply.price ?? Infinity) - (b.supply.price ?? Infinity));
  const kept: SupplyUses[] = [];
  const plenty: SupplyUses[] = [];
  for (const uses of order) {
    const banks = useful.get(uses) ?? [];
    const better = uses.unit === null && plenty.some((other) => dominates(other, useful.get(other) ?? [], uses, banks));
    if (!better) kept.push(uses);
    else if (uses.owned > 0) kept.push({ ...uses, forSale: 0 });
    if (!better && uses.supply.price !== null && uses.forSale >= units) plenty.push(uses);
  }
  return all.flatMap((uses) => kept.find(({ supply, unit }) => supply === uses.supply && unit === uses.unit) ?? []);
}

/** A bank as far as it matters to a board: settings that no pedal can use are left out, ratings beyond use are cut. */
type UsefulBank = { readonly bank: Bank; readonly settings: readonly Setting[] };

function usefulBanks(supply: Supply, bench: Bench): readonly UsefulBank[] {
  return supply.banks
    .map((bank) => ({ bank, settings: bank.settings.filter((setting) => isUseful(bank, setting, bench)) }))
    .filter(({ settings }) => settings.length > 0)
    .map(({ bank, settings }) => ({
      bank,
      settings: settings.map((setting) => ({ ...setting, rating: usefulRating(bank, setting, bench) })),
    }));
}

function isUseful(bank: Bank, setting: Setting, bench: Bench): boolean {
  if (canJoin(bank, bench)) return true;
  return bench.classes.some(({ like }) => like.power === bank.power && acceptsVolts(like, setting.millivolts));
}

const canJoin = (bank: Bank, bench: Bench): boolean =>
  bank.joins.length > 0 &&
  bank.isolated &&
  bench.kinds.some(({ role, fits }) => role.kind === 'join' && fits === bank.plug);

const canChain = (bank: Bank, bench: Bench): boolean =>
  bench.policy.chains === 'allow' &&
  bank.power === 'DC' &&
  bench.kinds.some(({ role, fits }) => role.kind === 'chain' && fits === bank.plug);

/**
 * Where outputs neither chain nor join, a rating only matters by which pedals it is enough for; elsewhere it is cut to
 * what all pedals together could ask for.
 */
function usefulRating(bank: Bank, setting: Setting, bench: Bench): Setting['rating'] {
  if (canJoin(bank, bench)) return setting.rating;
  const shared = canChain(bank, bench);
  let enough = 0;
  let everything = 0;
  for (const { like, members } of bench.classes) {
    const needed = like.power === bank.power ? mostNeeded(like, setting, bench, shared) : null;
    if (needed === null) continue;
    everything += needed * members.length;
    if (needed <= setting.rating) enough = Math.max(enough, needed);
  }
  return (shared ? Math.min(setting.rating, everything) : enough) as Setting['rating'];
}

/** The rating in µA, rounded up, that is enough for a pedal at a setting's volts; null when it does not take them. */
function mostNeeded(like: Pedal, { millivolts }: Setting, { policy }: Bench, shared: boolean): number | null {
  const load = acceptsVolts(like, millivolts) ? pedalLoad(like, millivolts, policy) : undefined;
  if (load === undefined) return null;
  const { alone, chained } = policy.headroom;
  const factors = shared ? [alone, chained] : [alone];
  const rounded = factors.map((factor) => {
    const unit = BigInt(policy.guess.denominator) * BigInt(factor.denominator);
    return Number((load * BigInt(factor.numerator) + unit - 1n) / unit);
  });
  return Math.max(...rounded, like.startup ?? 0);
}

function dominates(
  better: SupplyUses,
  betterBanks: readonly UsefulBank[],
  worse: SupplyUses,
  worseBanks: readonly UsefulBank[],
): boolean {
  if (!lastsAsLong(better.supply.source, worse.supply.source)) return false;
  if (inletSortOf(better.supply) !== inletSortOf(worse.supply)) return false;
  if ((better.supply.price ?? Infinity) > (worse.supply.price ?? Infinity)) return false;
  return totalCovers(better.supply.total, worse.supply.total) && banksCover(betterBanks, worseBanks);
}

/** What stands on the mains takes a socket, which no power bank does. */
function lastsAsLong(better: Source, worse: Source): boolean {
  if (better.kind !== 'charge' || worse.kind !== 'charge') return better.kind === worse.kind;
  return better.milliwattHours >= worse.milliwattHours;
}

/** Every bank of the worse supply finds a bank of its own in the better one. */
function banksCover(better: readonly UsefulBank[], worse: readonly UsefulBank[]): boolean {
  const [first, ...rest] = worse;
  if (first === undefined) return true;
  return better.some((bank, index) => bankCovers(bank, first) && banksCover(better.toSpliced(index, 1), rest));
}

function bankCovers(better: UsefulBank, worse: UsefulBank): boolean {
  const [one, two] = [better.bank, worse.bank];
  return (
    one.power === two.power &&
    one.plug === two.plug &&
    polaritiesOf(two).every((polarity) => polaritiesOf(one).includes(polarity)) &&
    one.outputs >= two.outputs &&
    (one.isolated || !two.isolated) &&
    (one.switching === 'each' || two.switching === 'together' || worse.settings.length === 1) &&
    two.joins.every((mode) => one.joins.includes(mode)) &&
    totalCovers(one.total, two.total) &&
    worse.settings.every((setting) =>
      better.settings.some((other) => settingCovers(other, setting, two.joins.length === 0)),
    )
  );
}

/** Regulated is better by itself; in a join, other open-circuit volts could add up to volts that a pedal refuses. */
const settingCovers = (better: Setting, worse: Setting, neverJoined: boolean): boolean =>
  better.millivolts === worse.millivolts &&
  better.rating >= worse.rating &&
  (better.openCircuit === worse.openCircuit || (neverJoined && better.openCircuit === null));

function totalCovers(better: Total | null, worse: Total | null): boolean {
  if (better === null) return true;
  if (worse === null) return false;
  if (better.kind === 'current') return worse.kind === 'current' && better.microamps >= worse.microamps;
  return worse.kind === 'power' && better.milliwatts >= worse.milliwatts;
}
