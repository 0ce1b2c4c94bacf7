import type { Board, Catalogue } from '../domain/board.js';
import type { Pedal } from '../domain/pedal.js';
import { decimalOfThousandths, factorText, type Factor } from '../domain/quantities.js';
import type { Rule } from '../domain/rules.js';
import type { Bank, Setting, Supply, Total } from '../domain/supply.js';
import { partOffers, supplyOffers, type Offer } from '../loadout/case.js';
import { leadKinds } from '../loadout/lead-kinds.js';
import { drawAt, loadOf, pedalLoad, withinFactor } from '../loadout/load.js';
import { acceptsVolts, exitOf, outletOf, voltsSuit } from '../loadout/outlet.js';
import { router, type Router } from '../loadout/routes.js';
import { mainsSuit } from '../loadout/supply-uses.js';
import { totalLimits, weightsOf } from '../loadout/totals.js';
import type { Refusal } from './answer.js';

/**
 * Why no output feeds a pedal, even alone: for every rule that stops some output, the output that comes nearest to
 * passing it. Rules stand in the order in which a feed is thought through, the last passed first: what fails only at
 * the end was nearest to working.
 */
export function refusalsOf(pedal: Pedal, board: Board, catalogue: Catalogue | null): readonly Refusal[] {
  const leads = [...(catalogue?.parts ?? []), ...board.gear.parts];
  const shop: Shop = {
    board,
    routes: router(leadKinds(partOffers(board, catalogue))),
    routesWithAnyStock: router(leadKinds(leads.map((part) => ({ part, owned: 1, forSale: 0 })))),
  };
  const misses = supplyOffers(board, catalogue).flatMap((offer) => missesOf(pedal, offer, shop));
  return [...checks]
    .reverse()
    .flatMap(({ rule }) => nearest(misses.filter((miss) => miss.rule === rule)) ?? [])
    .map(({ rule, supply, bank, message }) => ({
      rule,
      at: { supply: supply.id, outputs: Array.from({ length: bank.outputs }, (_, index) => bank.firstOutput + index) },
      message,
    }));
}

type Shop = { readonly board: Board; readonly routes: Router; readonly routesWithAnyStock: Router };

/** One output at one setting, and the pedal that asks for it. */
type Attempt = {
  readonly pedal: Pedal;
  readonly offer: Offer;
  readonly supply: Supply;
  readonly bank: Bank;
  readonly setting: Setting;
  readonly shop: Shop;
};

/** How an attempt fails: the larger the nearness, the nearer it came. */
type Miss = {
  readonly rule: Rule;
  readonly supply: Supply;
  readonly bank: Bank;
  readonly nearness: number;
  readonly message: string;
};

type Failure = { readonly nearness: number; readonly message: string };
type Check = { readonly rule: Rule; readonly fails: (attempt: Attempt) => Failure | null };

const checks: readonly Check[] = [
  { rule: 'mains', fails: failsMains },
  { rule: 'power', fails: failsPower },
  { rule: 'voltage', fails: failsVoltage },
  { rule: 'plug', fails: failsPlug },
  { rule: 'polarity', fails: failsPolarity },
  { rule: 'current', fails: failsCurrent },
  { rule: 'startup', fails: failsStartup },
  { rule: 'total', fails: failsTotal },
  { rule: 'stock', fails: failsStock },
];

function missesOf(pedal: Pedal, offer: Offer, shop: Shop): readonly Miss[] {
  const { supply } = offer;
  return supply.banks.flatMap((bank) =>
    bank.settings.flatMap((setting) => {
      const attempt = { pedal, offer, supply, bank, setting, shop };
      for (const { rule, fails } of checks) {
        const failure = fails(attempt);
        if (failure !== null) return [{ rule, supply, bank, ...failure }];
      }
      return [];
    }),
  );
}

function nearest(misses: readonly Miss[]): Miss | undefined {
  return misses.reduce<Miss | undefined>(
    (best, miss) => (best && best.nearness >= miss.nearness ? best : miss),
    undefined,
  );
}

const volts = (millivolts: number): string => `${decimalOfThousandths(millivolts)} V`;
const current = (microamps: number): string => `${decimalOfThousandths(microamps)} mA`;

function failsMains({ supply, shop }: Attempt): Failure | null {
  const { policy } = shop.board;
  if (mainsSuit(supply, policy) || policy.mains === null) return null;
  const venue = `the venue has ${volts(policy.mains)}`;
  return supply.mains === null
    ? { nearness: 0, message: `${supply.name} does not state the mains volts that it accepts; ${venue}` }
    : {
        nearness: -Math.max(supply.mains.from - policy.mains, policy.mains - supply.mains.to),
        message: `${supply.name} accepts mains of ${volts(supply.mains.from)} to ${volts(supply.mains.to)}; ${venue}`,
      };
}

function failsPower({ pedal, bank, supply }: Attempt): Failure | null {
  if (pedal.power === bank.power) return null;
  return { nearness: 0, message: `needs ${pedal.power}; ${supply.name} gives ${bank.power} there` };
}

function failsVoltage({ pedal, bank, setting, supply }: Attempt): Failure | null {
  if (voltsSuit(pedal, outletOf(bank, setting))) return null;
  const wanted = acceptedText(pedal);
  if (!acceptsVolts(pedal, setting.millivolts)) {
    const message = `accepts ${wanted}; the nearest is ${volts(setting.millivolts)} (${supply.name})`;
    return { nearness: -1e9 - distance(pedal, setting.millivolts), message };
  }
  const open = setting.openCircuit ?? setting.millivolts;
  const survives =
    pedal.survives === null
      ? 'its maker states no higher volts that it survives'
      : `it survives ${volts(pedal.survives)}`;
  const message = `accepts ${wanted}; ${supply.name} is unregulated and rises from ${volts(setting.millivolts)} to ${volts(open)} without a load, and ${survives}`;
  return { nearness: -distance(pedal, open), message };
}

function acceptedText({ accepts }: Pedal): string {
  if (accepts.kind === 'range') return `${volts(accepts.from)} to ${volts(accepts.to)}`;
  return accepts.millivolts.map(volts).join(' or ');
}

function distance({ accepts }: Pedal, millivolts: number): number {
  if (accepts.kind === 'range') return Math.max(accepts.from - millivolts, millivolts - accepts.to, 0);
  return Math.min(...accepts.millivolts.map((each) => Math.abs(each - millivolts)));
}

/** Whether the plug can be brought to fit when polarity is left aside. */
function failsPlug({ pedal, bank, supply, shop }: Attempt): Failure | null {
  const either = { plug: bank.plug, polarities: ['centre-negative', 'centre-positive'] as const };
  if (shop.routesWithAnyStock(either, pedal).length > 0) return null;
  const message = `has a ${pedal.inlet} inlet; ${supply.name} offers ${bank.plug}, and no one or two adapters lead from there`;
  return { nearness: 0, message };
}

function failsPolarity({ pedal, bank, supply, shop }: Attempt): Failure | null {
  if (shop.routesWithAnyStock(exitOf(bank), pedal).length > 0) return null;
  const message = `needs ${pedal.polarity ?? 'AC'}; ${supply.name} gives ${bank.polarity ?? 'AC'}, and no lead reverses it and fits`;
  return { nearness: 0, message };
}

function failsCurrent({ pedal, bank, setting, supply, shop: { board } }: Attempt): Failure | null {
  const { policy } = board;
  const load = pedalLoad(pedal, setting.millivolts, policy);
  if (load !== undefined && withinFactor(load, policy.headroom.alone, loadOf(setting.rating, policy))) return null;
  const strongest = `the strongest ${volts(setting.millivolts)} output gives ${current(setting.rating)}`;
  const message = `needs ${neededText(pedal, setting, policy.guess, policy.headroom.alone)}; ${strongest} (${supply.name})`;
  return { nearness: setting.rating + (bank.isolated ? 0.5 : 0), message };
}

/** "300 mA × 1.5 for a guess × 1.2 = 540 mA", rounded up to a microamp. */
function neededText(pedal: Pedal, { millivolts }: Setting, guess: Factor, headroom: Factor): string {
  const draw = drawAt(pedal, millivolts) ?? 0;
  const factors = pedal.figure === 'guess' ? [guess, headroom] : [headroom];
  const numerator = factors.reduce((product, factor) => product * BigInt(factor.numerator), BigInt(draw));
  const denominator = factors.reduce((product, factor) => product * BigInt(factor.denominator), 1n);
  const needed = Number((numerator + denominator - 1n) / denominator);
  const guessed = pedal.figure === 'guess' ? ` × ${factorText(guess)} for a guess` : '';
  return `${current(draw)}${guessed} × ${factorText(headroom)} = ${current(needed)}`;
}

function failsStartup({ pedal, setting, supply }: Attempt): Failure | null {
  if (pedal.startup === null || pedal.startup <= setting.rating) return null;
  const message = `takes ${current(pedal.startup)} to start; the strongest ${volts(setting.millivolts)} output gives ${current(setting.rating)} (${supply.name})`;
  return { nearness: setting.rating, message };
}

function failsTotal({ pedal, bank, setting, supply, shop: { board } }: Attempt): Failure | null {
  const { policy } = board;
  const limits = totalLimits(supply, policy);
  const load = pedalLoad(pedal, setting.millivolts, policy) ?? 0n;
  const loads = [{ bank: supply.banks.indexOf(bank), millivolts: setting.millivolts, load, repeats: false }];
  const weights = weightsOf(limits, loads, policy);
  const broken = limits.find(({ capacity }, index) => (weights[index] ?? 0n) > capacity);
  if (broken === undefined) return null;
  const whole = broken.bank === null ? 'all outputs' : 'the outputs of that bank';
  const needed = neededText(pedal, setting, policy.guess, policy.headroom.supply);
  const message = `needs ${needed} at ${volts(setting.millivolts)}; ${whole} of ${supply.name} together give ${totalText(broken.total)}`;
  return { nearness: 0, message };
}

const totalText = (total: Total): string =>
  total.kind === 'current' ? current(total.microamps) : `${decimalOfThousandths(total.milliwatts)} W`;

/** All else fits: then it is the supply or a lead that cannot be had. */
function failsStock({ pedal, offer, bank, supply, shop }: Attempt): Failure | null {
  if (offer.owned + offer.forSale === 0)
    return { nearness: 1, message: `${supply.name} would do, but none is owned or in stock` };
  if (shop.routes(exitOf(bank), pedal).length > 0) return null;
  return { nearness: 0, message: `${supply.name} would do, but a lead that it takes is neither owned nor in stock` };
}
