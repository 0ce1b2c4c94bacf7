import { Command, type Option } from 'commander';

import type { BoardFiles } from '../commands/board-question.js';
import type { ExitCode } from '../exit-codes.js';
import type { SheetFlags } from '../written/sheet-beside.js';
import { below, exitCodeText, type ExitCodeWords } from './help-text.js';
import { refuseReports, type Reported } from './report-option.js';
import { boardArgument, optionalCatalogue } from './shared.js';

/** A command that asks something about one board, in the words of its help. */
type BoardCommand<Flags> = {
  readonly name: string;
  readonly about: string;
  /** What the board file is, and the catalogue file that a board may do without. */
  readonly board?: string;
  readonly catalogue?: string;
  /** In the order of the help. */
  readonly options: readonly Option[];
  readonly exitCodes: ExitCodeWords;
  /** Of what its reports are. */
  readonly reports: Reported;
  /** What flags do not go together; null where all do. */
  readonly fault?: (flags: Flags) => string | null;
  /** Its work, which is loaded when it runs. */
  readonly run: () => Promise<(files: BoardFiles, flags: Flags) => Promise<ExitCode>>;
};

export function boardCommand<Flags extends SheetFlags>({
  name,
  about,
  board,
  catalogue,
  options,
  exitCodes,
  reports,
  fault = () => null,
  run,
}: BoardCommand<Flags>): Command {
  const command = new Command(name)
    .description(about)
    .addArgument(boardArgument(board))
    .addArgument(optionalCatalogue(catalogue))
    .addHelpText('after', below(exitCodeText(exitCodes)));
  for (const option of options) command.addOption(option);
  return command.action(async (boardPath: string, cataloguePath: string | undefined, flags: Flags) => {
    const wrong = fault(flags);
    if (wrong !== null) command.error(`error: ${wrong}`);
    await refuseReports(command, flags, reports);
    const work = await run();
    process.exitCode = await work([boardPath, cataloguePath], flags);
  });
}
