import { faultsText, type Faulty } from '../../../report/screen/faults-screen.js';
import { screenOf } from './screen-of.js';

/** Prints what is wrong with files on standard error. Lines are wrapped for terminals only: logs are searched by line. */
export function printFaults(...files: readonly Faulty[]): void {
  const { stderr, env } = process;
  const screen = screenOf(stderr, env);
  stderr.write(faultsText(files, stderr.isTTY ? screen : { ...screen, width: Infinity }));
}
