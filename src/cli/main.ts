#!/usr/bin/env node
import { CommanderError } from 'commander';

import { exitCodes } from './exit-codes.js';
import { program } from './program.js';

/** A reader that closes the pipe early, such as `head`, has seen enough. */
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit();
});

try {
  await program().parseAsync(process.argv);
} catch (error) {
  if (error instanceof CommanderError) {
    process.exitCode = error.exitCode === 0 ? exitCodes.plan : exitCodes.usage;
  } else {
    const message = error instanceof Error ? error.message : String(error);
    process.stderr.write(`boardfeed has a defect; your files are not to blame and nothing was changed: ${message}\n`);
    process.exitCode = exitCodes.internalError;
  }
}
