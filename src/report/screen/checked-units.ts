import type { Board } from '../../domain/board.js';
import { compareExact } from '../../domain/load.js';
import type { OutletLoad } from '../../domain/load-numbers.js';
import type { Feed } from '../../domain/plan.js';
import type { PedalId } from '../../domain/quantities.js';
import type { Rule } from '../../domain/rules.js';
import type { Check } from '../../planning/check/check.js';
import { bankOf, type Inventory } from '../words/inventory.js';
import { block, type Piece } from './layout.js';
import { totalRow, usedRows } from './output-rows.js';
import { loadLegend, unitTable } from './plugging.js';
import type { Screen } from './screen.js';
import type { OutputUse, UnitUse } from '../words/usage.js';
import { meterOf } from '../words/words.js';

/** The pedals that no broken rule names. */
export function pedalsInOrder({ findings, wiring }: Check): ReadonlySet<PedalId> {
  const named = new Set(findings.flatMap(({ pedals }) => pedals));
  return new Set(wiring.feeds.map(({ pedal }) => pedal).filter((pedal) => !named.has(pedal)));
}

/** Every output in use with its numbers, and which of its feeds are broken; nothing when none is in use. */
export function checkedLines(screen: Screen, check: Check): string[] {
  const units = checkedUnits(screen.board, screen.inventory, check);
  if (units.length === 0) return [];
  const notes = brokenNotes(screen, check);
  return [
    ...block([{ text: loadLegend(screen, units), paint: screen.paints.faint }], screen.width, 2),
    ...units.flatMap((unit) => [
      '',
      ...unitTable(screen, units, unit, [
        ...unit.outputs.flatMap((use) => usedRows(screen, unit, use, notes)),
        ...unit.totals.map(({ bank, meter }) => totalRow(screen, bank, meter)),
      ]),
    ]),
  ];
}

/** "broken: ground, startup" for each pedal that a broken rule names. */
function brokenNotes({ paints }: Screen, { findings }: Check): ReadonlyMap<PedalId, Piece> {
  const rules = new Map<PedalId, ReadonlySet<Rule>>();
  for (const { rule, pedals } of findings)
    for (const pedal of pedals) rules.set(pedal, new Set([...(rules.get(pedal) ?? []), rule]));
  return new Map(
    [...rules].map(([pedal, all]) => [pedal, { text: `broken: ${[...all].join(', ')}`, paint: paints.bad }]),
  );
}

/** The units in use, in the order of the gear and the catalogue, with the numbers of the audit. */
function checkedUnits({ owned }: Board, inventory: Inventory, { outlets, totals, wiring }: Check): readonly UnitUse[] {
  return inventory.supplies.flatMap((supply) => {
    const here = outlets.filter(({ place }) => place.supply === supply.id);
    const units = [...new Set(here.map(({ place }) => place.unit))].sort((first, second) => first - second);
    return units.map((unit): UnitUse => ({
      supply,
      unit,
      owned: unit <= (owned.supplies.get(supply.id) ?? 0),
      outputs: here
        .filter(({ place }) => place.unit === unit)
        .flatMap((outlet) => outputUse(wiring.feeds, outlet))
        .sort((first, second) => (first.outputs[0] ?? 0) - (second.outputs[0] ?? 0)),
      totals: totals
        .filter(({ place }) => place.supply === supply.id && place.unit === unit)
        .map(({ of, place, numbers }) => ({
          bank: of === 'supply' ? null : bankOf(supply, place.outputs[0] ?? 0),
          meter: meterOf(numbers),
        })),
    }));
  });
}

/** Nothing of an output that has no such setting: a broken rule says so. */
function outputUse(feeds: readonly Feed[], { place, pedals, current, startup }: OutletLoad): readonly OutputUse[] {
  const [first, ...others] = feeds.filter(({ pedal }) => pedals.includes(pedal));
  if (first === undefined || current === null) return [];
  const isHigher = startup !== null && compareExact(startup.planned, current.planned) > 0;
  return [
    {
      outputs: place.outputs,
      settings: first.settings,
      feeds: [first, ...others],
      meter: meterOf(current),
      peak: isHigher ? meterOf(startup) : null,
    },
  ];
}
