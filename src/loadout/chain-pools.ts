import { gathered } from '../../solver/gathered.js';
import type { Pedal } from '../domain/pedal.js';
import type { Bank, Setting, Supply } from '../domain/supply.js';
import type { ChainExit } from './chain-exits.js';
import { admits, type GroundMode } from './ground-mode.js';
import { loadOf } from './load.js';
import { outletOf, takenInChain } from './outlet.js';
import { tiersCounting } from './pedal-tiers.js';
import type { Exit } from './routes.js';
import { likeOf, pedalsOf, type Bench } from './bench.js';
import { outputTaken, weightsOf, type TotalLimit } from './totals.js';
import type { ChainPlace, ChainPool, OutputSetting } from './uses.js';

/** Every sort of chain that the supply's outputs can carry: at least two pedals, through one chain lead. */
export function chainPools(supply: Supply, limits: readonly TotalLimit[], bench: Bench): readonly ChainPool[] {
  const pools: ChainPool[] = [];
  if (bench.policy.chains === 'never') return pools;
  for (const [index, bank] of supply.banks.entries()) {
    if (bank.power === 'AC') continue;
    for (const [at, setting] of bank.settings.entries()) {
      const seat = { bank, setting, use: { bank: index, setting: at } };
      for (const sort of bench.chainExits(bank)) pools.push(...poolsAt(seat, sort, limits, bench));
    }
  }
  return pools;
}

type ChainSeat = { readonly bank: Bank; readonly setting: Setting; readonly use: OutputSetting };

function poolsAt(seat: ChainSeat, sort: ChainExit, limits: readonly TotalLimit[], bench: Bench): readonly ChainPool[] {
  const places = gathered(bench.classes, ({ like }, pedal) => placesOf(like, pedal, seat, sort.exit, limits, bench));
  const rating = loadOf(seat.setting.rating, bench.policy);
  const pools: ChainPool[] = [];
  for (const mode of bench.modes) {
    if (mode.noise === 'lone') continue;
    const admitted = places.filter(({ pedal }) => admits(mode, likeOf(pedal, bench)));
    if (!worthwhile(mode, seat.bank.isolated, admitted, bench)) continue;
    pools.push({ output: seat.use, exit: sort.exit, mode, rating, leads: sort.leads, places: admitted });
  }
  return pools;
}

function placesOf(
  like: Pedal,
  pedal: number,
  { bank, setting, use }: ChainSeat,
  exit: Exit,
  limits: readonly TotalLimit[],
  bench: Bench,
): readonly ChainPlace[] {
  const taken = takenInChain(like, outletOf(bank, setting), bench.policy);
  if (taken === null) return [];
  const ofOutput = [outputTaken(use.bank, setting.millivolts, taken)];
  return bench
    .routes(exit)(like)
    .map((route) => ({
      pedal,
      route,
      ...tiersCounting(like, setting.millivolts),
      ...taken,
      weights: weightsOf(limits, ofOutput, bench.policy),
    }));
}

/**
 * At least two pedals; where the chain is a ground domain of its own, a digital one among them if the mode is for digital
 * ones. On a common ground the digital pedal may hang on another output.
 */
function worthwhile(mode: GroundMode, isolated: boolean, places: readonly ChainPlace[], bench: Bench): boolean {
  const classes = new Set(places.map(({ pedal }) => pedal));
  const digital = [...classes].some((pedal) => likeOf(pedal, bench).digital);
  return pedalsOf(classes, bench) >= 2 && (digital || !isolated || mode.noise === 'any' || mode.noise === 'quiet');
}
