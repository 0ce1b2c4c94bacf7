import { createHash } from 'node:crypto';

/** A number for some texts that others hardly ever have. */
export const contentHash = (...texts: readonly string[]): string =>
  createHash('sha256').update(JSON.stringify(texts)).digest('hex');
