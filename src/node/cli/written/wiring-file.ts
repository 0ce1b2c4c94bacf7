import { pluggedOf, type Kit } from '../../../domain/kit.js';
import type { Answer } from '../../../planning/answer.js';
import type { Wanted } from '../../../planning/wanted/wanted.js';
import { isCsvName } from '../../../reading/csv/read-csv.js';
import { withPlanRecorded } from '../../../reading/drafts/record-plan.js';
import { inputsFromFiles } from '../../../reading/inputs-from-text.js';
import type { ReadingOptions } from '../../../reading/sheet/without-bad-rows.js';
import { namedFile, readText } from '../../disk/file-text.js';
import { obstacleTo } from '../../disk/write-file.js';
import { tell } from '../printed/tell.js';
import type { WrittenFiles } from '../pipeline.js';
import { writeAloud } from './aloud.js';

/** The board file, into which the plan is to be recorded; null where it is not to be. */
export function wiringFile(
  { record: wanted, ...options }: ReadingOptions & { readonly record: boolean },
  boardPath: string,
  cataloguePath: string | undefined,
): WrittenFiles<Kit, Answer | Wanted> | null {
  if (!wanted) return null;
  let before: string | null = null;
  return {
    areWritable: async () => {
      const refusal = await refusalOf(boardPath);
      if (refusal !== null) tell(`${boardPath}: ${refusal}`);
      before = await textOf(boardPath);
      return refusal === null;
    },
    write: async (kit, answer) => record(kit, answer, { boardPath, cataloguePath, options, before }),
  };
}

/** What speaks against recording anything in the board file; it is told before the search, not after it. */
async function refusalOf(path: string): Promise<string | null> {
  if (isCsvName(path))
    return '--record needs a board file in YAML or JSON: a table has no room for a wiring. Make one of it with boardfeed convert.';
  const obstacle = await obstacleTo(path, { overwrite: true });
  return obstacle === null ? null : `--record writes into the board file, and ${obstacle.message}`;
}

type Target = {
  readonly boardPath: string;
  readonly cataloguePath: string | undefined;
  readonly options: ReadingOptions;
  /** What was in the file when it was read; null when that is not known. */
  readonly before: string | null;
};

/** Records the plan and says so on standard error, or why nothing is recorded. False when it could not be written. */
async function record(
  kit: Kit,
  answer: Answer | Wanted,
  { boardPath, cataloguePath, options, before }: Target,
): Promise<boolean> {
  const plugged = answer.kind === 'plan' ? pluggedOf(kit, answer.wiring.feeds) : [];
  if (answer.kind !== 'plan' || plugged.length === 0) {
    tell(`Nothing recorded: ${answer.kind === 'plan' ? 'no pedal is plugged yet' : 'there is no plan'}.`);
    return true;
  }
  const text = await textOf(boardPath);
  if (text === null || text !== before) {
    tell(`${boardPath}: the file has changed since it was read. Nothing was recorded; ask again.`);
    return false;
  }
  const shop = cataloguePath === undefined ? null : await namedFile(cataloguePath);
  const read = (changed: string) =>
    inputsFromFiles({ file: boardPath, text: { kind: 'text', text: changed } }, shop, options);
  const recorded = withPlanRecorded({ kit, text, read }, answer.wiring);
  if (recorded === null) {
    tell(
      `${boardPath}: the plan could not be put there so that all else stays. Ask rewire without --record what to write by hand.`,
    );
    return false;
  }
  const said = { done: `Recorded in ${boardPath}: ${recordedText(answer.wiring)}`, lost: 'Nothing was recorded.' };
  return writeAloud(boardPath, recorded, true, said);
}

async function textOf(path: string): Promise<string | null> {
  const read = await readText(path);
  return read.kind === 'text' ? read.text : null;
}

const recordedText = ({ buy }: Extract<Answer, { kind: 'plan' }>['wiring']): string =>
  buy.supplies.length + buy.parts.length === 0
    ? 'the next question starts from this plan.'
    : 'the next question starts from this plan, with what it buys as your own.';
