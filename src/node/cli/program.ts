import { readFileSync } from 'node:fs';

import { Command } from 'commander';

import { escapedText } from '../../domain/shown-text.js';
import {
  askCommand,
  checkCommand,
  chooseCommand,
  rewireCommand,
  spareCommand,
} from './definitions/board-definitions.js';
import { compareCommand } from './definitions/compare-definition.js';
import { entryCommands } from './definitions/entry-definitions.js';
import { explainCommand } from './definitions/explain-definition.js';
import { helpLayout } from './definitions/help-text.js';
import { verifyCommand } from './definitions/verify-definition.js';

/** The command line, without its work: what a command needs is loaded when it runs, so that help is instant. */
export function program(version: string = ownVersion()): Command {
  const command = new Command('boardfeed')
    .description('Works out how to power guitar-effect pedals: safely, quietly and at the least cost, with a proof.')
    .version(version, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .helpCommand('help [command]', 'print the help of a command')
    .showHelpAfterError('(run boardfeed --help for what there is)')
    .configureOutput(safeOutput)
    .configureHelp(helpLayout)
    .exitOverride();
  for (const one of commands()) command.addCommand(withManners(one));
  return command;
}

/** In the order of the help. */
const commands = (): readonly Command[] => [
  chooseCommand(),
  compareCommand(),
  rewireCommand(),
  checkCommand(),
  explainCommand(),
  spareCommand(),
  askCommand(),
  verifyCommand(),
  ...entryCommands(),
];

/** What every command does alike when it is used wrongly. */
const withManners = (command: Command): Command =>
  command
    .configureOutput(safeOutput)
    .configureHelp({ ...command.configureHelp(), ...helpLayout })
    .exitOverride()
    .showHelpAfterError(`(run boardfeed ${command.name()} --help for what there is)`);

/** A message of wrong use repeats what was typed, which a script may have taken from anywhere. */
const safeOutput = {
  outputError: (text: string, write: (text: string) => void): void => {
    write(text.split('\n').map(escapedText).join('\n'));
  },
};

function ownVersion(): string {
  const text = readFileSync(new URL(import.meta.resolve('#package')), 'utf8');
  const parsed: unknown = JSON.parse(text);
  return typeof parsed === 'object' && parsed !== null && 'version' in parsed ? String(parsed.version) : 'unknown';
}
