import { Command, Option } from 'commander';

import type { CheckFlags } from '../commands/check-command.js';
import { outputAsked } from './option-values.js';
import { below, exitCodeText } from './help-text.js';
import { refuseReports, reportOption } from './report-option.js';
import { forceOption, jsonOption, optionalCatalogue, boardArgument, skipBadRowsOption } from './shared.js';

/** The command line of `check`, without its work, which is loaded when it runs. */
export function checkCommand(): Command {
  return new Command('check')
    .description('Is this wiring safe? Or: can this pedal go on that output?')
    .addArgument(boardArgument('the board file, with how it is plugged under `wiring`'))
    .addArgument(optionalCatalogue())
    .option('--pedal <id>', 'ask about one pedal of the board; goes with --output')
    .addOption(
      new Option('--output <supply:n>', 'and about this output: quay-6:5, or quay-6/2:5 of a second unit').argParser(
        outputAsked,
      ),
    )
    .addOption(jsonOption())
    .addOption(skipBadRowsOption())
    .addOption(reportOption('.html a page to print'))
    .addOption(forceOption())
    .addHelpText('after', below(checkExitCodes))
    .action(async (board: string, catalogue: string | undefined, flags: CheckFlags, command: Command) => {
      if ((flags.pedal === undefined) !== (flags.output === undefined))
        command.error('error: --pedal and --output go together');
      if (flags.pedal !== undefined && flags.report.length > 0)
        command.error('error: --report does not go with --pedal and --output');
      if (flags.force === true && flags.report.length === 0) command.error('error: --force goes with --report only');
      await refuseReports(command, flags, 'check');
      const { runCheck } = await import('../commands/check-command.js');
      process.exitCode = await runCheck(board, catalogue, flags);
    });
}

const checkExitCodes = exitCodeText({
  0: 'safe; or yes, it can be',
  3: 'a file cannot be read or is wrong, or names something unknown',
  4: 'not safe: a hard rule is broken; or no, it cannot be',
});
