import { groupBy } from '../../domain/group-by.js';
import type { HookupStep } from '../../report/words/steps.js';
import type { Approach, PageDocument } from './page-document.js';
import { withLineEntered } from './type-pedal.js';

type Change = (document: PageDocument) => PageDocument;

/** Why a board's text cannot say how it is plugged. */
export const noRoom =
  'How it is plugged now could not be written into the board. Save the board, and write its wiring there by hand.';

/** From what the board is planned from now on; what is pinned goes with the plan in which it was. */
export const planning =
  (approach: Approach): Change =>
  (document) => ({ ...document, approach, pins: [], chosen: null });

/** The board is plugged now as the text says, with the pedal that stood on the line. */
export const pluggedAs =
  (text: string): Change =>
  (document) => ({
    ...withLineEntered(document),
    board: { ...document.board, text },
    pins: [],
    approach: null,
    progress: null,
    chosen: null,
  });

/** A step as far as it is done. */
export type StepStanding = {
  readonly step: HookupStep;
  /** Whether each of its boxes is ticked; at least one. */
  readonly boxes: readonly boolean[];
  readonly isDone: boolean;
};

/** How far the steps of a plan are done; nothing that was ticked in the steps of another one counts. */
export function standingOf(steps: readonly HookupStep[], { progress }: PageDocument): readonly StepStanding[] {
  const ticked = progress?.steps === JSON.stringify(steps) ? new Set(progress.ticked) : new Set();
  return steps.map((step, at) => {
    const boxes = Array.from({ length: boxCount(step) }, (_, box) => ticked.has(`${at} ${box}`));
    return { step, boxes, isDone: boxes.every(Boolean) };
  });
}

/** The plugs to measure, each with what it must show, by one reading of its pedal's label or the other where nobody has read it. */
export const plugsOf = ({ checks }: HookupStep) => groupBy(checks ?? [], ({ mark }) => mark);

/** One a thing to do and a plug to measure; one for a step that is a single thing. */
const boxCount = (step: HookupStep): number => Math.max(1, step.items.length + plugsOf(step).length);

/** Whether boxes of another plan are ticked. */
export const isBegunOtherwise = (steps: readonly HookupStep[], { progress }: PageDocument): boolean =>
  progress !== null && progress.ticked.length > 0 && progress.steps !== JSON.stringify(steps);

/** A box of a step is ticked, or no longer. */
export const ticking =
  (steps: readonly HookupStep[], at: number, box: number): Change =>
  (document) => {
    const { progress } = document;
    const text = JSON.stringify(steps);
    const ticked = progress?.steps === text ? progress.ticked : [];
    const key = `${at} ${box}`;
    const after = ticked.includes(key) ? ticked.filter((one) => one !== key) : [...ticked, key];
    return { ...document, progress: { steps: text, ticked: after } };
  };
