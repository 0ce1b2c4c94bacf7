import { Argument, Command } from 'commander';

import type { VerifyFlags } from '../commands/verify-command.js';
import { below, exitCodeText } from './help-text.js';
import { boardArgument, catalogueArgument, jsonOption, skipBadRowsOption } from './shared.js';

/** The command line of `verify`, without its work, which is loaded when it runs. */
export function verifyCommand(): Command {
  return new Command('verify')
    .description('Is this plan safe, and is it true that none is better? Checks a result and its proof.')
    .addArgument(boardArgument('the board file that the plan was made for'))
    .addArgument(catalogueArgument('the catalogue file that it was made from'))
    .addArgument(new Argument('<plan>', 'the result, as choose --json or rewire --json printed it'))
    .requiredOption('--proof <file>', 'the proof that came with it')
    .addOption(jsonOption('verdict'))
    .addOption(skipBadRowsOption())
    .addHelpText('after', below(verifyExitCodes))
    .action(async (board: string, catalogue: string, plan: string, flags: VerifyFlags) => {
      const { runVerify } = await import('../commands/verify-command.js');
      process.exitCode = await runVerify({ board, catalogue, plan }, flags);
    });
}

const verifyExitCodes = exitCodeText({
  0: 'it holds, and it is proven',
  3: 'a file cannot be read or is wrong',
  4: 'the plan or the proof does not hold',
});
