import { Command, Option } from 'commander';

import type { RewireFlags } from '../commands/rewire-command.js';
import { amount } from './option-values.js';
import { refuseReports, reportOption, shopOption } from './report-option.js';
import {
  forceOption,
  jsonOption,
  optionalCatalogue,
  partialOption,
  planExitCodes,
  planReports,
  recordOption,
  timeOption,
  boardArgument,
  withBestFound,
  skipBadRowsOption,
} from './shared.js';
import { below } from './help-text.js';

/** The command line of `rewire`, without its work, which is loaded when it runs. */
export function rewireCommand(): Command {
  return new Command('rewire')
    .description('How do I re-plug what I own with the fewest changes, and in which order?')
    .addArgument(boardArgument('the board file, with how it is plugged today under `wiring`'))
    .addArgument(optionalCatalogue())
    .option('--keep <pedal...>', 'ids or names of pedals that must stay where they are plugged', [])
    .addOption(
      new Option('--buy <when>', 'whether anything may be bought, where nothing else works')
        .choices(['never', 'allow'])
        .default('allow'),
    )
    .addOption(
      new Option('--budget <amount>', "the most that may be spent, in place of the board's budget").argParser(amount),
    )
    .addOption(partialOption())
    .addOption(jsonOption())
    .addOption(skipBadRowsOption())
    .addOption(timeOption(withBestFound))
    .option('--proof <file>', 'write the proof to this file, for boardfeed verify to check')
    .addOption(recordOption())
    .addOption(reportOption(planReports))
    .addOption(shopOption())
    .addOption(forceOption('the proof and of reports'))
    .addHelpText('after', below(planExitCodes))
    .action(async (board: string, catalogue: string | undefined, flags: RewireFlags, command: Command) => {
      if (flags.force === true && flags.proof === undefined && flags.report.length === 0)
        command.error('error: --force goes with --proof or --report only');
      await refuseReports(command, flags, 'answer', flags.proof === undefined ? [] : [flags.proof]);
      const { runRewire } = await import('../commands/rewire-command.js');
      process.exitCode = await runRewire(board, catalogue, flags);
    });
}
