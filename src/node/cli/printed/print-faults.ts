import { faultText, type ReadResult } from '../../../reading/faults/input-fault.js';

/** Prints what is wrong with files on standard error, a line each. */
export function printFaults({ faults, more }: Extract<ReadResult<unknown>, { kind: 'faulty' }>): void {
  const lines = faults.map(faultText);
  process.stderr.write(`${[...lines, ...(more > 0 ? [`and ${more} more.`] : [])].join('\n')}\n`);
}
