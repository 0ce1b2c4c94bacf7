import { readFileSync } from 'node:fs';

import { Argument, Command, InvalidArgumentError, Option } from 'commander';

import { escapedText } from '../domain/shown-text.js';
import type { CheckFlags } from './check-command.js';
import type { ChooseFlags } from './choose-command.js';
import type { ExplainFlags } from './explain-command.js';
import type { RewireFlags } from './rewire-command.js';
import type { SpareFlags } from './spare-command.js';
import { entryCommands } from './entry-commands.js';
import type { VerifyFlags } from './verify-command.js';

/** The command line, without its work: what a command needs is loaded when it runs, so that help is instant. */
export function program(version: string = ownVersion()): Command {
  const command = new Command('boardfeed')
    .description('Works out how to power guitar-effect pedals: safely, quietly and at the least cost, with a proof.')
    .version(version, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .helpCommand('help [command]', 'print the help of a command')
    .showHelpAfterError('(run boardfeed --help for what there is)')
    .configureOutput(safeOutput)
    .exitOverride();
  command.addCommand(chooseCommand());
  command.addCommand(rewireCommand());
  command.addCommand(checkCommand());
  command.addCommand(explainCommand());
  command.addCommand(spareCommand());
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

function rewireCommand(): Command {
  return new Command('rewire')
    .description('How do I re-plug what I own with the fewest changes, and in which order?')
    .addArgument(new Argument('<board>', 'the board file, with how it is plugged today under `wiring`'))
    .addArgument(new Argument('[catalogue]', 'the catalogue file; not needed when the board describes all its gear'))
    .option('--keep <pedal...>', 'ids of pedals that must stay where they are plugged', [])
    .addOption(
      new Option('--buy <when>', 'whether anything may be bought, where nothing else works')
        .choices(['never', 'allow'])
        .default('allow'),
    )
    .addOption(
      new Option('--budget <amount>', "the most that may be spent, in place of the board's budget").argParser(amount),
    )
    .option('--partial', 'allow a plan that leaves pedals without power, as few as can be', false)
    .option('--json', 'print the result as one JSON object and nothing else', false)
    .addOption(
      new Option('--time <seconds>', 'stop after so many seconds with the best plan found').argParser(positiveSeconds),
    )
    .addHelpText('after', exitCodeHelp)
    .configureOutput(safeOutput)
    .exitOverride()
    .showHelpAfterError('(run boardfeed rewire --help for what there is)')
    .action(async (board: string, catalogue: string | undefined, flags: RewireFlags) => {
      const { runRewire } = await import('./rewire-command.js');
      process.exitCode = await runRewire(board, catalogue, flags);
    });
}

function checkCommand(): Command {
  return new Command('check')
    .description('Is this wiring safe? Or: can this pedal go on that output?')
    .addArgument(new Argument('<board>', 'the board file, with how it is plugged under `wiring`'))
    .addArgument(new Argument('[catalogue]', 'the catalogue file; not needed when the board describes all its gear'))
    .option('--pedal <id>', 'ask about one pedal of the board; goes with --output')
    .addOption(
      new Option('--output <supply:n>', 'and about this output: quay-6:5, or quay-6/2:5 of a second unit').argParser(
        outputAsked,
      ),
    )
    .option('--json', 'print the result as one JSON object and nothing else', false)
    .addHelpText('after', checkExitCodeHelp)
    .configureOutput(safeOutput)
    .exitOverride()
    .showHelpAfterError('(run boardfeed check --help for what there is)')
    .action(async (board: string, catalogue: string | undefined, flags: CheckFlags, command: Command) => {
      if ((flags.pedal === undefined) !== (flags.output === undefined))
        command.error('error: --pedal and --output go together');
      const { runCheck } = await import('./check-command.js');
      process.exitCode = await runCheck(board, catalogue, flags);
    });
}

function explainCommand(): Command {
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
    .configureOutput(safeOutput)
    .exitOverride()
    .showHelpAfterError('(run boardfeed explain --help for what there is)')
    .action(async (board: string, catalogue: string, pedal: string | undefined, flags: ExplainFlags) => {
      const { runExplain } = await import('./explain-command.js');
      process.exitCode = await runExplain({ board, catalogue, pedal: pedal ?? null }, flags);
    });
}

function spareCommand(): Command {
  return new Command('spare')
    .description('What else fits? What each output has left, and what more can be fed with nothing bought.')
    .addArgument(new Argument('<board>', 'the board file; as plugged under `wiring`, else by the best plan'))
    .addArgument(new Argument('[catalogue]', 'the catalogue file; not needed when the board describes all its gear'))
    .option('--add <words>', 'ask about one more pedal, such as "9 V, 300 mA, digital"')
    .option('--json', 'print the result as one JSON object and nothing else', false)
    .addOption(
      new Option('--time <seconds>', 'stop after so many seconds with what is known by then').argParser(
        positiveSeconds,
      ),
    )
    .addHelpText('after', spareExitCodeHelp)
    .configureOutput(safeOutput)
    .exitOverride()
    .showHelpAfterError('(run boardfeed spare --help for what there is)')
    .action(async (board: string, catalogue: string | undefined, flags: SpareFlags) => {
      const { runSpare } = await import('./spare-command.js');
      process.exitCode = await runSpare(board, catalogue, flags);
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

const explainExitCodeHelp = `
Exit codes:
  0  a plan, and why             3  a file cannot be read or is wrong, or the board has no such pedal
  1  a defect of boardfeed       4  no plan exists, and why
  2  wrong use of the command    5  stopped before everything was settled`;

const spareExitCodeHelp = `
What --add leaves out counts as DC, centre-negative, inlet barrel-2.1 and negative ground, and is listed to be confirmed.

Exit codes:
  0  what there is to spare; yes, it fits    3  a file cannot be read or is wrong, or --add is not understood
  1  a defect of boardfeed                   4  the wiring is not safe, or no plan; no, it does not fit
  2  wrong use of the command                5  stopped before everything was settled`;

const checkExitCodeHelp = `
Exit codes:
  0  safe; or yes, it can be     3  a file cannot be read or is wrong, or names something unknown
  1  a defect of boardfeed       4  not safe: a hard rule is broken; or no, it cannot be
  2  wrong use of the command`;

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

function amount(text: string): number {
  const value = /^(\d+\.?\d*|\.\d+)$/.test(text) ? Number(text) : NaN;
  if (Number.isFinite(value)) return value;
  throw new InvalidArgumentError('It takes an amount of money, such as 120 or 99.50.');
}

/** "quay-6:5", or "quay-6/2:5" for the second unit. */
function outputAsked(text: string): CheckFlags['output'] {
  const [, supply, unit = '1', output] = /^([^/:]+)(?:\/([1-9]\d{0,4}))?:([1-9]\d{0,4})$/.exec(text) ?? [];
  if (supply !== undefined && output !== undefined) return { supply, unit: Number(unit), output: Number(output) };
  throw new InvalidArgumentError(
    "It takes a supply's id and the number of an output, such as quay-6:5, or quay-6/2:5 for the second unit.",
  );
}

function ownVersion(): string {
  const text = readFileSync(new URL('../../../package.json', import.meta.url), 'utf8');
  const parsed: unknown = JSON.parse(text);
  return typeof parsed === 'object' && parsed !== null && 'version' in parsed ? String(parsed.version) : 'unknown';
}
