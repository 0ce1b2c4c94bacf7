import { comparisonCsv } from './tables/comparison-csv.js';
import { comparisonHandout, type ComparisonInput } from './words/comparison-handout.js';
import { comparisonJson } from './json/comparison-codec.js';
import { comparisonMarkdown } from './page/markdown.js';
import { reportEndings, type ReportKinds } from './formats.js';
import { comparisonPage } from './page/comparison.js';
import { shortNamed } from './sheet/short-names.js';
import { comparisonSheet } from './sheet/comparison-sheet.js';

const makers: ReadonlyMap<string, (input: ComparisonInput) => string> = new Map([
  ['.html', (input) => comparisonPage(comparisonHandout(input))],
  ['.sheet.html', sheetOf],
  ['.md', (input) => comparisonMarkdown(comparisonHandout(input))],
  ['.csv', (input) => comparisonCsv(comparisonHandout(input))],
  ['.json', ({ kit, comparison }) => comparisonJson(kit, comparison)],
]);

function sheetOf({ occasion = { shop: null, date: null }, ...input }: ComparisonInput): string {
  return comparisonSheet(comparisonHandout({ ...input, kit: shortNamed(input.kit) }), occasion);
}

/** The reports of a comparison. A name that means a report of a plan alone, such as that of labels, has none. */
export const comparisonReports: ReportKinds<ComparisonInput> = {
  endings: [...makers.keys()],
  makerFor: (path) => {
    const found = reportEndings.find(({ ending }) => path.toLowerCase().endsWith(ending));
    return (found && makers.get(found.ending)) ?? null;
  },
};
