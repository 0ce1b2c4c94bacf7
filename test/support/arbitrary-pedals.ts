/**
 * Pedals made for a home, an output or a joined pair of the supplies at hand, and then twisted: half of the pedals would
 * be impossible to power if all of their fields were drawn by themselves.
 */
import fc from 'fast-check';

import type { Policy } from '../../src/domain/board.js';
import {
  nothingMoreStated,
  type AcceptedVolts,
  type Draw,
  type Figure,
  type Pedal,
  type Polarity,
  type PolarityOrUnknown,
  type Power,
} from '../../src/domain/pedal.js';
import { ownAdapterId } from '../../src/domain/own-adapter.js';
import { microamps, millivolts, pedalId, type Millivolts } from '../../src/domain/quantities.js';
import type { Bank, JoinMode, Supply } from '../../src/domain/supply.js';
import { choice, percent, pick, weighted } from './arbitrary-choices.js';
import { adapterShape, partTerms, type PartDraft, type PartTerms, type Shape } from './arbitrary-parts.js';

/** A pedal before its home is known. */
export type PedalDraft = {
  readonly home: number;
  readonly mode: 'single' | JoinMode;
  readonly volts: 'exact' | 'more' | 'range';
  /** The draw: a number of microamps, or a share of what the home can give. */
  readonly draw: { readonly microamps: number } | { readonly divisor: number; readonly excess: number };
  readonly perVoltage: boolean;
  /** None, more than the draw, or a number of microamps of which two or three use up an ordinary total. */
  readonly startup: 'none' | 'double' | 'limit' | 'over' | { readonly microamps: number };
  readonly survives: 'unstated' | 'enough' | 'short';
  readonly inlet: 'as home' | 'other' | 'two leads away';
  readonly opposite: boolean;
  /** Nobody has read which polarity it wants. */
  readonly unread: boolean;
  /** The leads that the twists call for are to be had. */
  readonly remedied: boolean;
  readonly terms: PartTerms;
  readonly prefers: number | null;
  readonly ground: Pedal['ground'];
  readonly figure: Figure;
  readonly digital: boolean;
  readonly highGain: boolean;
  readonly alone: boolean;
  /** It came with an adapter, and nothing else may be said of it. */
  readonly adapter: 'none' | 'spare' | 'only';
  /** How many batteries make a set; 0 where it takes none. */
  readonly batteries: number;
};

export const pedalDrafts: fc.Arbitrary<PedalDraft> = fc.record({
  home: choice,
  mode: weighted<'single' | JoinMode>([6, 'single'], [2, 'series'], [2, 'parallel']),
  volts: weighted<'exact' | 'more' | 'range'>([4, 'exact'], [3, 'more'], [3, 'range']),
  draw: weighted<PedalDraft['draw']>(
    [4, { microamps: 40_000 }],
    [4, { microamps: 25_000 }],
    [3, { microamps: 50_000 }],
    [2, { microamps: 60_000 }],
    [1, { microamps: 50_001 }],
    [3, { divisor: 1, excess: 0 }],
    [1, { divisor: 1, excess: 1 }],
    [3, { divisor: 2, excess: 0 }],
    [1, { divisor: 2, excess: 1 }],
    [1, { divisor: 3, excess: 0 }],
  ),
  perVoltage: percent(30),
  startup: weighted<PedalDraft['startup']>(
    [79, 'none'],
    [4, 'double'],
    [8, 'limit'],
    [1, 'over'],
    [3, { microamps: 90_000 }],
    [2, { microamps: 100_001 }],
    [2, { microamps: 150_000 }],
  ),
  survives: weighted<PedalDraft['survives']>([8, 'enough'], [1, 'unstated'], [1, 'short']),
  inlet: weighted<PedalDraft['inlet']>([16, 'as home'], [3, 'other'], [1, 'two leads away']),
  opposite: percent(15),
  unread: percent(12),
  remedied: weighted([14, true], [1, false]),
  terms: partTerms,
  prefers: fc.option(choice, { freq: 2 }),
  ground: weighted<Pedal['ground']>([12, 'negative'], [2, 'positive'], [1, 'unknown']),
  figure: weighted<Figure>([6, 'label'], [2, 'guess'], [1, 'measured'], [1, 'manual']),
  digital: percent(40),
  highGain: percent(45),
  alone: percent(15),
  adapter: weighted<PedalDraft['adapter']>([57, 'none'], [2, 'spare'], [1, 'only']),
  batteries: weighted([36, 0], [2, 1], [1, 2]),
});

/** What a pedal is made for. */
type Home = {
  readonly power: Power;
  readonly plug: string;
  readonly polarity: Polarity | null;
  readonly volts: number;
  readonly openCircuit: number;
  readonly rating: number;
  readonly join: JoinMode | null;
};

/** The pedal at its place in a list, which makes its id, and the leads that it may need. */
export function pedalFrom(
  draft: PedalDraft,
  index: number,
  supplies: readonly Supply[],
  policy: Policy,
): { pedal: Pedal; leads: readonly PartDraft[] } {
  const banks = supplies.flatMap((supply) => supply.banks);
  const home = homeIn(banks, draft);
  const accepts = acceptedVolts(draft, home);
  const inlet = inletOf(draft, home);
  const polarity = polarityOf(draft, home);
  const draw = drawOf(draft, home, accepts, policy);
  const id = `pedal-${index + 1}`;
  const { ground, figure, digital, highGain, alone } = draft;
  const leads = draft.remedied ? remediesOf(draft, home, inlet) : [];
  return {
    pedal: withAdapter(draft.adapter, {
      id: pedalId(id),
      name: id,
      power: home.power,
      polarity,
      inlet,
      ground,
      accepts,
      prefers: draft.prefers === null ? null : (pick(named(accepts), draft.prefers) ?? null),
      survives: survivesOf(draft, home, accepts),
      draw,
      startup: startupOf(draft, home, draw),
      figure,
      digital,
      highGain,
      alone,
      assumed: {},
      unknown: [
        ...(polarity === 'unknown' ? (['polarity'] as const) : []),
        ...(ground === 'unknown' ? (['ground'] as const) : []),
      ],
      kept: null,
      adapter: null,
      battery: draft.batteries === 0 ? null : { type: 'block', count: draft.batteries, of: pedalId(id) },
    }),
    leads: leads.map((shape) => ({ shape, terms: draft.terms })),
  };
}

/** A pedal that keeps the adapter it came with; where nothing else may feed it, nothing is known of what it takes. */
function withAdapter(drafted: PedalDraft['adapter'], pedal: Pedal): Pedal {
  if (drafted === 'none') return pedal;
  const adapter = { supply: ownAdapterId(pedal.id), only: drafted === 'only' };
  if (!adapter.only) return { ...pedal, adapter };
  const { power, polarity, inlet, ground, digital, highGain, alone } = pedal;
  return {
    ...nothingMoreStated,
    id: pedal.id,
    name: pedal.name,
    power,
    polarity,
    inlet,
    ground,
    digital,
    highGain,
    alone,
    accepts: { kind: 'listed', millivolts: [millivolts(9000)] },
    draw: { kind: 'flat', microamps: microamps(0) },
    adapter,
  };
}

/** A join where the bank allows it, else one output. */
function homeIn(banks: readonly Bank[], { home, mode }: PedalDraft): Home {
  const bank = pick(banks, home);
  const setting = bank === undefined ? undefined : pick(bank.settings, Math.floor(home / banks.length));
  if (bank === undefined || setting === undefined) throw new RangeError('a pedal needs a supply with a setting');
  const { power, plug, polarity } = bank;
  const joinable = mode !== 'single' && bank.isolated && bank.outputs > 1 && bank.joins.includes(mode);
  const series = joinable && mode === 'series' ? 2 : 1;
  return {
    power,
    plug,
    polarity: polarity === 'either' ? (home % 2 === 0 ? 'centre-negative' : 'centre-positive') : polarity,
    volts: setting.millivolts * series,
    openCircuit: (setting.openCircuit ?? setting.millivolts) * series,
    rating: setting.rating * (joinable && mode === 'parallel' ? 2 : 1),
    join: joinable ? mode : null,
  };
}

function acceptedVolts({ volts }: PedalDraft, home: Home): AcceptedVolts {
  const own = millivolts(home.volts);
  const above = millivolts(home.volts === 9000 ? 12_000 : 18_000);
  if (volts === 'range') return { kind: 'range', from: own, to: millivolts(Math.max(home.volts, above)) };
  return { kind: 'listed', millivolts: volts === 'more' && above !== own ? [own, above] : [own] };
}

/** The volts that the pedal's maker names. */
const named = (accepts: AcceptedVolts): readonly Millivolts[] =>
  accepts.kind === 'range' ? [accepts.from, accepts.to] : accepts.millivolts;

function drawOf({ draw, perVoltage, figure }: PedalDraft, home: Home, accepts: AcceptedVolts, policy: Policy): Draw {
  const guess = figure === 'guess' ? policy.guess : { numerator: 1, denominator: 1 };
  const { numerator, denominator } = policy.headroom.alone;
  const whole = (home.rating * denominator * guess.denominator) / (numerator * guess.numerator);
  const shareOf = (divisor: number): number => Math.floor(whole / divisor);
  // A small draw would not need the second output of a parallel join.
  const fixed = (microamps: number): number =>
    home.join === 'parallel' ? shareOf(1) - Math.floor(microamps / 2) : microamps;
  const flat = 'microamps' in draw ? fixed(draw.microamps) : shareOf(draw.divisor) + draw.excess;
  if (accepts.kind === 'range' || !perVoltage) return { kind: 'flat', microamps: microamps(flat) };
  const figures = accepts.millivolts.map(
    (value, index) => [value, microamps(Math.max(1, flat - index * 15_000))] as const,
  );
  return { kind: 'per voltage', microamps: new Map(figures) };
}

function startupOf({ startup }: PedalDraft, home: Home, draw: Draw) {
  if (startup === 'none') return null;
  const highest = draw.kind === 'flat' ? draw.microamps : Math.max(...draw.microamps.values());
  if (typeof startup === 'object') return microamps(Math.max(highest, startup.microamps));
  const wanted = { double: Math.min(2 * highest, home.rating), limit: home.rating, over: home.rating + 1 }[startup];
  return microamps(Math.max(highest, wanted));
}

function survivesOf({ survives }: PedalDraft, home: Home, accepts: AcceptedVolts): Millivolts | null {
  if (survives === 'unstated') return null;
  const wanted = survives === 'enough' ? home.openCircuit : home.openCircuit - 1;
  return millivolts(Math.max(wanted, ...named(accepts)));
}

function polarityOf(draft: PedalDraft, { polarity }: Home): PolarityOrUnknown | null {
  if (polarity === null) return null;
  if (draft.unread) return 'unknown';
  return draft.opposite ? opposite(polarity) : polarity;
}

const opposite = (polarity: Polarity): Polarity =>
  polarity === 'centre-negative' ? 'centre-positive' : 'centre-negative';

const detour = 'snap-clip';

function inletOf({ inlet }: PedalDraft, home: Home): string {
  if (inlet === 'as home') return home.plug;
  return home.plug === 'barrel-2.1' ? 'jack-3.5' : 'barrel-2.1';
}

/** The leads from the home to the inlet: they may still be out of stock, or not belong behind the join lead. */
function remediesOf(draft: PedalDraft, home: Home, inlet: string): readonly Shape[] {
  const shapes: Shape[] = [];
  if (draft.inlet === 'other') shapes.push(adapterShape(home.plug, inlet));
  if (draft.inlet === 'two leads away')
    shapes.push(adapterShape(home.plug, detour), adapterShape(detour, inlet, draft.opposite));
  else if ((draft.opposite || draft.unread) && home.polarity !== null)
    shapes.push(adapterShape(home.plug, home.plug, true));
  if (home.join !== null)
    shapes.push({ fits: home.plug, gives: home.plug, reverses: false, role: { kind: 'join', mode: home.join } });
  return shapes;
}
