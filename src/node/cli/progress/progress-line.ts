import type { Currency } from '../../../domain/money.js';
import type { Progress } from '../../../planning/choose/choose.js';
import { progressText } from './progress-text.js';
import { statusLine } from './status-line.js';

export type ProgressLine = {
  readonly show: (progress: Progress) => void;
  /** Erases the line and shows no more. */
  readonly end: () => void;
};

/** Shows on standard error how far a search has come, once it takes longer than a second. */
export function progressLine(currency: Currency): ProgressLine {
  let latest: Progress = { tier: null, value: null, bound: null };
  const { end } = statusLine((seconds, width) => progressText(latest, seconds, currency, width));
  return {
    show: (progress) => {
      latest = progress;
    },
    end,
  };
}
