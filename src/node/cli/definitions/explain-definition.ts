import { Argument, Command } from 'commander';

import type { ExplainFlags } from '../commands/explain-command.js';
import { below, exitCodeText } from './help-text.js';
import { aimOption, boardArgument, jsonOption, optionalCatalogue, timeOption, skipBadRowsOption } from './shared.js';

/** The command line of `explain`, without its work, which is loaded when it runs. */
export function explainCommand(): Command {
  return new Command('explain')
    .description('Why is there no plan, and what would help? Or: why this plan, and why does this pedal sit there?')
    .addArgument(boardArgument())
    .addArgument(optionalCatalogue())
    .addArgument(new Argument('[pedal]', 'the id or name of a pedal: why it sits where it does'))
    .addOption(aimOption())
    .addOption(jsonOption())
    .addOption(skipBadRowsOption())
    .addOption(timeOption(' with what is explained by then'))
    .addHelpText('after', below(explainExitCodes))
    .action(async (board: string, second: string | undefined, third: string | undefined, flags: ExplainFlags) => {
      const { runExplain } = await import('../commands/explain-command.js');
      process.exitCode = await runExplain([board, second, third], flags);
    });
}

const explainExitCodes = exitCodeText({
  0: 'a plan, and why',
  3: 'a file cannot be read or is wrong, or the board has no such pedal',
  4: 'no plan exists, and why',
  5: 'stopped before everything was settled',
});
