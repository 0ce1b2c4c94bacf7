import type { ReportKinds } from './formats.js';
import { onlyPage } from './only-page.js';
import { sparePage, type SpareInput } from './page/spare-page.js';

/** The reports of what there is to spare: a page. */
export const spareReports: ReportKinds<SpareInput> = onlyPage(sparePage);
