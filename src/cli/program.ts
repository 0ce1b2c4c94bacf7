import { readFileSync } from 'node:fs';

import { Argument, Command, InvalidArgumentError, Option } from 'commander';

import { escapedText } from '../domain/shown-text.js';
import type { ChooseFlags } from './choose-command.js';
import { entryCommands } from './entry-commands.js';
import type { VerifyFlags } from './verify-command.js';

/** The command line, without its work: what a command needs is loaded when it runs, so that help is instant. */
export function program(): Command {
  const command = new Command('boardfeed')
    .description('Works out how to power guitar-effect pedals: safely, quietly and at the least cost, with a proof.')
    .version(version(), '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .helpCommand('help [command]', 'print the help of a command')
    .showHelpAfterError('(run boardfeed --help for what there is)')
    .configureOutput(safeOutput)
    .exitOverride();
  command.addCommand(chooseCommand());
  command.addCommand(verifyCommand());
  for (const entry of entryCommands()) command.addCommand(withManners(entry));
  return command;
}

function chooseCommand(): Command {
  return new Command('choose')
    .description('What should I buy to power these pedals, and how do I plug it in?')
    .addArgument(new Argument('<board>', 'the board file: pedals, policy and what is owned (YAML or JSON)'))
    .addArgument(new Argument('<catalogue>', 'the catalogue file: supplies and leads to choose from'))
    .addOption(
      new Option('--aim <aim>', 'what is best: least money, fewest supplies, or least noise')
        .choices(['cost', 'bricks', 'quiet'])
        .default('cost'),
    )
    .option('--partial', 'allow a plan that leaves pedals without power, as few as can be', false)
    .option('--json', 'print the result as one JSON object and nothing else', false)
    .addOption(
      new Option('--time <seconds>', 'stop after so many seconds with the best plan found').argParser(positiveSeconds),
    )
    .option('--proof <file>', 'write the proof to this file, for boardfeed verify to check')
    .option('--force', 'replace the file of the proof if there is one', false)
    .addHelpText('after', exitCodeHelp)
    .configureOutput(safeOutput)
    .exitOverride()
    .showHelpAfterError('(run boardfeed choose --help for what there is)')
    .action(async (board: string, catalogue: string, flags: ChooseFlags, command: Command) => {
      if (flags.force === true && flags.proof === undefined) command.error('error: --force goes with --proof only');
      const { runChoose } = await import('./choose-command.js');
      process.exitCode = await runChoose(board, catalogue, flags);
    });
}

function verifyCommand(): Command {
  return new Command('verify')
    .description('Is this plan safe, and is it true that none is better? Checks a result and its proof.')
    .addArgument(new Argument('<board>', 'the board file that the plan was made for'))
    .addArgument(new Argument('<catalogue>', 'the catalogue file that it was made from'))
    .addArgument(new Argument('<plan>', 'the result, as choose --json printed it'))
    .requiredOption('--proof <file>', 'the proof that came with it')
    .option('--json', 'print the verdict as one JSON object and nothing else', false)
    .addHelpText('after', verifyExitCodeHelp)
    .configureOutput(safeOutput)
    .exitOverride()
    .showHelpAfterError('(run boardfeed verify --help for what there is)')
    .action(async (board: string, catalogue: string, plan: string, flags: VerifyFlags) => {
      const { runVerify } = await import('./verify-command.js');
      process.exitCode = await runVerify({ board, catalogue, plan }, flags);
    });
}

/** What every command does alike when it is used wrongly. */
const withManners = (command: Command): Command =>
  command
    .configureOutput(safeOutput)
    .exitOverride()
    .showHelpAfterError(`(run boardfeed ${command.name()} --help for what there is)`);

/** A message of wrong use repeats what was typed, which a script may have taken from anywhere. */
const safeOutput = {
  outputError: (text: string, write: (text: string) => void): void => {
    write(text.split('\n').map(escapedText).join('\n'));
  },
};

const exitCodeHelp = `
Exit codes:
  0  a plan, proven best        3  a file cannot be read or is wrong
  1  a defect of boardfeed      4  no plan exists
  2  wrong use of the command   5  stopped before a proof (the best plan found is printed)`;

const verifyExitCodeHelp = `
Exit codes:
  0  it holds, and it is proven  3  a file cannot be read or is wrong
  1  a defect of boardfeed       4  the plan or the proof does not hold
  2  wrong use of the command`;

function positiveSeconds(text: string): number {
  const seconds = /^(\d+\.?\d*|\.\d+)$/.test(text) ? Number(text) : 0;
  if (seconds > 0 && Number.isFinite(seconds)) return seconds;
  throw new InvalidArgumentError('It takes a number of seconds above 0, such as 10 or 0.5.');
}

function version(): string {
  const text = readFileSync(new URL('../../../package.json', import.meta.url), 'utf8');
  const parsed: unknown = JSON.parse(text);
  return typeof parsed === 'object' && parsed !== null && 'version' in parsed ? String(parsed.version) : 'unknown';
}
