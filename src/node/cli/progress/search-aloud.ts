import type { Currency } from '../../../domain/money.js';
import type { Progress } from '../../../planning/choose/choose.js';
import { progressLine } from './progress-line.js';

/** How a search is told to stop early, and whom it tells how far it has come. */
export type Aloud = { readonly signal: AbortSignal; readonly onProgress: (progress: Progress) => void };

/**
 * A search with progress on standard error. Ctrl-C asks for the best plan so far; after that it is the system's again, so
 * that a second one ends the process at once, whatever it is busy with.
 */
export async function searchAloud<Answer>(
  currency: Currency,
  search: (aloud: Aloud) => Promise<Answer>,
): Promise<Answer> {
  const interrupt = new AbortController();
  const progress = progressLine(currency);
  const onInterrupt = (): void => {
    progress.end();
    process.stderr.write('Stopping with the best so far. Ctrl-C again ends at once.\n');
    interrupt.abort();
  };
  process.once('SIGINT', onInterrupt);
  try {
    return await search({ signal: interrupt.signal, onProgress: progress.show });
  } finally {
    progress.end();
    process.removeListener('SIGINT', onInterrupt);
  }
}
