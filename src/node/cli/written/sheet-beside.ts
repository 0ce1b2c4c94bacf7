import type { Kit } from '../../../domain/kit.js';
import type { Answer } from '../../../planning/answer.js';
import type { Wanted } from '../../../planning/wanted/wanted.js';
import { isSheet } from '../../../report/formats.js';
import type { Occasion, ReportInput } from '../../../report/words/handout.js';
import { labelsOf } from '../../threads/planning.js';
import { searchAloud } from '../progress/aloud.js';
import type { ReportFlags } from './report-files.js';

export type SheetFlags = ReportFlags & {
  /** The shop's own name for a sheet. */
  readonly shop?: string;
};

/** What stands at the head of a sheet that is written now. */
export const occasionNow = (shop: string | undefined): Occasion => ({
  shop: shop ?? null,
  date: new Date().toLocaleDateString('en-GB', { dateStyle: 'long' }),
});

/** So long may the question take which labels decide, in milliseconds; what is open by then is told so. */
const mostForLabels = 5000;

/** What reports of an answer are made from, with what a sheet says beside it where one is wanted. */
export const answerInput =
  ({ report, shop }: SheetFlags, remainingMs: () => number) =>
  async (kit: Kit, answer: Answer | Wanted): Promise<ReportInput> => {
    if (!report.some(isSheet)) return { kit, answer };
    const occasion = occasionNow(shop);
    if (answer.kind !== 'plan' || answer.wiring.unpowered.length > 0) return { kit, answer, occasion };
    const end = performance.now() + mostForLabels;
    const leftMs = (): number => Math.min(remainingMs(), end - performance.now());
    const labels = await searchAloud(kit.board, (aloud) =>
      labelsOf(kit, answer.wiring, { ...aloud, remainingMs: leftMs }),
    );
    return { kit, answer, occasion, labels };
  };
