import { gathered } from '../../solver/gathered.js';
import { perPedalTier, type PerPedalTier } from '../domain/pedal-tier.js';
import type { Supply } from '../domain/supply.js';
import { likeOf, type Bench } from './bench.js';
import { admits, exposedIn, hasOnePlace, takesThePlace, type GroundMode } from './ground-mode.js';
import { homesOf, homesOfChains, movedBy, waysToGoOn, type Going, type Homes } from './homes.js';
import { OutputStates } from './output-states.js';
import { isIsolated, type SupplyUses } from './supply-uses.js';
import { mostOn, type TotalLimit } from './totals.js';
import { wholeNumbers } from './whole-numbers.js';
import type { ChainPlace, ChainPool, OutputSetting, SoloUse } from './uses.js';

/**
 * One way in which a unit may be set up before pedals come to it: the mode of its common ground, and the setting of
 * every bank that is switched together. Within a frame outputs of a bank are alike and the rules are sums.
 */
export type UnitFrame = {
  readonly uses: SupplyUses;
  readonly mode: GroundMode | null;
  /** How many outputs each bank has. */
  readonly outputs: readonly number[];
  readonly states: OutputStates;
  readonly solos: readonly SoloOption[];
  readonly chains: readonly ChainOption[];
  /** What each of the limits can bear: the supply's totals, the one place of a ground that has one, and outputs of today. */
  readonly capacities: readonly number[];
  /** False where numbers had to be rounded, always to the safe side of a bound: then a content must be checked. */
  readonly exact: boolean;
};

/** What one pedal of a class counts for, wherever it hangs. */
type Counted = PerPedalTier<0 | 1> & {
  readonly pedal: number;
  readonly leads: readonly number[];
  readonly exposed: 0 | 1;
  readonly newlyExposed: 0 | 1;
  /** Whether it is plugged in today and does not stay. */
  readonly moved: 0 | 1;
  readonly weights: readonly number[];
};

/** One pedal by itself. */
export type SoloOption = Counted & {
  readonly use: SoloUse;
  /** The bank of every output that it takes. */
  readonly banks: readonly number[];
};

/** One pedal of a class in a chain, by one route. */
export type PlaceOption = Counted & {
  readonly place: ChainPlace;
  readonly load: number;
  /** At switch-on; never less than its load. */
  readonly surge: number;
  /** It is the digital pedal of which a `sole` chain holds one. */
  readonly sole: boolean;
  /** Whether it may be told first of its chain: those do not who stay nowhere, where a chain has but one that can stay. */
  readonly begins: boolean;
};

/** Chains of one pool that go on as one and the same output of today, or as none. */
export type ChainOption = {
  readonly pool: ChainPool;
  readonly bank: number;
  /** What it takes of each limit beside what its pedals take. */
  readonly weights: readonly number[];
  /** Rules `current`, `total` and `runtime`: the sum of the loads. */
  readonly mostLoad: number;
  /** Rule `startup`, of the output and of totals: the sum of what is taken at switch-on. */
  readonly mostSurge: number;
  readonly mostTails: number;
  readonly places: readonly PlaceOption[];
};

/** Every frame of a supply that can carry anything. */
export function framesOf(uses: SupplyUses, bench: Bench): readonly UnitFrame[] {
  const modes = uses.modes.length === 0 ? [null] : uses.modes;
  const settings = settingsOf(uses);
  return gathered(modes, (mode) => settings.map((each) => frameOf(uses, mode, each, bench))).filter(
    ({ solos, chains }) => solos.length + chains.length > 0,
  );
}

/** Each bank's one setting, for banks that are switched together; null for the others. */
type Settings = readonly (number | null)[];

function settingsOf({ supply, solos, chains }: SupplyUses): readonly Settings[] {
  if (supply.banks.every(({ switching }) => switching === 'each')) return [supply.banks.map(() => null)];
  const used = [...gathered(solos, ({ outputs }) => outputs), ...chains.map(({ output }) => output)];
  return supply.banks.reduce<readonly Settings[]>(
    (all, { switching }, bank) => {
      const settings = [...new Set(used.filter((each) => each.bank === bank).map(({ setting }) => setting))];
      const choices = switching === 'together' && settings.length > 1 ? settings : [null];
      return gathered(all, (begun) => choices.map((choice) => [...begun, choice]));
    },
    [[]],
  );
}

function frameOf(uses: SupplyUses, mode: GroundMode | null, settings: Settings, bench: Bench): UnitFrame {
  const stands = ({ bank, setting }: OutputSetting): boolean => (settings[bank] ?? setting) === setting;
  const { supply } = uses;
  const solos = uses.solos.filter(
    (use) => use.outputs.every(stands) && soloAllowed(use, mode, supply, bench) && outputsThere(use, supply),
  );
  const pools = uses.chains.filter(
    (pool) => stands(pool.output) && (isIsolated([pool.output], supply) || pool.mode === mode),
  );
  const totals = uses.limits.map(({ capacity }, index) =>
    wholeNumbers(
      [
        ...solos.map(({ weights }) => weights[index] ?? 0n),
        ...gathered(pools, (p) => p.places.map((x) => x.weights[index] ?? 0n)),
      ],
      [capacity],
    ),
  );
  const soleWeight = (outputs: readonly OutputSetting[], pedal: number): readonly number[] =>
    hasOnePlace(mode) ? [!isIsolated(outputs, supply) && takesThePlace(mode, likeOf(pedal, bench)) ? 1 : 0] : [];
  const homes = homesOf(uses, bench);
  const nothing = [...totals, ...(hasOnePlace(mode) ? [mode] : [])].map(() => 0);
  const terms = { uses, bench, totals, soleWeight, homes, nothing };
  const chains = gathered(pools, (pool) => chainOptions(pool, terms));
  const outputs = supply.banks.map((bank) => bank.outputs);
  return {
    uses,
    mode,
    outputs,
    states: new OutputStates(outputs),
    solos: gathered(solos, (use) => soloOptions(use, mode, terms)),
    chains: chains.map(({ option }) => option),
    capacities: [
      ...uses.limits.map(({ capacity }, index) => totals[index]?.most(capacity) ?? 0),
      ...(hasOnePlace(mode) ? [1] : []),
      ...homes.shared.map(() => 1),
    ],
    exact: totals.every(({ exact }) => exact) && chains.every(({ exact }) => exact),
  };
}

/** A pedal by itself, in every way in which it may go on from today. */
const soloOptions = (
  use: SoloUse,
  mode: GroundMode | null,
  { uses, bench, totals, soleWeight, homes }: FrameTerms,
): readonly SoloOption[] =>
  waysToGoOn(use, uses, bench, homes).map((going) => ({
    use,
    pedal: use.pedal,
    banks: use.outputs.map(({ bank }) => bank),
    leads: [...use.route, ...(use.join === null ? [] : [use.join.lead])],
    ...counted(use),
    ...exposure(isIsolated(use.outputs, uses.supply) ? null : mode, use.pedal, bench),
    moved: going.moved,
    weights: [
      ...use.weights.map((weight, index) => totals[index]?.least(weight) ?? 0),
      ...soleWeight(use.outputs, use.pedal),
      ...takenOf(homes, going),
    ],
  }));

/** One of each output that several pedals have today, as far as something goes on as that. */
const takenOf = ({ shared }: Homes, { outputs }: Pick<Going, 'outputs'>): readonly number[] =>
  shared.map((output) => (outputs.includes(output) ? 1 : 0));

/** How the pedal counts as exposed on a ground of this mode, by itself where it is none. */
function exposure(mode: GroundMode | null, pedal: number, bench: Bench): Pick<Counted, 'exposed' | 'newlyExposed'> {
  const exposed = mode !== null && exposedIn(mode, likeOf(pedal, bench)) ? 1 : 0;
  return { exposed, newlyExposed: bench.classes[pedal]?.exposedToday === true ? 0 : exposed };
}

const counted = (use: PerPedalTier<boolean>): PerPedalTier<0 | 1> => perPedalTier((tier) => (use[tier] ? 1 : 0));

const outputsThere = (use: SoloUse, supply: Supply): boolean =>
  use.outputs.every(
    ({ bank }) => use.outputs.filter((each) => each.bank === bank).length <= (supply.banks[bank]?.outputs ?? 0),
  );

const soloAllowed = (use: SoloUse, mode: GroundMode | null, supply: Supply, bench: Bench): boolean =>
  isIsolated(use.outputs, supply) || (mode !== null && admits(mode, likeOf(use.pedal, bench)));

type Totals = readonly ReturnType<typeof wholeNumbers>[];

/** What the options of one frame are made with. */
type FrameTerms = {
  readonly uses: SupplyUses;
  readonly bench: Bench;
  readonly totals: Totals;
  readonly soleWeight: (outputs: readonly OutputSetting[], pedal: number) => readonly number[];
  readonly homes: Homes;
  /** No weight in any limit but those of today's outputs. */
  readonly nothing: readonly number[];
};

type MadeChain = { readonly option: ChainOption; readonly exact: boolean };

/** The chains of a pool that go on as none of today's outputs, and those that go on as each of them. */
function chainOptions(pool: ChainPool, terms: FrameTerms): readonly MadeChain[] {
  const homes = homesOfChains(pool, terms.uses, terms.bench);
  return [null, ...homes]
    .map((home) => chainOption(pool, home, terms))
    .filter(({ option }) => option.places.length > 0);
}

function chainOption(pool: ChainPool, home: number | null, terms: FrameTerms): MadeChain {
  const { uses, bench, totals, soleWeight, homes, nothing } = terms;
  const { mostLoad, mostSurge } = mostOfChain(pool, uses, bench);
  const { places: all } = pool;
  const loads = wholeNumbers([...all.map(({ load }) => load), ...all.map(({ surge }) => surge)], [mostLoad, mostSurge]);
  const going = takenOf(homes, { outputs: home === null ? [] : [home] });
  const single = home !== null && homes.residents.get(home) === 1;
  const places: PlaceOption[] = [];
  for (const place of all) {
    const moved = movedBy(place.pedal, { pool, home, uses }, bench);
    if (moved === null) continue;
    const stays = moved === 0 && bench.classes[place.pedal]?.berth !== null;
    places.push({
      place,
      pedal: place.pedal,
      leads: place.route,
      ...counted(place),
      ...exposure(pool.mode, place.pedal, bench),
      moved,
      load: loads.least(place.load),
      surge: loads.least(place.surge),
      weights: [
        ...place.weights.map((weight, index) => totals[index]?.least(weight) ?? 0),
        ...soleWeight([pool.output], place.pedal),
        ...going.map(() => 0),
      ],
      sole: takesThePlace(pool.mode, likeOf(place.pedal, bench)),
      begins: !single || stays,
    });
  }
  const option = {
    pool,
    bank: pool.output.bank,
    weights: [...nothing, ...going],
    mostLoad: loads.most(mostLoad),
    mostSurge: loads.most(mostSurge),
    mostTails: Math.max(...pool.leads.map(({ tails }) => tails)),
    places,
  };
  return { option, exact: loads.exact };
}

/** What one chain can draw where nothing else hangs on the unit: what its output bears, or the unit's totals where that is less. */
function mostOfChain(
  { output, rating }: ChainPool,
  { supply, limits }: SupplyUses,
  { policy }: Bench,
): { readonly mostLoad: bigint; readonly mostSurge: bigint } {
  const { numerator, denominator } = policy.headroom.chained;
  const millivolts = supply.banks[output.bank]?.settings[output.setting]?.millivolts ?? 0;
  const within = (most: bigint, rule: TotalLimit['rule']): bigint => {
    const other = mostOn({ bank: output.bank, millivolts }, rule, limits, policy);
    return other !== null && other < most ? other : most;
  };
  return {
    mostLoad: within(within((rating * BigInt(denominator)) / BigInt(numerator), 'total'), 'runtime'),
    mostSurge: within(rating, 'startup'),
  };
}
