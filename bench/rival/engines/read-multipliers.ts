import { isPoint } from '../../../solver/engines/read-claim.js';

/** A value of unknown origin as multipliers; null when it is no list of numbers. */
export const readMultipliers = (value: unknown): readonly number[] | null => (isPoint(value) ? value : null);
