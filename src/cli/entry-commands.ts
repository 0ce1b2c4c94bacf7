import { Argument, Command } from 'commander';

import type { SchemaKind } from '../files/json-schemas.js';

/** The commands that help to get figures in, without their work, which is loaded when they run. */
export const entryCommands = (): readonly Command[] => [schemaCommand()];

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
