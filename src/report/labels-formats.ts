import type { ReportKinds } from './formats.js';
import { labelsPage, type LabelsInput } from './page/labels-page.js';

/** The reports of which labels decide: a page. */
export const labelsReports: ReportKinds<LabelsInput> = {
  endings: ['.html'],
  makerFor: (path) => (/(?<!\.(?:sheet|labels))\.html$/i.test(path) ? labelsPage : null),
};
