import { readFileSync } from 'node:fs';

import { Argument, Command, Option } from 'commander';

import { escapedText } from '../../domain/shown-text.js';
import type { CheckFlags } from './commands/check-command.js';
import type { ChooseFlags } from './commands/choose-command.js';
import { compareCommand } from './definitions/compare-definition.js';
import { entryCommands } from './definitions/entry-definitions.js';
import { explainCommand } from './definitions/explain-definition.js';
import { amount, outputAsked, positiveSeconds } from './definitions/option-values.js';
import { refuseReports, reportOption } from './definitions/report-option.js';
import type { RewireFlags } from './commands/rewire-command.js';
import { spareCommand } from './definitions/spare-definition.js';
import type { VerifyFlags } from './commands/verify-command.js';

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
  command.addCommand(withManners(compareCommand()));
  command.addCommand(rewireCommand());
  command.addCommand(checkCommand());
  command.addCommand(withManners(explainCommand()));
  command.addCommand(withManners(spareCommand()));
  command.addCommand(verifyCommand());
  for (const entry of entryCommands()) command.addCommand(withManners(entry));
  return command;
}

const planReports =
  '.html a page to print, .labels.html labels, .md, .csv or .feeds.csv feeds, .buy.csv shopping, .svg, .json';

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
    .addOption(reportOption(planReports))
    .option('--force', 'replace files of the proof and of reports that are there', false)
    .addHelpText('after', exitCodeHelp)
    .configureOutput(safeOutput)
    .exitOverride()
    .showHelpAfterError('(run boardfeed choose --help for what there is)')
    .action(async (board: string, catalogue: string, flags: ChooseFlags, command: Command) => {
      if (flags.force === true && flags.proof === undefined && flags.report.length === 0)
        command.error('error: --force goes with --proof or --report only');
      await refuseReports(command, flags.report, 'answer', flags.proof === undefined ? [] : [flags.proof]);
      const { runChoose } = await import('./commands/choose-command.js');
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
    .addOption(reportOption(planReports))
    .option('--force', 'replace files of reports that are there', false)
    .addHelpText('after', exitCodeHelp)
    .configureOutput(safeOutput)
    .exitOverride()
    .showHelpAfterError('(run boardfeed rewire --help for what there is)')
    .action(async (board: string, catalogue: string | undefined, flags: RewireFlags, command: Command) => {
      if (flags.force === true && flags.report.length === 0) command.error('error: --force goes with --report only');
      await refuseReports(command, flags.report, 'answer', []);
      const { runRewire } = await import('./commands/rewire-command.js');
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
      const { runCheck } = await import('./commands/check-command.js');
      process.exitCode = await runCheck(board, catalogue, flags);
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
      const { runVerify } = await import('./commands/verify-command.js');
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

function ownVersion(): string {
  const text = readFileSync(new URL('../../../../package.json', import.meta.url), 'utf8');
  const parsed: unknown = JSON.parse(text);
  return typeof parsed === 'object' && parsed !== null && 'version' in parsed ? String(parsed.version) : 'unknown';
}
