import { readFileSync } from 'node:fs';

import { Argument, Command, InvalidArgumentError, Option } from 'commander';

import { escapedText } from '../domain/shown-text.js';
import type { CheckFlags } from './check-command.js';
import type { ChooseFlags } from './choose-command.js';
import type { CompareFlags } from './compare-command.js';
import type { FolderFlags } from './compare-folder.js';
import { readPurchase, type AskedSupply } from '../planning/read-purchase.js';
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
  command.addCommand(compareCommand());
  command.addCommand(checkCommand());
  command.addCommand(verifyCommand());
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

function compareCommand(): Command {
  return new Command('compare')
    .description('How do these purchases compare, and what does money buy?')
    .usage('[options] <board> <catalogue>\n       boardfeed compare [options] --boards <folder> <catalogue>')
    .addArgument(new Argument('<files...>', 'the board file, unless there is a folder of them, and the catalogue file'))
    .addOption(
      new Option('--aim <aim>', 'what is best: least money, fewest supplies, or least noise')
        .choices(['cost', 'bricks', 'quiet'])
        .default('cost'),
    )
    .addOption(new Option('--best <n>', 'so many of the best purchases').argParser(wholeUpTo(50)).default(3))
    .addOption(
      new Option('--option <supplies>', 'and this purchase, such as "quay-6, 2 x dory"; again for each')
        .argParser(purchase)
        .default([], 'none'),
    )
    .option('--json', 'print the result as one JSON object and nothing else', false)
    .addOption(
      new Option('--time <seconds>', 'stop after so many seconds, for each board, with what is known').argParser(
        positiveSeconds,
      ),
    )
    .option('--boards <folder>', 'compare for every board file in this folder: one JSON line each')
    .option('--out <file>', 'add the lines to this file; boards that are in it already are passed over')
    .addOption(
      new Option('--jobs <n>', 'work on so many boards of the folder at once (default: one a core)').argParser(
        wholeUpTo(256),
      ),
    )
    .addHelpText('after', compareExitCodeHelp)
    .configureOutput(safeOutput)
    .exitOverride()
    .showHelpAfterError('(run boardfeed compare --help for what there is)')
    .action(async (files: readonly string[], flags: CompareFlags & Partial<FolderFlags>, command: Command) => {
      const { boards, out, jobs, ...rest } = flags;
      const [first, second] = files;
      if (boards === undefined) {
        if (out !== undefined || jobs !== undefined) command.error('error: --out and --jobs go with --boards only');
        if (first === undefined || second === undefined || files.length > 2)
          return command.error('error: it takes a board file and a catalogue file');
        const { runCompare } = await import('./compare-command.js');
        process.exitCode = await runCompare(first, second, rest);
        return;
      }
      if (first === undefined || files.length > 1)
        return command.error('error: with --boards it takes the catalogue file and no other');
      const { runCompareFolder } = await import('./compare-folder.js');
      process.exitCode = await runCompareFolder(first, {
        ...rest,
        boards,
        ...(out === undefined ? {} : { out }),
        ...(jobs === undefined ? {} : { jobs }),
      });
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

const compareExitCodeHelp = `
Exit codes (of a folder: what is gravest among its boards):
  0  an option gives a plan      3  a file cannot be read or is wrong, or an option names something unknown
  1  a defect of boardfeed       4  no option gives a plan
  2  wrong use of the command    5  stopped before everything was proven (what is known is printed)`;

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

const wholeUpTo =
  (most: number) =>
  (text: string): number => {
    const value = /^\d{1,6}$/.test(text) ? Number(text) : 0;
    if (value >= 1 && value <= most) return value;
    throw new InvalidArgumentError(`It takes a whole number from 1 to ${most}.`);
  };

/** One more purchase beside those given before. */
function purchase(text: string, before: readonly (readonly AskedSupply[])[]): CompareFlags['option'] {
  const read = readPurchase(text);
  if (read.kind === 'unreadable') throw new InvalidArgumentError(read.message);
  return [...before, read.supplies];
}

/** "quay-6:5", or "quay-6/2:5" for the second unit. */
function outputAsked(text: string): CheckFlags['output'] {
  const [, supply, unit = '1', output] = /^([^/:]+)(?:\/([1-9]\d{0,4}))?:([1-9]\d{0,4})$/.exec(text) ?? [];
  if (supply !== undefined && output !== undefined) return { supply, unit: Number(unit), output: Number(output) };
  throw new InvalidArgumentError(
    "It takes a supply's id and the number of an output, such as quay-6:5, or quay-6/2:5 for the second unit.",
  );
}

function version(): string {
  const text = readFileSync(new URL('../../../package.json', import.meta.url), 'utf8');
  const parsed: unknown = JSON.parse(text);
  return typeof parsed === 'object' && parsed !== null && 'version' in parsed ? String(parsed.version) : 'unknown';
}
