import { escapedText } from '../../../domain/shown-text.js';

/** A line on standard error, without anything that a terminal could act on. */
export const tell = (line: string): void => {
  process.stderr.write(`${escapedText(line)}\n`);
};
