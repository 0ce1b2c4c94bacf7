import { gathered } from '../../solver/gathered.js';
import type { Bank, JoinMode, Supply } from '../domain/supply.js';
import type { LeadKind } from './lead-kinds.js';
import type { TakenLoad } from './load.js';
import { exitOf, inParallel, inSeries, outletOf, polaritiesOf, type Outlet } from './outlet.js';
import { behind, type Exit } from './routes.js';
import { outputTaken, type OutputTaken } from './totals.js';
import type { OutputSetting, SoloUse } from './uses.js';

/** One output or one join at given settings, before a pedal is put there. */
export type OutletSeat = {
  readonly outputs: readonly OutputSetting[];
  readonly join: SoloUse['join'];
  readonly exit: Exit;
  readonly outlet: Outlet;
  /** What a pedal there takes of each output. */
  readonly takes: (taken: TakenLoad) => readonly OutputTaken[];
};

/** Every output at every setting, and every join that the leads at hand allow. */
export const seatsOf = (supply: Supply, kinds: readonly LeadKind[]): readonly OutletSeat[] => [
  ...singleSeats(supply),
  ...joinSeats(supply, kinds),
];

const settingsOf = (bank: Bank, index: number): readonly { readonly use: OutputSetting; readonly outlet: Outlet }[] =>
  bank.settings.map((value, setting) => ({ use: { bank: index, setting }, outlet: outletOf(bank, value) }));

function singleSeats(supply: Supply): readonly OutletSeat[] {
  const seats: OutletSeat[] = [];
  for (const [index, bank] of supply.banks.entries()) {
    const exit = exitOf(bank);
    for (const { use, outlet } of settingsOf(bank, index)) {
      const takes: OutletSeat['takes'] = (taken) => [outputTaken(index, outlet.millivolts, taken)];
      seats.push({ outputs: [use], join: null, exit, outlet, takes });
    }
  }
  return seats;
}

function joinSeats(supply: Supply, kinds: readonly LeadKind[]): readonly OutletSeat[] {
  if (!kinds.some(({ role }) => role.kind === 'join')) return [];
  return gathered(supply.banks, (first, at) =>
    gathered(supply.banks.slice(at), (second, offset) => {
      const modes = joinModes(first, second, offset === 0);
      const exit = commonExit(first, second);
      if (modes.length === 0 || exit === null) return [];
      return gathered(kinds, (lead) =>
        lead.role.kind === 'join' && modes.includes(lead.role.mode) && lead.fits === first.plug
          ? seatsBehind({ first, second, at, to: at + offset, lead, mode: lead.role.mode, exit: behind(exit, lead) })
          : [],
      );
    }),
  );
}

/** Rule `join`: both outputs isolated, both makers' leave, and two outputs there to be joined. */
function joinModes(first: Bank, second: Bank, same: boolean): readonly JoinMode[] {
  if (!first.isolated || !second.isolated || (same && first.outputs < 2)) return [];
  return first.joins.filter((mode) => second.joins.includes(mode));
}

/** The exit of both banks' straight leads, where they agree in power, plug and polarity; null where they do not. */
function commonExit(first: Bank, second: Bank): Exit | null {
  if (first.power !== second.power || first.plug !== second.plug) return null;
  const polarities = polaritiesOf(first).filter((polarity) => polaritiesOf(second).includes(polarity));
  return first.power === 'DC' && polarities.length === 0 ? null : { plug: first.plug, polarities };
}

type JoinPlace = { first: Bank; second: Bank; at: number; to: number; lead: LeadKind; mode: JoinMode; exit: Exit };

function seatsBehind({ first, second, at, to, lead, mode, exit }: JoinPlace): readonly OutletSeat[] {
  const seats: OutletSeat[] = [];
  for (const one of settingsOf(first, at)) {
    for (const two of settingsOf(second, to)) {
      if (mode === 'parallel' && one.outlet.millivolts !== two.outlet.millivolts) continue;
      if (at === to && (two.use.setting < one.use.setting || !settingsMix(first, one.use, two.use))) continue;
      seats.push({
        outputs: [one.use, two.use],
        join: { mode, lead: lead.index },
        exit,
        outlet: mode === 'series' ? inSeries(one.outlet, two.outlet) : inParallel(one.outlet, two.outlet),
        takes: (taken) => [
          outputTaken(at, one.outlet.millivolts, taken),
          outputTaken(to, two.outlet.millivolts, taken, mode === 'parallel'),
        ],
      });
    }
  }
  return seats;
}

const settingsMix = (bank: Bank, one: OutputSetting, two: OutputSetting): boolean =>
  bank.switching === 'each' || one.setting === two.setting;
