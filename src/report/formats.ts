import { buyCsv } from './tables/buy-csv.js';
import { svgFile } from './drawing/svg-file.js';
import { feedsCsv } from './tables/feeds-csv.js';
import { handoutOf, type Handout, type Occasion, type ReportInput } from './words/handout.js';
import { answerJson } from './json/plan-codec.js';
import { wantedJson } from './json/wanted-codec.js';
import { labelSheet } from './labels/sheet.js';
import { markdownText } from './page/markdown.js';
import { pageText } from './page/page.js';
import { shortNamed } from './sheet/short-names.js';
import { sheetText } from './sheet/sheet.js';

/** What can be made of an answer to take home. */
export type ReportFormat = 'page' | 'sheet' | 'labels' | 'markdown' | 'feeds' | 'shopping list' | 'drawing' | 'json';

/** By how a file's name ends, in capitals or not; the first that fits decides. */
export const reportEndings: readonly { readonly ending: string; readonly format: ReportFormat }[] = [
  { ending: '.labels.html', format: 'labels' },
  { ending: '.sheet.html', format: 'sheet' },
  { ending: '.html', format: 'page' },
  { ending: '.md', format: 'markdown' },
  { ending: '.buy.csv', format: 'shopping list' },
  { ending: '.feeds.csv', format: 'feeds' },
  { ending: '.csv', format: 'feeds' },
  { ending: '.svg', format: 'drawing' },
  { ending: '.json', format: 'json' },
];

/** The format that a file of this name has; null when its ending is none of those above. */
export const reportFormatOf = (path: string): ReportFormat | null =>
  reportEndings.find(({ ending }) => path.toLowerCase().endsWith(ending))?.format ?? null;

/** Whether a file of this name is one sheet of paper, of whatever it is made. */
export const isSheet = (path: string): boolean => reportFormatOf(path) === 'sheet';

const makers: Readonly<Record<Exclude<ReportFormat, 'json'>, (handout: Handout, occasion: Occasion) => string>> = {
  page: pageText,
  sheet: sheetText,
  labels: labelSheet,
  markdown: markdownText,
  feeds: feedsCsv,
  'shopping list': buyCsv,
  drawing: svgFile,
};

/** The answer as the text of a file in this format. The same input always makes the same text. */
export function reportText(format: ReportFormat, input: ReportInput): string {
  const { kit, answer, occasion = { shop: null, date: null } } = input;
  if (format === 'json') return answer.kind === 'wanted' ? wantedJson(answer) : answerJson(kit, answer);
  const named = format === 'sheet' ? { ...input, kit: shortNamed(kit) } : input;
  return makers[format](handoutOf(named), occasion);
}

/** The reports that there are of one kind of result. */
export type ReportKinds<Input> = {
  /** How the name of a file may end. */
  readonly endings: readonly string[];
  /** What makes the text for a file of this name; null when no report has such a name. */
  readonly makerFor: (path: string) => ((input: Input) => string) | null;
};

/** Those of an answer. */
export const answerReports: ReportKinds<ReportInput> = {
  endings: reportEndings.map(({ ending }) => ending),
  makerFor: (path) => {
    const format = reportFormatOf(path);
    return format === null ? null : (input) => reportText(format, input);
  },
};
