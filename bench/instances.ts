/**
 * Boards and shops as they are met with, at any size. Every pedal can hang alone on a wall adapter that is never out of
 * stock, so that each instance has a plan: the limits leave room for that one.
 */
import type { Board, Catalogue, Policy } from '../src/domain/board.js';
import type { Part } from '../src/domain/part.js';
import type { Draw, Pedal } from '../src/domain/pedal.js';
import { minorUnits } from '../src/domain/quantities.js';
import type { Bank, JoinMode, Setting, Supply } from '../src/domain/supply.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  currentTotal,
  euros,
  factor,
  listed,
  milliamps,
  onMains,
  partOf,
  pedalOf,
  policyOf,
  powerTotal,
  settingOf,
  supplyOf,
  volts,
} from '../test/support/builders.js';
import { randomFrom, type Random } from './random.js';

/** No chains at all, chain leads that fit wall adapters only, or chain leads that fit every output. */
export const chainProfiles = ['none', 'adapters', 'all'] as const;
export type Chains = (typeof chainProfiles)[number];

export type InstanceShape = {
  readonly pedals: number;
  /** At least six: the shop has a wall adapter for every kind of power on the board. */
  readonly supplies: number;
  readonly chains: Chains;
  readonly seed: number;
};

/** The instance of a seed: always the same one. @throws RangeError when the shop is too small for the board. */
export function instance({ pedals, supplies, chains, seed }: InstanceShape): { board: Board; catalogue: Catalogue } {
  const random = randomFrom(seed);
  const players = Array.from({ length: pedals }, (_, index) => randomPedal(random, index + 1));
  const adapters = adaptersFor(players, wallPlug(chains), random);
  if (adapters.length > supplies) throw new RangeError(`${adapters.length} supplies are needed, not ${supplies}`);
  const others = Array.from({ length: supplies - adapters.length }, (_, index) =>
    randomSupply(random, index + 1, wallPlug(chains)),
  );
  const shop = catalogueOf([...adapters, ...others], leads(chains));
  const policy: Policy = {
    ...standing,
    chains: chains === 'none' ? 'never' : 'allow',
    sockets: pedals,
    budget: minorUnits(players.reduce((sum, pedal) => sum + aloneCost(pedal, adapters, shop.parts), 0)),
  };
  const kept = random.percent(30) ? [[random.pick(shop.supplies).id, 1] as const] : [];
  const owned = { supplies: new Map(kept), parts: new Map() };
  return { board: boardOf(players, { policy, owned }), catalogue: shop };
}

const standing = policyOf({
  headroom: { alone: factor(1.2), chained: factor(1.5), supply: factor(1.2) },
  guess: factor(1.5),
  noisePrice: euros(20),
  supplyPrice: euros(0),
  mains: [volts(230)],
});

/** The plug of wall adapters: one of their own where only they are to be chained. */
const wallPlug = (chains: Chains): string => (chains === 'adapters' ? 'barrel-2.5' : 'barrel-2.1');

const flip = partOf('flip', 4, { kind: 'adapter' }, { reverses: true });
const mini = partOf('mini', 5, { kind: 'adapter' }, { gives: 'jack-3.5' });
const miniFlip = partOf('mini-flip', 8.5, { kind: 'adapter' }, { gives: 'jack-3.5', reverses: true });
const narrow = partOf('narrow', 3, { kind: 'adapter' }, { fits: 'barrel-2.5' });

function leads(chains: Chains): readonly Part[] {
  const fits = wallPlug(chains);
  return [
    flip,
    partOf('flip-remnant', 2.5, { kind: 'adapter' }, { reverses: true, stock: 2 }),
    mini,
    miniFlip,
    ...(fits === narrow.fits ? [narrow] : []),
    partOf('fan-3', 6, { kind: 'chain', tails: 3 }, { fits }),
    partOf('fan-5', 8, { kind: 'chain', tails: 5 }, { fits }),
    partOf('fan-8', 12, { kind: 'chain', tails: 8 }, { fits }),
    partOf('stack', 9, { kind: 'join', mode: 'series' }),
    partOf('twin', 7, { kind: 'join', mode: 'parallel' }),
  ];
}

function randomPedal(random: Random, number: number): Pedal {
  const id = `pedal-${number}`;
  const more = {
    figure: random.percent(15) ? 'guess' : random.pick(['label', 'manual', 'measured'] as const),
  } as const;
  if (random.percent(35)) return { ...digitalPedal(random, id), ...more };
  if (random.percent(5)) return { ...alternatingPedal(random, id), ...more };
  return { ...analogPedal(random, id), ...more };
}

function digitalPedal(random: Random, id: string): Pedal {
  const draw = random.pick([100, 120, 150, 180, 200, 250, 300, 350, 400, 500]);
  const atTwelve = Math.round(draw * 0.8);
  const twoVoltages: Draw = {
    kind: 'per voltage',
    microamps: new Map([
      [volts(9), milliamps(draw)],
      [volts(12), milliamps(atTwelve)],
    ]),
  };
  return pedalOf(id, draw, {
    ...(random.percent(12) ? { accepts: listed(9, 12), draw: twoVoltages } : {}),
    digital: true,
    highGain: random.percent(8),
    startup: random.percent(20) ? milliamps(Math.round(draw * random.pick([1.2, 1.5, 2]))) : null,
    alone: random.percent(8),
    ...inletOf(random),
  });
}

function analogPedal(random: Random, id: string): Pedal {
  const draw = random.pick([5, 8, 10, 12, 15, 20, 25, 30, 40, 50, 65, 80, 100, 7.5, 2.7]);
  const old = random.percent(6);
  return pedalOf(id, draw, {
    ...analogVolts(random),
    highGain: random.percent(38),
    ground: old ? 'positive' : 'negative',
    alone: random.percent(4),
    ...inletOf(random),
  });
}

function analogVolts(random: Random): Partial<Pedal> {
  const roll = random.whole(1, 100);
  if (roll <= 72) return { survives: random.percent(30) ? volts(random.pick([12, 15, 18])) : null };
  if (roll <= 82) return { accepts: listed(9, 18), prefers: random.percent(60) ? volts(18) : null };
  if (roll <= 92)
    return { accepts: { kind: 'range', from: volts(9), to: volts(random.pick([12, 15, 18])) }, prefers: null };
  return { accepts: listed(random.pick([12, 18])) };
}

const inletOf = (random: Random): Partial<Pedal> => ({
  polarity: random.percent(6) ? 'centre-positive' : 'centre-negative',
  inlet: random.percent(7) ? 'jack-3.5' : 'barrel-2.1',
});

const alternating = { power: 'AC', polarity: null } as const;

const alternatingPedal = (random: Random, id: string): Pedal =>
  pedalOf(id, random.pick([100, 200, 350, 500]), {
    ...alternating,
    accepts: listed(random.pick([9, 12])),
    digital: random.percent(50),
  });

const worldwide = onMains(100, 240);

/** The lowest volts that a pedal accepts. */
const lowestVolts = ({ accepts }: Pedal): number =>
  accepts.kind === 'range' ? accepts.from : Math.min(...accepts.millivolts);

/** What one output must be rated at to feed the pedal alone at its lowest volts, in milliamps, rounded up. */
function ratingFor({ draw, figure, startup }: Pedal): number {
  const microamps = draw.kind === 'flat' ? draw.microamps : Math.max(...draw.microamps.values());
  const load = microamps * (figure === 'guess' ? 1.5 : 1) * 1.2;
  return Math.ceil(Math.max(load, startup ?? 0) / 1000);
}

/** One wall adapter without a stock limit for each kind of power and lowest volts on the board. */
function adaptersFor(pedals: readonly Pedal[], plug: string, random: Random): readonly Supply[] {
  const needs = new Map<string, readonly Pedal[]>();
  for (const pedal of pedals) {
    const need = `${pedal.power.toLowerCase()}-${lowestVolts(pedal) / 1000}`;
    needs.set(need, [...(needs.get(need) ?? []), pedal]);
  }
  return [...needs].map(([need, fed]) => {
    const most = Math.max(...fed.map(ratingFor));
    const rating = [300, 500, 1000, 1500].find((size) => size >= most) ?? most;
    const setting = settingOf(Math.min(...fed.map(lowestVolts)) / 1000, rating);
    const more = need.startsWith('ac') ? alternating : {};
    return supplyOf(`wall-${need}`, random.whole(8, 25), [bankOf(1, [setting], { plug, ...more })], worldwide);
  });
}

/** The cost of one pedal with a wall adapter of its own and the leads for its inlet. */
function aloneCost(pedal: Pedal, adapters: readonly Supply[], parts: readonly Part[]): number {
  const adapter = adapters.find(
    ({ banks: [bank] }) => bank?.power === pedal.power && bank.settings[0]?.millivolts === lowestVolts(pedal),
  );
  const turned = pedal.polarity === 'centre-positive';
  const jack = pedal.inlet === 'jack-3.5';
  const last = jack ? [turned ? miniFlip : mini] : turned ? [flip] : [];
  const first = parts.includes(narrow) ? [narrow] : [];
  return [adapter, ...first, ...last].reduce((sum, article) => sum + (article?.price ?? 0), 0);
}

function randomSupply(random: Random, number: number, plug: string): Supply {
  const source = random.percent(10) ? onMains(110, 120) : random.percent(4) ? onMains() : worldwide;
  const stock = random.percent(20) ? random.whole(1, 3) : null;
  const roll = random.whole(1, 100);
  const make = roll <= 25 ? wallAdapter : roll <= 50 ? commonBrick : isolatedBrick;
  return { ...make(random, number, plug), ...source, stock };
}

function wallAdapter(random: Random, number: number, plug: string): Supply {
  const atVolts = random.pick([9, 9, 9, 9, 12, 18]);
  const rating = random.pick([200, 300, 500, 650, 1000, 1700, 2000]);
  const more = random.percent(10) ? alternating : {};
  const excess = random.percent(20) ? random.pick([2, 3, 4.5]) : null;
  const setting = excess === null ? settingOf(atVolts, rating) : settingOf(atVolts, rating, atVolts + excess);
  return supplyOf(`wall-${number}`, price(random, 8 + rating / 200, 7), [bankOf(1, [setting], { plug, ...more })]);
}

/** Many outputs on one ground, often with one small bank at other volts and a limit for all. */
function commonBrick(random: Random, number: number): Supply {
  const outputs = random.whole(4, 10);
  const ground = { isolated: false } as const;
  const banks = [bankOf(outputs, [settingOf(9, random.pick([100, 150, 200]))], ground)];
  if (random.percent(40)) banks.push(bankOf(1, [settingOf(random.pick([12, 18]), 100)], ground));
  if (random.percent(30)) banks.push(bankOf(1, [settingOf(9, 500)], ground));
  const total = currentTotal(random.pick([500, 1000, 1500, 2000]));
  return supplyOf(`shared-${number}`, price(random, 25 + outputs * 4, 15), banks, { total });
}

function isolatedBrick(random: Random, number: number): Supply {
  const small = random.whole(2, 7);
  const strong = random.whole(1, 4);
  const extra = random.percent(35) ? [extraBank(random)] : [];
  const joins = random.pick<readonly JoinMode[]>([[], [], ['series'], ['parallel'], ['series', 'parallel']]);
  const banks = [
    bankOf(small, [settingOf(9, random.pick([100, 100, 120, 150]))], random.percent(50) ? { joins } : {}),
    strongBank(random, strong, joins),
    ...extra,
  ];
  const total = random.percent(60)
    ? random.pick([powerTotal(12), powerTotal(18), powerTotal(27), currentTotal(1200), currentTotal(2000)])
    : null;
  return supplyOf(`brick-${number}`, price(random, 30 + small * 6 + strong * 14, 30), banks, { total });
}

/** Outputs for digital pedals, some of them with a switch for higher volts at lower ratings. */
function strongBank(random: Random, outputs: number, joins: readonly JoinMode[]): Omit<Bank, 'firstOutput'> {
  const rating = random.pick([300, 400, 500]);
  const ladder = random.pick([[9], [9, 12], [9, 12, 18], [9, 18]]);
  const settings: readonly Setting[] = ladder.map((atVolts) => settingOf(atVolts, Math.floor((rating * 9) / atVolts)));
  return bankOf(outputs, settings, {
    joins,
    switching: settings.length > 1 && random.percent(30) ? 'together' : 'each',
    total: random.percent(15) ? currentTotal(rating * Math.max(1, outputs - 1)) : null,
  });
}

const extraBank = (random: Random): Omit<Bank, 'firstOutput'> =>
  random.percent(40)
    ? bankOf(1, [settingOf(random.pick([9, 12]), 500)], alternating)
    : bankOf(1, [settingOf(9, 250), settingOf(18, 125)], { polarity: 'either' });

/** A price in euros around what such a thing costs, often ending in .90. */
const price = (random: Random, base: number, spread: number): number =>
  Math.round(base) + random.whole(0, spread) + random.pick([0, 0.5, 0.9]);
