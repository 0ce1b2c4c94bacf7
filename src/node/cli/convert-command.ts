import { escapedText } from '../../domain/shown-text.js';
import { convertTable, type Given } from '../disk/convert-table.js';
import type { TableKind } from '../../reading/csv/columns.js';
import { exitCodes, type ExitCode } from './exit-codes.js';
import { printFaults } from './print-faults.js';

export type ConvertFlags = {
  readonly currency?: string;
  readonly name?: string;
  /** What is taken for rows that leave it out, by the keys of `assume`. */
  readonly assume?: Readonly<Record<string, string | boolean>>;
};

/** Reads a table, prints it as a board or a catalogue in YAML, and returns the exit code. */
export async function runConvert(path: string, flags: ConvertFlags): Promise<ExitCode> {
  const read = await convertTable(path, (kind) => givenBy(flags, kind));
  if (read.kind === 'faulty') {
    printFaults(read);
    return exitCodes.input;
  }
  const { yaml, hasStartingPolicy } = read.value;
  process.stdout.write(yaml);
  if (hasStartingPolicy)
    process.stderr.write(
      `${escapedText(path)} states no policy: the board has starting values. Read them before you rely on a plan.\n`,
    );
  return exitCodes.plan;
}

const givenBy = ({ currency, name, assume }: ConvertFlags, kind: TableKind): Given => ({
  ...(currency === undefined ? {} : { currency }),
  ...(name === undefined ? {} : { [kind === 'pedals' ? 'board' : 'catalogue']: name }),
  ...(assume === undefined ? {} : { assume }),
});
