import { Argument, Command } from 'commander';

import type { PageFlags } from '../commands/page-command.js';
import { below, exitCodeText } from './help-text.js';
import { forceOption } from './shared.js';

/** The command line of `page`, without its work, which is loaded when it runs. */
export function pageCommand(): Command {
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
