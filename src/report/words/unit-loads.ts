import { bankOutputs } from './free-outputs.js';
import type { Speech } from './speech.js';
import { unitTitle, type OutputUse, type UnitUse } from './usage.js';
import { listText, outputsText, type Meter } from './words.js';

/** What carries a load, and how much of it. */
export type UnitLoad = { readonly name: string; readonly meter: Meter };

/** Every measured load, of outputs and then of totals, each at switch-on as well where that asks for more. */
export const unitLoads = (speech: Speech, units: readonly UnitUse[]): readonly UnitLoad[] =>
  units.flatMap((unit) => {
    const of = unitTitle(speech.inventory, units, unit);
    return [
      ...unit.outputs.flatMap((use) =>
        withPeak(`${pedalsText(speech, use)} (${of} ${outputsText(use.outputs)})`, use.meter, use.peak),
      ),
      ...unit.totals.flatMap(({ bank, meter, peak }) =>
        withPeak(bank === null ? `The whole ${of}` : `${of} ${bankOutputs(speech.marks, bank)} together`, meter, peak),
      ),
    ];
  });

const withPeak = (name: string, meter: Meter | null, peak: Meter | null): readonly UnitLoad[] => [
  ...(meter === null ? [] : [{ name, meter }]),
  ...(peak === null ? [] : [{ name: `At switch-on: ${name}`, meter: peak }]),
];

const pedalsText = ({ inventory }: Speech, { feeds }: OutputUse): string =>
  listText(feeds.map(({ pedal }) => inventory.pedalName(pedal)));
