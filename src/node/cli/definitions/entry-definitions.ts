import { Argument, Command, InvalidArgumentError, Option } from 'commander';

import type { CompletionFlags } from '../completion/completion-command.js';
import type { Shell } from '../completion/scripts.js';
import type { ConvertFlags } from '../commands/convert-command.js';
import type { PageFlags } from '../commands/page-command.js';
import { bankColumns, columnsOf, partColumns, supplyColumns } from '../../../reading/csv/columns.js';
import type { SchemaKind } from '../../../report/json/schemas.js';
import type { StartFlags } from '../start/start-command.js';
import { below, exitCodeText } from './help-text.js';
import { forceOption, skipBadRowsOption } from './shared.js';

/** The commands that help to get figures in, on a terminal or a page, without their work, which is loaded when they run. */
export const entryCommands = (): readonly Command[] => [
  startCommand(),
  pageCommand(),
  convertCommand(),
  schemaCommand(),
  completionCommand(),
];

function startCommand(): Command {
  return new Command('start')
    .description('How do I begin? Asks for pedals, or for supplies and leads, and writes the file.')
    .addArgument(new Argument('[file]', 'the file to write, or to add to; else board.yaml, with --catalogue shop.yaml'))
    .option('--catalogue', 'ask for supplies and leads instead of pedals', false)
    .addHelpText('after', below(startHelp))
    .action(async (file: string | undefined, flags: StartFlags) => {
      const { runStart } = await import('../start/start-command.js');
      process.exitCode = await runStart(file, flags);
    });
}

const startHelp = `
A pedal is one line: moth delay 9v 300 neg.
Run it again on a file to tell what was not known.
Where no file is named and the output goes to a
pipe or a file, it is printed there.
Without a terminal it is one to fill in.
${exitCodeText({
  0: 'written',
  3: 'the file cannot be read, written or added to',
  5: 'broken off (what was finished is written)',
})}`;

function pageCommand(): Command {
  return new Command('page')
    .description(
      'How do I do all this without commands? Writes one page for a browser, to be opened by a double click.',
    )
    .addArgument(new Argument('[board]', 'the board to begin with; without one the example'))
    .addArgument(new Argument('[catalogue]', 'the shop to begin with'))
    .option('--out <file>', 'the page to write', 'boardfeed.html')
    .addOption(forceOption('the page'))
    .addHelpText('after', below(pageHelp))
    .action(async (board: string | undefined, catalogue: string | undefined, flags: PageFlags) => {
      const { runPage } = await import('../commands/page-command.js');
      process.exitCode = await runPage(board ?? null, catalogue ?? null, flags);
    });
}

const pageHelp = `
The page needs no network, asks for nothing, and keeps what is made on it in the browser.
Rows of tables that nobody could use are left out, and named on the page.
${exitCodeText({ 0: 'written', 3: 'a file cannot be read or is wrong, or the page cannot be written' })}`;

function convertCommand(): Command {
  return new Command('convert')
    .description('How does my spreadsheet become a board or a catalogue? Prints a CSV table as YAML.')
    .addArgument(new Argument('<table>', 'the table (CSV): one row a pedal, or one row a bank of a supply'))
    .option('--currency <code>', 'the currency of all money in the file, such as EUR')
    .option('--name <name>', 'what the board or catalogue is called; else it has the name of the file')
    .addOption(
      new Option(
        '--assume <figures>',
        'what to take for rows that leave it out, such as power=DC,polarity=centre-negative',
      ).argParser(assumptions),
    )
    .addOption(skipBadRowsOption())
    .addHelpText('after', below(convertHelp))
    .action(async (table: string, flags: ConvertFlags) => {
      const { runConvert } = await import('../commands/convert-command.js');
      process.exitCode = await runConvert(table, flags);
    });
}

/** Whether the keys and values are known is found out with the rest of the file. */
function assumptions(text: string): Readonly<Record<string, string | boolean>> {
  const pairs = text.split(',').map((pair) => /^\s*([\p{L}-]+)\s*=\s*(\S(?:.*\S)?)\s*$/u.exec(pair));
  const entries = pairs.map((pair) => [pair?.[1] ?? '', pair?.[2] ?? ''] as const);
  if (entries.some(([key]) => key === ''))
    throw new InvalidArgumentError('It takes pairs such as power=DC,ground=negative.');
  return Object.fromEntries(
    entries.map(([key, value]) => [key, value === 'true' || value === 'false' ? value === 'true' : value]),
  );
}

const columnText = (columns: readonly string[]): string => columns.join(', ');

const convertHelp = `
Columns of pedals:   ${columnText(Object.keys(columnsOf.pedals))}
Columns of supplies:
  ${columnText([...supplyColumns, ...bankColumns])}
Columns of leads:
  ${columnText(partColumns)}
Lists stand between slashes (9/12/18 V), ranges between hyphens (100-240). Usual headings of a shop are understood.
${exitCodeText({ 0: 'converted', 3: 'the table cannot be read or is wrong' })}`;

/** Named here as well, so that help need not load what makes the schemas; the compiler sees to it that none is missing. */
const schemaChoices = Object.keys({
  board: true,
  catalogue: true,
  plan: true,
  check: true,
  'check-output': true,
  comparison: true,
  explain: true,
  spare: true,
  'spare-add': true,
  ask: true,
  verdict: true,
  wanted: true,
} satisfies Record<SchemaKind, true>);

function schemaCommand(): Command {
  return new Command('schema')
    .description('What may stand in a file? Prints its JSON Schema, from which editors complete and check.')
    .addArgument(new Argument('<kind>', 'the kind of file').choices(schemaChoices))
    .addHelpText('after', below(schemaHelp))
    .action(async (kind: SchemaKind) => {
      const { runSchema } = await import('../commands/schema-command.js');
      process.exitCode = runSchema(kind);
    });
}

function completionCommand(): Command {
  return (
    new Command('completion')
      .description(
        'How do I get the Tab key to help? Prints a script for a shell that completes commands, options and ids.',
      )
      .usage('[options] <shell>')
      // The rest of the arguments is for the scripts.
      .configureHelp({ visibleArguments: (command) => command.registeredArguments.slice(0, 1) })
      .addArgument(new Argument('<shell>', 'the shell').choices(['bash', 'zsh', 'fish']))
      .addArgument(new Argument('[words...]'))
      .addOption(new Option('--line <line>').hideHelp())
      .addOption(new Option('--point <offset>').argParser(Number).hideHelp())
      .addOption(new Option('--at <index>').argParser(Number).hideHelp())
      .addHelpText('after', below(completionHelp))
      .action(async (shell: Shell, words: readonly string[], flags: CompletionFlags, command: Command) => {
        const { runCompletion } = await import('../completion/completion-command.js');
        process.exitCode = await runCompletion(command.parent ?? command, shell, words, flags);
      })
  );
}

const completionHelp = `
bash, in ~/.bashrc:
  eval "$(boardfeed completion bash)"
zsh, in ~/.zshrc below compinit:
  eval "$(boardfeed completion zsh)"
fish, in ~/.config/fish/config.fish:
  boardfeed completion fish | source`;

const schemaHelp = `
Editors with a YAML language server use it when the file begins with this line:
  # yaml-language-server: $schema=board.schema.json
and the schema lies beside it:
  boardfeed schema board > board.schema.json`;
