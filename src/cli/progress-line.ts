import type { Currency } from '../domain/money.js';
import type { Progress } from '../planning/choose.js';
import { progressText } from './progress-text.js';
import { columnsOf } from './screen-of.js';

/** Waits shorter than this pass without a word. */
const quietMs = 1000;
/** Between two updates: often on a terminal, where a line is replaced, seldom in a log, where lines add up. */
const everyMs = { terminal: 200, log: 5000 };
/** A log has no edge. */
const logWidth = 200;

export type ProgressLine = {
  readonly show: (progress: Progress) => void;
  /** Erases the line and shows no more. */
  readonly end: () => void;
};

/**
 * Shows on standard error how far a search has come, once it takes longer than a second: on a terminal as one line that is
 * written over and erased at the end, by blanks so that any terminal will do; elsewhere as a line now and then.
 */
export function progressLine(currency: Currency): ProgressLine {
  const { stderr, env } = process;
  const started = performance.now();
  const terminal = stderr.isTTY && env['TERM'] !== 'dumb';
  // The last column stays free: a sign there would move the cursor to the next line.
  const width = (): number => (terminal ? columnsOf(stderr) - 1 : logWidth);
  let latest: Progress = { tier: null, value: null, bound: null };
  let shown = false;
  const erase = (): string => (shown && terminal ? `\r${' '.repeat(width())}\r` : '');
  const print = (): void => {
    const text = progressText(latest, Math.round((performance.now() - started) / 1000), currency, width());
    stderr.write(`${erase()}${text}${terminal ? '' : '\n'}`);
    shown = true;
  };
  let repeating: NodeJS.Timeout | undefined;
  const waiting = setTimeout(() => {
    print();
    repeating = setInterval(print, terminal ? everyMs.terminal : everyMs.log);
  }, quietMs);
  return {
    show: (progress) => {
      latest = progress;
    },
    end: () => {
      clearTimeout(waiting);
      clearInterval(repeating);
      if (shown && terminal) stderr.write(erase());
      shown = false;
    },
  };
}
