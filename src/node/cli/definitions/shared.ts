import { Argument, Option } from 'commander';

import { positiveSeconds } from './option-values.js';
import { reportOption, shopOption } from './report-option.js';

// Arguments and options that several commands have alike.

export const boardArgument = (words = 'the board file: pedals, policy and what is owned (YAML or JSON)'): Argument =>
  new Argument('<board>', words);

export const catalogueArgument = (words = 'the catalogue file: supplies and leads to choose from'): Argument =>
  new Argument('<catalogue>', words);

/** The catalogue where a board may do without one. */
export const optionalCatalogue = (
  words = 'the catalogue file; not needed when the board describes all its gear',
): Argument => new Argument('[catalogue]', words);

export const aimOption = (): Option =>
  new Option('--aim <aim>', 'what is best: least money, fewest supplies, or least noise')
    .choices(['cost', 'bricks', 'quiet'])
    .default('cost');

export const jsonOption = (what = 'result'): Option =>
  new Option('--json', `print the ${what} as one JSON object and nothing else`).default(false);

/** For commands that read files that may be tables. */
export const skipBadRowsOption = (): Option =>
  new Option('--skip-bad-rows', 'leave out rows of tables that nobody could use, and name each').default(false);

/** `ending` is what a command does when the time is up. */
export const timeOption = (ending: string): Option =>
  new Option('--time <seconds>', `stop after so many seconds${ending}`).argParser(positiveSeconds);

/** The files that `--report` and `--proof` name may be there already. */
export const forceOption = (what = 'reports'): Option =>
  new Option('--force', `replace files of ${what} that are there`).default(false);

/** Of commands that ask something of one board and write a page of it; `ending` is null where that takes no time. */
export const questionOptions = (ending: string | null): readonly Option[] => [
  jsonOption(),
  skipBadRowsOption(),
  ...(ending === null ? [] : [timeOption(ending)]),
  reportOption('.html a page to print'),
  forceOption(),
];

/** Of commands that make a plan. */
export const planOptions = (): readonly Option[] => [
  new Option('--partial', 'allow a plan that leaves pedals without power, as few as can be').default(false),
  jsonOption(),
  skipBadRowsOption(),
  timeOption(' with the best plan found'),
  new Option('--proof <file>', 'write the proof to this file, for boardfeed verify to check'),
  new Option('--record', 'write the plan into the board file, so that the next question starts from it').default(false),
  reportOption(
    '.html a page, .sheet.html one sheet of paper, .labels.html labels, .md, .csv or .feeds.csv feeds, .buy.csv shopping, .svg, .json',
  ),
  shopOption(),
  forceOption('the proof and of reports'),
];
