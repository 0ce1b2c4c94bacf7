import type { Finding } from '../../domain/finding.js';
import { resolveInputs } from '../resolve/resolve-inputs.js';
import { collectedFaults } from './collect-faults.js';
import type { ReadSheet } from './read-sheet.js';

/** What is wrong with one file by itself; null when nothing is. */
export const faultsAlone = (sheet: ReadSheet): ReturnType<typeof collectedFaults> =>
  collectedFaults(sheet, null, findingsAlone(sheet));

/**
 * What is found in one file beyond what breaks its schema. What a board owns, and how it is wired, is looked up in its
 * catalogue, which is not at hand here.
 */
export function findingsAlone(sheet: ReadSheet): readonly Finding[] {
  const { findings } = resolveInputs(
    sheet.source === 'board' ? { board: sheet.sheet, catalogue: 'not given' } : { board: null, catalogue: sheet.sheet },
  );
  return findings.filter(({ path }) => path[0] !== 'owned' && path[0] !== 'wiring');
}
