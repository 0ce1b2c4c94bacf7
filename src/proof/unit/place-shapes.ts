import type { Polarity } from '../../domain/pedal.js';
import type { Bank, JoinMode, Setting, Supply } from '../../domain/supply.js';
import { behind, type Pole } from './routes.js';
import { countsOf, type ProofBench, type RawPlace, type SeatShape } from './shape.js';
import { carriesAlone, offeredJoined, offeredBy, suits, takenAt, type OutputOffer } from './output-offer.js';
import { weightIn, type Limit, type ShapeTap } from './totals.js';

/** Every way in which one pedal can hang on an output of the supply by itself, or on two that are joined. */
export function placeShapes(supply: Supply, limits: readonly Limit[], bench: ProofBench): readonly RawPlace[] {
  return [...onOneOutput(supply, limits, bench), ...onJoined(supply, limits, bench)];
}

/** Where pedals may be put: the outputs with their lead, if they are joined, and what that offers. */
type Spot = {
  readonly seats: readonly SeatShape[];
  readonly taps: readonly ShapeTap[];
  readonly source: OutputOffer;
  readonly plug: string;
  readonly poles: readonly Pole[];
  readonly join: { readonly kind: number; readonly mode: JoinMode } | null;
};

function onOneOutput({ banks }: Supply, limits: readonly Limit[], bench: ProofBench): readonly RawPlace[] {
  return banks.flatMap((bank, index) =>
    bank.settings.flatMap((setting, position) => {
      const spot: Spot = {
        seats: [{ bank: index, setting: position }],
        taps: [{ bank: index, volts: setting.millivolts }],
        source: offeredBy(bank, setting),
        plug: bank.plug,
        poles: polesOf(bank),
        join: null,
      };
      return placesAt(spot, limits, bench);
    }),
  );
}

function placesAt(spot: Spot, limits: readonly Limit[], { classes, policy, routes }: ProofBench): readonly RawPlace[] {
  const { seats, taps, source, plug, poles, join } = spot;
  return classes.flatMap(({ pedal }, index) => {
    if (!suits(source, pedal) || !carriesAlone(source, pedal, policy)) return [];
    const route = routes.between(plug, poles, pedal);
    if (route === null) return [];
    const takes = takenAt(pedal, source.volts, policy.guess);
    const taken = limits.map((limit) => BigInt(takes[limit.on]) * BigInt(weightIn(limit, taps, join?.mode ?? null)));
    const { volts } = source;
    return [{ pedal: index, seats, volts, route, join: join?.kind ?? null, counts: countsOf(pedal, volts), taken }];
  });
}

/** What the outputs of a bank can offer at their plugs. */
export const polesOf = ({ polarity }: Bank): readonly Pole[] =>
  polarity === 'either' ? (['centre-negative', 'centre-positive'] satisfies Polarity[]) : [polarity];

/** An output that a join may take. */
type End = { readonly bank: Bank; readonly setting: Setting; readonly seat: SeatShape };

/** Two isolated outputs of one plug, power and polarity, whose maker allows it, joined by a lead that fits. */
function onJoined({ banks }: Supply, limits: readonly Limit[], bench: ProofBench): readonly RawPlace[] {
  return bench.kinds.flatMap((lead, kind) => {
    if (lead.role.kind !== 'join' || lead.offers.length === 0) return [];
    const { mode } = lead.role;
    const ends = banks.flatMap((bank, index) =>
      bank.isolated && bank.joins.includes(mode) && bank.plug === lead.fits
        ? bank.settings.map((setting, position) => ({ bank, setting, seat: { bank: index, setting: position } }))
        : [],
    );
    return ends.flatMap((first, index) =>
      ends.slice(index).flatMap((second) => {
        const poles = polesOf(first.bank).filter((pole) => polesOf(second.bank).includes(pole));
        if (poles.length === 0 || !mayJoin(first, second, mode)) return [];
        const spot: Spot = {
          seats: [first.seat, second.seat],
          taps: [first, second].map(({ seat, setting }) => ({ bank: seat.bank, volts: setting.millivolts })),
          source: offeredJoined(mode, offeredBy(first.bank, first.setting), offeredBy(second.bank, second.setting)),
          plug: lead.gives,
          poles: poles.map((pole) => behind(lead, pole)),
          join: { kind, mode },
        };
        return placesAt(spot, limits, bench);
      }),
    );
  });
}

/** Parallel outputs stand at the same volts; two outputs of a bank that is switched together, at the same setting. */
function mayJoin(first: End, second: End, mode: JoinMode): boolean {
  if (first.bank.power !== second.bank.power) return false;
  if (mode === 'parallel' && first.setting.millivolts !== second.setting.millivolts) return false;
  if (first.seat.bank !== second.seat.bank) return true;
  return first.bank.outputs > 1 && (first.bank.switching === 'each' || first.seat.setting === second.seat.setting);
}
