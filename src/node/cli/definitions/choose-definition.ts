import { Command } from 'commander';

import type { ChooseFlags } from '../commands/choose-command.js';
import { refuseReports, reportOption, shopOption } from './report-option.js';
import {
  aimOption,
  boardArgument,
  forceOption,
  jsonOption,
  optionalCatalogue,
  partialOption,
  planReports,
  recordOption,
  timeOption,
  withBestFound,
  skipBadRowsOption,
} from './shared.js';
import { below, exitCodeText } from './help-text.js';

/** The command line of `choose`, without its work, which is loaded when it runs. */
export function chooseCommand(): Command {
  return new Command('choose')
    .description('What should I buy to power these pedals, and how do I plug it in?')
    .addArgument(boardArgument())
    .addArgument(optionalCatalogue('the catalogue file; without one: what you own, or what to look for'))
    .addOption(aimOption())
    .addOption(partialOption())
    .addOption(jsonOption())
    .addOption(skipBadRowsOption())
    .addOption(timeOption(withBestFound))
    .option('--proof <file>', 'write the proof to this file, for boardfeed verify to check')
    .addOption(recordOption())
    .addOption(reportOption(planReports))
    .addOption(shopOption())
    .addOption(forceOption('the proof and of reports'))
    .addHelpText('after', below(chooseExitCodes))
    .action(async (board: string, catalogue: string | undefined, flags: ChooseFlags, command: Command) => {
      if (flags.force === true && flags.proof === undefined && flags.report.length === 0)
        command.error('error: --force goes with --proof or --report only');
      await refuseReports(command, flags, 'answer', flags.proof === undefined ? [] : [flags.proof]);
      const { runChoose } = await import('../commands/choose-command.js');
      process.exitCode = await runChoose(board, catalogue ?? null, flags);
    });
}

const chooseExitCodes = exitCodeText({
  0: 'a plan, proven best; without a catalogue perhaps what to look for',
  3: 'a file cannot be read or is wrong',
  4: 'no plan exists',
  5: 'stopped before a proof (the best plan found is printed)',
});
