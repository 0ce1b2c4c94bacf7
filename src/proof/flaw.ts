/** Ends the check of a proof at the first thing that does not hold. It never leaves src/proof: the verdict says why. */
export class Flaw extends Error {
  constructor(reason: string) {
    super(reason);
    this.name = 'Flaw';
  }
}

/** An integer as a number. @throws Flaw when a number cannot hold it exactly. */
export function exactNumber(value: bigint): number {
  const number = Number(value);
  if (!Number.isSafeInteger(number)) throw new Flaw('its numbers are too large to be checked exactly');
  return number;
}
