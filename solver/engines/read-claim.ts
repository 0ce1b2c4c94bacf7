import type { EngineClaim } from './engine.js';
import type { ProgramPoint } from '../program.js';

/** A value of unknown origin as a claim; whatever has not a claim's shape is a failure of its engine. */
export function readClaim(value: unknown): EngineClaim {
  if (typeof value === 'object' && value !== null && 'kind' in value) {
    const point = 'point' in value ? value.point : undefined;
    if (value.kind === 'optimal' && isPoint(point)) return { kind: 'optimal', point };
    if (value.kind === 'infeasible') return { kind: 'infeasible' };
    if (value.kind === 'stopped' && (point === null || isPoint(point))) return { kind: 'stopped', point };
    if (value.kind === 'failed')
      return { kind: 'failed', reason: 'reason' in value ? String(value.reason) : 'no reason' };
  }
  return { kind: 'failed', reason: 'the answer is no claim' };
}

/** Whether a value of unknown origin is a list of numbers. */
export const isPoint = (value: unknown): value is ProgramPoint =>
  Array.isArray(value) && value.every((entry) => typeof entry === 'number');
