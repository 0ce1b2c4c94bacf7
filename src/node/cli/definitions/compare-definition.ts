import { Argument, Command, Option } from 'commander';

import type { CompareFlags } from '../commands/compare-command.js';
import type { FolderFlags } from '../folder/compare-folder.js';
import { purchase, wholeUpTo } from './option-values.js';
import { refuseForce, refuseReports, reportOption, shopOption } from './report-option.js';
import { below, exitCodeText } from './help-text.js';
import { aimOption, forceOption, jsonOption, timeOption, skipBadRowsOption } from './shared.js';

/** The command line of `compare`, without its work, which is loaded when it runs. */
export function compareCommand(): Command {
  return new Command('compare')
    .description('How do these purchases compare, and what does money buy?')
    .usage('[options] <board> <catalogue>\n       boardfeed compare [options] --boards <folder> <catalogue>')
    .addArgument(new Argument('<files...>', 'the board file, unless there is a folder of them, and the catalogue file'))
    .addOption(aimOption())
    .addOption(
      new Option('--best <n>', 'the best purchases, so many, not choices that differ in kind').argParser(wholeUpTo(50)),
    )
    .addOption(
      new Option('--option <supplies>', 'and this purchase, such as "quay-6, 2 x dory"; again for each')
        .argParser(purchase)
        .default([], 'none'),
    )
    .addOption(jsonOption())
    .addOption(skipBadRowsOption())
    .addOption(timeOption(', for each board, with what is known'))
    .addOption(reportOption('.html a page to print, .sheet.html one sheet of paper, .md, .csv, .json'))
    .addOption(shopOption())
    .addOption(forceOption())
    .option('--boards <folder>', 'compare for every board file in this folder: one JSON line each')
    .option('--out <file>', 'add the lines to this file; boards that are in it already are passed over')
    .addOption(
      new Option('--jobs <n>', 'work on so many boards of the folder at once (default: one a core)').argParser(
        wholeUpTo(256),
      ),
    )
    .addHelpText('after', below(compareExitCodes))
    .action(async (files: readonly string[], flags: CompareFlags & Partial<FolderFlags>, command: Command) => {
      const { boards, out, jobs, ...rest } = flags;
      const [first, second] = files;
      refuseForce(command, flags, 'comparison');
      if (boards !== undefined && flags.report.length > 0)
        command.error('error: --report goes with one board, not with --boards');
      if (boards === undefined) {
        if (out !== undefined || jobs !== undefined) command.error('error: --out and --jobs go with --boards only');
        if (first === undefined || second === undefined || files.length > 2)
          return command.error('error: it takes a board file and a catalogue file');
        await refuseReports(command, rest, 'comparison');
        const { runCompare } = await import('../commands/compare-command.js');
        process.exitCode = await runCompare(first, second, rest);
        return;
      }
      if (first === undefined || files.length > 1)
        return command.error('error: with --boards it takes the catalogue file and no other');
      const { runCompareFolder } = await import('../folder/compare-folder.js');
      process.exitCode = await runCompareFolder(first, {
        ...rest,
        boards,
        ...(out === undefined ? {} : { out }),
        ...(jobs === undefined ? {} : { jobs }),
      });
    });
}

const compareExitCodes = exitCodeText(
  {
    0: 'an option gives a plan',
    3: 'a file cannot be read or is wrong, or an option names something unknown',
    4: 'no option gives a plan',
    5: 'stopped before everything was proven (what is known is printed)',
  },
  'Exit codes (of a folder: what is gravest among its boards):',
);
