import { convertTable, type Given } from '../../../reading/csv/convert-table.js';
import type { TableKind } from '../../../reading/csv/columns.js';
import type { ReadingOptions } from '../../../reading/sheet/without-bad-rows.js';
import { namedFile } from '../../disk/file-text.js';
import { exitCodes, type ExitCode } from '../exit-codes.js';
import { nothingAsked, open, readOne } from '../pipeline.js';
import { tell } from '../printed/tell.js';

export type ConvertFlags = ReadingOptions & {
  readonly currency?: string;
  readonly name?: string;
  /** What is taken for rows that leave it out, by the keys of `assume`. */
  readonly assume?: Readonly<Record<string, string | boolean>>;
};

/** Reads a table, prints it as a board or a catalogue in YAML, and returns the exit code. */
export async function runConvert(path: string, flags: ConvertFlags): Promise<ExitCode> {
  const opened = await open({
    read: async () => readOne(convertTable(await namedFile(path), (kind) => givenBy(flags, kind), flags)),
    ask: nothingAsked,
  });
  if (opened === null) return exitCodes.input;
  const { yaml, hasStartingPolicy } = opened.input;
  process.stdout.write(yaml);
  if (hasStartingPolicy)
    tell(`${path} states no policy: the board has starting values. Read them before you rely on a plan.`);
  return exitCodes.plan;
}

const givenBy = ({ currency, name, assume }: ConvertFlags, kind: TableKind): Given => ({
  ...(currency === undefined ? {} : { currency }),
  ...(name === undefined ? {} : { [kind === 'pedals' ? 'board' : 'catalogue']: name }),
  ...(assume === undefined ? {} : { assume }),
});
