import type { ReportKinds } from './formats.js';
import { onlyPage } from './only-page.js';
import { labelsPage, type LabelsInput } from './page/labels-page.js';

/** The reports of which labels decide: a page. */
export const labelsReports: ReportKinds<LabelsInput> = onlyPage(labelsPage);
