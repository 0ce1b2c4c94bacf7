import { Command } from 'commander';

import type { SpareFlags } from '../commands/spare-command.js';
import { below, exitCodeText } from './help-text.js';
import { refuseReports, reportOption } from './report-option.js';
import { boardArgument, forceOption, jsonOption, optionalCatalogue, skipBadRowsOption, timeOption } from './shared.js';

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
    .addOption(reportOption('.html a page to print'))
    .addOption(forceOption())
    .addHelpText('after', below(spareExitCodes))
    .action(async (board: string, catalogue: string | undefined, flags: SpareFlags, command: Command) => {
      if (flags.add !== undefined && flags.report.length > 0) command.error('error: --report does not go with --add');
      if (flags.force === true && flags.report.length === 0) command.error('error: --force goes with --report only');
      await refuseReports(command, flags, 'spare');
      const { runSpare } = await import('../commands/spare-command.js');
      process.exitCode = await runSpare(board, catalogue, flags);
    });
}

const spareExitCodes = exitCodeText({
  0: 'what there is to spare; yes, it fits',
  3: 'a file cannot be read or is wrong, or --add is not understood',
  4: 'the wiring is not safe, or no plan; no, it does not fit',
  5: 'stopped before everything was settled',
});
