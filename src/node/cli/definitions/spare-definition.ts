import { Command } from 'commander';

import type { SpareFlags } from '../commands/spare-command.js';
import { boardArgument, jsonOption, optionalCatalogue, timeOption, skipBadRowsOption } from './shared.js';

/** The command line of `spare`, without its work, which is loaded when it runs. */
export function spareCommand(): Command {
  return new Command('spare')
    .description('What else fits? What each output has left, and what more can be fed with nothing bought.')
    .addArgument(boardArgument('the board file; as plugged under `wiring`, else by the best plan'))
    .addArgument(optionalCatalogue())
    .option('--add <words>', 'ask about one more pedal, such as "9 V, 300 mA, digital"')
    .addOption(jsonOption())
    .addOption(skipBadRowsOption())
    .addOption(timeOption(' with what is known by then'))
    .addHelpText('after', spareExitCodeHelp)
    .action(async (board: string, catalogue: string | undefined, flags: SpareFlags) => {
      const { runSpare } = await import('../commands/spare-command.js');
      process.exitCode = await runSpare(board, catalogue, flags);
    });
}

const spareExitCodeHelp = `
What --add leaves out counts as DC, centre-negative, inlet barrel-2.1 and negative ground, and is listed to be confirmed.

Exit codes:
  0  what there is to spare; yes, it fits    3  a file cannot be read or is wrong, or --add is not understood
  1  a defect of boardfeed                   4  the wiring is not safe, or no plan; no, it does not fit
  2  wrong use of the command                5  stopped before everything was settled`;
