import { escapedText } from '../../domain/shown-text.js';
import { exitCodes } from './exit-codes.js';

/** What Node ends with when nothing is left to do and the program still waits for something. */
const leftWaiting = 13;

/**
 * Makes sure that whatever goes wrong unseen ends in one line on standard error and the exit code of a defect, never in a
 * stack trace. A reader that closes the pipe early, such as `head`, has seen enough: nothing is wrong then.
 */
export function endOnDefects(): void {
  process.on('uncaughtException', endWithDefect);
  process.on('unhandledRejection', endWithDefect);
  process.on('exit', () => {
    if (process.exitCode === leftWaiting) printDefect('it ended before it had an answer');
  });
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE') endWithDefect(error);
    });
  }
}

/** Ends the process over an exception that nothing else has dealt with, whatever is still under way. */
export function endWithDefect(error: unknown): never {
  printDefect(error);
  process.exit();
}

function printDefect(error: unknown): void {
  process.exitCode = exitCodes.internalError;
  process.stderr.write(`${defectLine(error)}\n`);
}

/** The line, without its end, and without anything that a terminal could act on. */
export function defectLine(error: unknown): string {
  const message = error instanceof Error ? error.message : String(error);
  const begin = isWriteError(error)
    ? 'boardfeed could not write its output'
    : 'boardfeed has a defect; your files are not to blame and nothing was changed';
  return escapedText(`${begin}: ${message === '' ? 'no more is known' : message}`);
}

/** Whether the system refused to write: the disk is full, say. */
const isWriteError = (error: unknown): boolean =>
  error instanceof Error && 'syscall' in error && error.syscall === 'write';
