import { columnsOf } from '../printed/screen-of.js';

/** Waits shorter than this pass without a word. */
const quietMs = 1000;
/** Between two updates: often on a terminal, where a line is replaced, seldom in a log, where lines add up. */
const everyMs = { terminal: 200, log: 5000 };
/** A log has no edge. */
const logWidth = 200;

type StatusLine = {
  /** Shows it where that is due: for work that leaves timers no turn, to be called now and then. */
  readonly tick: () => void;
  /** Erases the line and shows no more. */
  readonly end: () => void;
};

/**
 * Shows on standard error how far something has come, once it takes longer than a second: on a terminal as one line that is
 * written over and erased at the end, by blanks so that any terminal will do; elsewhere as a line now and then. The text is
 * asked for again and again and must fit into so many columns.
 */
export function statusLine(textAt: (seconds: number, width: number) => string): StatusLine {
  const { stderr, env } = process;
  const started = performance.now();
  const terminal = stderr.isTTY && env['TERM'] !== 'dumb';
  // The last column stays free: a sign there would move the cursor to the next line.
  const width = (): number => (terminal ? columnsOf(stderr) - 1 : logWidth);
  let shown = false;
  let last = -Infinity;
  const erase = (): string => (shown && terminal ? `\r${' '.repeat(width())}\r` : '');
  const print = (): void => {
    const text = textAt(Math.round((performance.now() - started) / 1000), width());
    stderr.write(`${erase()}${text}${terminal ? '' : '\n'}`);
    shown = true;
    last = performance.now();
  };
  let repeating: NodeJS.Timeout | undefined;
  const waiting = setTimeout(() => {
    print();
    repeating = setInterval(print, terminal ? everyMs.terminal : everyMs.log);
  }, quietMs);
  return {
    tick: () => {
      const now = performance.now();
      if (now - started >= quietMs && now - last >= (terminal ? everyMs.terminal : everyMs.log)) print();
    },
    end: () => {
      clearTimeout(waiting);
      clearInterval(repeating);
      if (shown && terminal) stderr.write(erase());
      shown = false;
    },
  };
}
