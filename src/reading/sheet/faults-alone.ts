import { resolveInputs } from '../resolve/resolve-inputs.js';
import { collectedFaults } from './collect-faults.js';
import type { ReadSheet } from './read-sheet.js';

/**
 * What is wrong with one file by itself; null when nothing is. What a board owns, and how it is wired, is looked up in its
 * catalogue, which is not at hand here.
 */
export function faultsAlone(sheet: ReadSheet): ReturnType<typeof collectedFaults> {
  const { findings } = resolveInputs(
    sheet.source === 'board' ? { board: sheet.sheet, catalogue: 'not given' } : { board: null, catalogue: sheet.sheet },
  );
  const alone = findings.filter(({ path }) => path[0] !== 'owned' && path[0] !== 'wiring');
  return collectedFaults(sheet, null, alone);
}
