import { Command } from 'commander';

import type { AskFlags } from '../commands/ask-command.js';
import { below, exitCodeText } from './help-text.js';
import { refuseReports, reportOption } from './report-option.js';
import { boardArgument, forceOption, jsonOption, optionalCatalogue, skipBadRowsOption, timeOption } from './shared.js';

/** The command line of `ask`, without its work, which is loaded when it runs. */
export function askCommand(): Command {
  return new Command('ask')
    .description('Which label must I read? What each missing or assumed figure decides, the most decisive first.')
    .addArgument(boardArgument('the board file'))
    .addArgument(optionalCatalogue())
    .addOption(jsonOption())
    .addOption(skipBadRowsOption())
    .addOption(timeOption(' with what is known by then'))
    .addOption(reportOption('.html a page to print'))
    .addOption(forceOption())
    .addHelpText('after', below(askExitCodes))
    .action(async (board: string, catalogue: string | undefined, flags: AskFlags, command: Command) => {
      if (flags.force === true && flags.report.length === 0) command.error('error: --force goes with --report only');
      await refuseReports(command, flags, 'labels');
      const { runAsk } = await import('../commands/ask-command.js');
      process.exitCode = await runAsk(board, catalogue, flags);
    });
}

const askExitCodes = exitCodeText({
  0: 'which labels decide',
  3: 'a file cannot be read or is wrong',
  4: 'the wiring is not safe, or no plan',
  5: 'stopped before everything was settled',
});
