import { Argument, Command } from 'commander';

import type { ExplainFlags } from '../commands/explain-command.js';
import { aimOption, boardArgument, catalogueArgument, jsonOption, timeOption, skipBadRowsOption } from './shared.js';

/** The command line of `explain`, without its work, which is loaded when it runs. */
export function explainCommand(): Command {
  return new Command('explain')
    .description('Why is there no plan, and what would help? Or: why this plan, and why does this pedal sit there?')
    .addArgument(boardArgument())
    .addArgument(catalogueArgument())
    .addArgument(new Argument('[pedal]', 'the id of a pedal: why it sits where it does'))
    .addOption(aimOption())
    .addOption(jsonOption())
    .addOption(skipBadRowsOption())
    .addOption(timeOption(' with what is explained by then'))
    .addHelpText('after', explainExitCodeHelp)
    .action(async (board: string, catalogue: string, pedal: string | undefined, flags: ExplainFlags) => {
      const { runExplain } = await import('../commands/explain-command.js');
      process.exitCode = await runExplain({ board, catalogue, pedal: pedal ?? null }, flags);
    });
}

const explainExitCodeHelp = `
Exit codes:
  0  a plan, and why             3  a file cannot be read or is wrong, or the board has no such pedal
  1  a defect of boardfeed       4  no plan exists, and why
  2  wrong use of the command    5  stopped before everything was settled`;
