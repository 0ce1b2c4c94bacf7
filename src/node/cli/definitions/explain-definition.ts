import { Argument, Command, Option } from 'commander';

import type { ExplainFlags } from '../commands/explain-command.js';
import { positiveSeconds } from './option-values.js';

/** The command line of `explain`, without its work, which is loaded when it runs. */
export function explainCommand(): Command {
  return new Command('explain')
    .description('Why is there no plan, and what would help? Or: why this plan, and why does this pedal sit there?')
    .addArgument(new Argument('<board>', 'the board file: pedals, policy and what is owned (YAML or JSON)'))
    .addArgument(new Argument('<catalogue>', 'the catalogue file: supplies and leads to choose from'))
    .addArgument(new Argument('[pedal]', 'the id of a pedal: why it sits where it does'))
    .addOption(
      new Option('--aim <aim>', 'what is best: least money, fewest supplies, or least noise')
        .choices(['cost', 'bricks', 'quiet'])
        .default('cost'),
    )
    .option('--json', 'print the result as one JSON object and nothing else', false)
    .addOption(
      new Option('--time <seconds>', 'stop after so many seconds with what is explained by then').argParser(
        positiveSeconds,
      ),
    )
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
