#!/usr/bin/env node
import { CommanderError } from 'commander';

import { endOnDefects, endWithDefect } from './defects.js';
import { exitCodes } from './exit-codes.js';
import { program } from './program.js';

endOnDefects();
try {
  await program().parseAsync(process.argv);
} catch (error) {
  if (!(error instanceof CommanderError)) endWithDefect(error);
  process.exitCode = error.exitCode === 0 ? exitCodes.plan : exitCodes.usage;
}
