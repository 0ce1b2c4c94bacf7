import type { Board } from '../domain/board.js';
import type { ToldSources } from '../domain/claimed-plan.js';
import type { JudgedPlan } from '../domain/judged-plan.js';
import { tenthsDown } from '../domain/load.js';
import { decimalOfThousandths, type SupplyId } from '../domain/quantities.js';
import { feedSourceOf, type Source } from '../domain/source.js';

/** One thing that is said: as it is claimed, and as the feeds make it. */
export type Told = { readonly field: string; readonly claimed: readonly string[]; readonly found: readonly string[] };

/** What a result says of adapters, batteries, power banks and kept places beside what the audit has measured. */
export function toldOfSources(
  told: ToldSources,
  { feeds, batteries, runtimes }: JudgedPlan,
  board: Board,
): readonly Told[] {
  const sourceOf = (id: SupplyId): Source | undefined => board.gear.supplies.find((supply) => supply.id === id)?.source;
  const speaksOf = new Set(told.sources.map(({ pedal }) => pedal));
  const sets = batteries.flatMap(({ pedal, supply, hours }) => {
    const source = sourceOf(supply);
    if (source?.kind !== 'battery') return [];
    return [{ pedal, id: source.battery, count: source.count, hours: hours === null ? null : tenthsDown(hours) }];
  });
  const banks = runtimes.map(({ hours, ...unit }) => ({ ...unit, hours: tenthsDown(hours) }));
  return [
    {
      field: 'source',
      claimed: told.sources.map(({ pedal, source }) => `${source} for ${pedal}`),
      found: feeds
        .filter(({ pedal }) => speaksOf.has(pedal))
        .map(({ pedal, supply }) => `${feedSourceOf(sourceOf(supply))} for ${pedal}`),
    },
    {
      field: 'kept',
      claimed: told.kept.map(keptText),
      found: told.kept.map(({ pedal }) =>
        keptText({ pedal, kept: board.pedals.find(({ id }) => id === pedal)?.kept ?? null }),
      ),
    },
    { field: 'battery', claimed: told.batteries.map(batteryText), found: sets.map(batteryText) },
    ...(told.runtimes === null
      ? []
      : [{ field: 'runtimes', claimed: told.runtimes.map(runtimeText), found: banks.map(runtimeText) }]),
  ];
}

const keptText = ({ pedal, kept }: ToldSources['kept'][number]): string =>
  kept === null ? `${pedal} is plugged` : `${pedal} is ${kept}`;

const batteryText = ({ pedal, id, count, hours }: ToldSources['batteries'][number]): string =>
  `${count} × ${id} for ${pedal}, ${hours === null ? 'without end' : hoursText(hours)}`;

const runtimeText = ({ supply, unit, hours }: NonNullable<ToldSources['runtimes']>[number]): string =>
  `${supply} ${unit} for ${hoursText(hours)}`;

const hoursText = (thousandths: number): string => `${decimalOfThousandths(thousandths)} h`;
