import type { Board } from '../../domain/board.js';
import type { Place } from '../../domain/plan.js';
import type { PedalId } from '../../domain/quantities.js';
import type { Check, SoftFinding } from '../../planning/check/check.js';
import type { Inventory } from '../words/inventory.js';
import { loadObject, placeObject } from './json-objects.js';
import { softText } from '../words/soft-findings.js';

/** A soft finding as every result prints it; `numbers` are there where a limit is near. */
export const softObject = (board: Board, inventory: Inventory, check: Check, finding: SoftFinding) => ({
  kind: finding.kind,
  pedals: pedalsOf(finding),
  ...placeObject(placeOf(finding)),
  message: softText(board, inventory, check, finding),
  numbers: finding.kind === 'tight' ? loadObject(finding.numbers) : null,
});

function placeOf(finding: SoftFinding): Place | null {
  switch (finding.kind) {
    case 'tight':
    case 'open setting':
    case 'off preferred':
      return finding.place;
    case 'exposed':
    case 'not owned':
    case 'unfed':
      return null;
  }
}

/** Those that it concerns; none for a thing that is not owned. */
function pedalsOf(finding: SoftFinding): readonly PedalId[] {
  switch (finding.kind) {
    case 'tight':
      return finding.pedals;
    case 'not owned':
      return [];
    case 'exposed':
    case 'open setting':
    case 'off preferred':
    case 'unfed':
      return [finding.pedal];
  }
}
