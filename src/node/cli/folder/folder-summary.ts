import type { BoardStatus } from '../../threads/board-result.js';
import { exitCodes, type ExitCode } from '../exit-codes.js';

/** What has become of the boards of a folder. */
export type FolderCount = {
  readonly all: number;
  /** Done already when the run began. */
  readonly before: number;
  readonly done: number;
  readonly statuses: ReadonlyMap<BoardStatus, number>;
};

/** "12 of 14 boards are done (3 of them before): 10 compared, 2 with faults in their files." */
export function folderSummary({ all, before, done, statuses }: FolderCount): string {
  const told = [...words].flatMap(([status, text]) => {
    const count = statuses.get(status) ?? 0;
    return count > 0 || status === 'proven' ? [`${count} ${text}`] : [];
  });
  const earlier = before === 0 ? '' : ` (${before} of them before)`;
  return `${done} of ${all} boards are done${earlier}: ${told.join(', ')}.`;
}

const words: ReadonlyMap<BoardStatus, string> = new Map([
  ['proven', 'compared'],
  ['impossible', 'that nothing can power'],
  ['best found', 'not proven in time'],
  ['faulty', 'with faults in their files'],
  ['defect', 'that brought a defect to light'],
]);

/** The gravest thing that happened to any board. */
export function folderCode({ all, done, statuses }: FolderCount): ExitCode {
  if (statuses.has('defect')) return exitCodes.internalError;
  if (done < all) return exitCodes.stopped;
  if (statuses.has('faulty')) return exitCodes.input;
  if (statuses.has('best found')) return exitCodes.stopped;
  return statuses.has('impossible') ? exitCodes.noPlan : exitCodes.plan;
}

/** How far a folder has come, as one line of ASCII that is cut to so many columns. */
export function folderProgressText({ all, before, done }: FolderCount, seconds: number, width: number): string {
  const made = done - before;
  const left = made === 0 ? '' : `, about ${Math.ceil((seconds * (all - done)) / made)} s left`;
  return `${done} of ${all} boards, ${seconds} s${left}. Ctrl-C stops; what is done stays.`.slice(0, width);
}
