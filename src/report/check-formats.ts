import type { ReportKinds } from './formats.js';
import { checkPage, type CheckInput } from './page/check-page.js';

/** The reports of a check: a page. */
export const checkReports: ReportKinds<CheckInput> = {
  endings: ['.html'],
  makerFor: (path) => (/(?<!\.(?:sheet|labels))\.html$/i.test(path) ? checkPage : null),
};
