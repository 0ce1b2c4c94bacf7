import type { JudgedPlan } from '../../domain/judged-plan.js';
import { factorText, type PedalId } from '../../domain/quantities.js';
import type { Check } from '../../planning/check/check.js';
import { block, type Piece } from './layout.js';
import { outputRows, totalRow, usedRows, type OutputRow } from './output-rows.js';
import { loadLegend } from '../words/load-legend.js';
import { unitTable } from './plugging.js';
import type { Screen } from './screen.js';
import { brokenRules } from '../words/check-words.js';
import { leftOnOutput, leftText, ownedUnits } from '../words/spare-units.js';
import { hasGroundAlone, unitUses, type UnitUse } from '../words/usage.js';
import type { Meter } from '../words/words.js';

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

/** The table of every owned unit, with what is left beside each load; nothing when none is owned. */
export function leftLines(screen: Screen, wiring: JudgedPlan): string[] {
  const { board, paints, width } = screen;
  const units = ownedUnits(board, screen.inventory, wiring);
  if (units.length === 0) return [];
  const legend = [
    loadLegend(screen, units),
    'Left: the rating less that load.',
    `A pedal by itself on a free output may draw what is free ${screen.marks.times === 'x' ? '/' : '÷'} ${factorText(board.policy.headroom.alone)}.`,
  ].map((text) => ({ text, paint: paints.faint }));
  return [
    ...block(legend, width, 2),
    ...units.flatMap((unit) => {
      const rows = outputRows(screen, unit).map((row) =>
        row.meter === null ? row : { ...row, detail: [...row.detail, leftPiece(screen, unit, row, row.meter)] },
      );
      return ['', ...unitTable(screen, units, unit, rows)];
    }),
  ];
}

function leftPiece({ inventory, paints }: Screen, unit: UnitUse, row: OutputRow, meter: Meter): Piece {
  const use = unit.outputs.find(({ outputs }) => outputs.join('+') === row.outputs);
  if (use === undefined) return { text: `left: ${leftText(meter)}`, paint: paints.good };
  const paint = hasGroundAlone(inventory, use) ? paints.faint : paints.good;
  return { text: `left: ${leftOnOutput(inventory, use, meter)}`, paint };
}
