import type { PedalId } from '../../domain/quantities.js';
import type { Check } from '../../planning/check/check.js';
import { block, type Piece } from './layout.js';
import { totalRow, usedRows } from './output-rows.js';
import { loadLegend } from '../words/load-legend.js';
import { unitTable } from './plugging.js';
import type { Screen } from './screen.js';
import { brokenRules } from '../words/check-words.js';
import { unitUses } from '../words/usage.js';

/** Every output in use with its numbers, and which of its feeds are broken; nothing when none is in use. */
export function checkedLines(screen: Screen, check: Check): string[] {
  const units = unitUses(screen.board, screen.inventory, check.wiring);
  if (units.length === 0) return [];
  const notes = brokenNotes(screen, check);
  return [
    ...block([{ text: loadLegend(screen, units), paint: screen.paints.faint }], screen.width, 2),
    ...units.flatMap((unit) => [
      '',
      ...unitTable(screen, units, unit, [
        ...unit.outputs.flatMap((use) => usedRows(screen, unit, use, notes)),
        ...unit.totals.map((total) => totalRow(screen, total)),
      ]),
    ]),
  ];
}

/** "broken: ground, startup" for each pedal that a broken rule names. */
function brokenNotes({ paints }: Screen, check: Check): ReadonlyMap<PedalId, Piece> {
  return new Map(
    [...brokenRules(check)].map(([pedal, all]) => [
      pedal,
      { text: `broken: ${[...all].join(', ')}`, paint: paints.bad },
    ]),
  );
}
