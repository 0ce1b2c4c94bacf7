import { Argument, Command, InvalidArgumentError, Option } from 'commander';

import type { ConvertFlags } from './convert-command.js';
import type { SchemaKind } from '../files/json-schemas.js';

/** The commands that help to get figures in, without their work, which is loaded when they run. */
export const entryCommands = (): readonly Command[] => [convertCommand(), schemaCommand()];

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
    .addHelpText('after', convertHelp)
    .action(async (table: string, flags: ConvertFlags) => {
      const { runConvert } = await import('./convert-command.js');
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

const convertHelp = `
Columns of pedals:   id, name, power, polarity, inlet, ground, volts, prefers, maxVolts, milliamps, startup, figure,
                     digital, highGain, alone
Columns of supplies: id, name, price, stock, mains, regulated, totalMilliamps, totalWatts, outputs, isolated, power,
                     plug, polarity, switch, volts, milliamps, openCircuitVolts, joins, bankMilliamps, bankWatts
Lists stand between slashes (9/12/18), ranges between hyphens (100-240).

Exit codes:
  0  converted                   2  wrong use of the command
  1  a defect of boardfeed       3  the table cannot be read or is wrong`;

function schemaCommand(): Command {
  return new Command('schema')
    .description('What may stand in a file? Prints its JSON Schema, from which editors complete and check.')
    .addArgument(new Argument('<kind>', 'the kind of file').choices(['board', 'catalogue', 'plan']))
    .addHelpText('after', schemaHelp)
    .action(async (kind: SchemaKind) => {
      const { runSchema } = await import('./schema-command.js');
      process.exitCode = runSchema(kind);
    });
}

const schemaHelp = `
Editors with a YAML language server use it when the file begins with this line:
  # yaml-language-server: $schema=board.schema.json
and the schema lies beside it:
  boardfeed schema board > board.schema.json`;
