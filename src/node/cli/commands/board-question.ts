import type { Kit } from '../../../domain/kit.js';
import type { ReportKinds } from '../../../report/formats.js';
import type { ReadingOptions } from '../../../reading/sheet/without-bad-rows.js';
import { readInputs } from '../../disk/read-inputs.js';
import { readOne, type WrittenFiles } from '../pipeline.js';
import { reportFiles, type ReportFlags } from '../written/report-files.js';

/** What every command is told that asks something about one board. */
export type BoardFlags = ReadingOptions & {
  readonly json: boolean;
  /** In seconds; no limit when left out. */
  readonly time?: number;
};

/** The same where there are reports of the answer. */
export type ReportedFlags = BoardFlags & ReportFlags;

/** The files of a board and of a catalogue, which a board may do without. */
export type BoardFiles = readonly [board: string, catalogue: string | undefined];

/** How the board is read, and whether its answer is printed as JSON. */
export const aboutBoard = ([board, catalogue]: BoardFiles, flags: BoardFlags) => ({
  read: async () => readOne(readInputs(board, catalogue ?? null, flags)),
  json: flags.json,
});

/** The paths of what is read. */
export const readPaths = (files: BoardFiles): readonly string[] => files.filter((path) => path !== undefined);

/** Reports that say nothing beside the answer. */
export const pageFiles = <Answer>(
  files: BoardFiles,
  flags: ReportFlags,
  kinds: ReportKinds<{ readonly kit: Kit; readonly answer: Answer }>,
): WrittenFiles<Kit, Answer> => reportFiles(flags, kinds, readPaths(files), (kit, answer: Answer) => ({ kit, answer }));
