import type { ReportKinds } from './formats.js';
import { onlyPage } from './only-page.js';
import { checkPage, type CheckInput } from './page/check-page.js';

/** The reports of a check: a page. */
export const checkReports: ReportKinds<CheckInput> = onlyPage(checkPage);
