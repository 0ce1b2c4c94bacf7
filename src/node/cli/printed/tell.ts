import { escapedText } from '../../../domain/shown-text.js';

/** Lines on standard error, without anything that a terminal could act on. */
export const tell = (...lines: readonly string[]): void => {
  process.stderr.write(lines.map((line) => `${escapedText(line)}\n`).join(''));
};
