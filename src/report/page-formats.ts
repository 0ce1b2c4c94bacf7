import type { ReportKinds } from './formats.js';
import { checkPage, type CheckInput } from './page/check-page.js';
import { labelsPage, type LabelsInput } from './page/labels-page.js';
import { sparePage, type SpareInput } from './page/spare-page.js';

/** The reports of what has a page and nothing else: a name that means a sheet or labels is none. */
const onlyPage = <Input>(page: (input: Input) => string): ReportKinds<Input> => ({
  endings: ['.html'],
  makerFor: (path) => (/(?<!\.(?:sheet|labels))\.html$/i.test(path) ? page : null),
});

export const checkReports: ReportKinds<CheckInput> = onlyPage(checkPage);
export const labelsReports: ReportKinds<LabelsInput> = onlyPage(labelsPage);
export const spareReports: ReportKinds<SpareInput> = onlyPage(sparePage);
