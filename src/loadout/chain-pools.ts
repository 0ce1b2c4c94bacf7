import type { Pedal } from '../domain/pedal.js';
import type { Bank, Setting, Supply } from '../domain/supply.js';
import type { ChainExit } from './chain-exits.js';
import { admits, type GroundMode } from './ground-mode.js';
import { loadOf } from './load.js';
import { outletOf, takenInChain } from './outlet.js';
import { tiersCounting } from './pedal-tiers.js';
import type { Exit } from './routes.js';
import { likeOf, pedalsOf, type Bench } from './bench.js';
import { weightsOf, type TotalLimit } from './totals.js';
import type { ChainPlace, ChainPool, OutputSetting } from './uses.js';

/** Every sort of chain that the supply's outputs can carry: at least two pedals, through one chain lead. */
export function chainPools(supply: Supply, limits: readonly TotalLimit[], bench: Bench): readonly ChainPool[] {
  if (bench.policy.chains === 'never') return [];
  return supply.banks.flatMap((bank, index) =>
    bank.power === 'AC'
      ? []
      : bank.settings.flatMap((setting, at) =>
          bench
            .chainExits(bank)
            .flatMap((sort) => poolsAt({ bank, setting, use: { bank: index, setting: at } }, sort, limits, bench)),
        ),
  );
}

type ChainSeat = { readonly bank: Bank; readonly setting: Setting; readonly use: OutputSetting };

function poolsAt(seat: ChainSeat, sort: ChainExit, limits: readonly TotalLimit[], bench: Bench): readonly ChainPool[] {
  const places = bench.classes.flatMap(({ like }, pedal) => placesOf(like, pedal, seat, sort.exit, limits, bench));
  return bench.modes.flatMap((mode) => {
    if (mode.noise === 'lone') return [];
    const admitted = places.filter(({ pedal }) => admits(mode, likeOf(pedal, bench)));
    if (!worthwhile(mode, seat.bank.isolated, admitted, bench)) return [];
    return [{ ...sort, output: seat.use, mode, rating: loadOf(seat.setting.rating, bench.policy), places: admitted }];
  });
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
  const ofOutput = [{ bank: use.bank, millivolts: setting.millivolts, ...taken, repeats: false }];
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
