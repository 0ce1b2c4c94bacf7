import { readCsv, sourceOf, type TableOptions } from './read-csv.js';
import type { TableKind } from './columns.js';
import { faultsAlone } from '../sheet/faults-alone.js';
import { mapOf, type Data } from '../text/data.js';
import type { NamedFile } from '../text/file-text.js';
import type { ReadResult } from '../faults/input-fault.js';
import { locatedEntries, plainData } from '../text/located-tree.js';
import { readTable } from '../sheet/read-sheet.js';
import { readWith, usable, type ReadingOptions, type Usable } from '../sheet/without-bad-rows.js';
import { startingPolicy, startingPolicyLines } from '../drafts/starting-policy.js';
import { flowText, listLines, supplyLines } from '../text/yaml-text.js';

/** What is said beside the table, by the keys of the file: `currency`, `assume`, `board` or `catalogue`. It goes before what the table says. */
export type Given = Readonly<Record<string, unknown>>;

type ConvertOptions = ReadingOptions & Pick<TableOptions, 'leavesOpen'>;

/** A table as a file in YAML. */
type Converted = {
  readonly kind: TableKind;
  readonly yaml: string;
  /** Whether the policy is not the table's own, but the one that new boards begin with. */
  readonly hasStartingPolicy: boolean;
};

/**
 * A table as the board or catalogue that it makes. What is wrong with it is told as for any input. `given` is handed what
 * the table says by itself.
 */
export function convertTable(
  named: NamedFile,
  given: (kind: TableKind, says: Data) => Given,
  options: ConvertOptions = {},
): ReadResult<Converted> {
  const { file, text } = named;
  const table = readCsv(file, text.kind === 'text' ? text.text.replace(/^\uFEFF/, '') : '');
  const kind = table.tableKind;
  const stated = given(kind, table.kind === 'tree' ? mapOf(plainData(table.root)) : {});
  const { leavesOpen } = options;
  const readBeside = (beside: Given): Usable =>
    usable(
      (without) => readTable(sourceOf(kind), named, { given: locatedEntries(beside), without, leavesOpen }),
      options,
    );
  const first = readBeside(stated);
  const { tree } = first.sheet;
  const hasPolicy = tree === null || Object.hasOwn(plainData(tree.root) as Data, 'policy');
  const hasStartingPolicy = kind === 'pedals' && !hasPolicy;
  const { sheet, notes } = hasStartingPolicy ? readBeside({ ...stated, policy: startingPolicy() }) : first;
  const faults = faultsAlone(sheet);
  if (faults !== null) return { kind: 'faulty', ...faults };
  if (sheet.tree === null) throw new Error('a table was refused without a fault');
  // A round through JSON makes ordinary objects of the tree's.
  const data = JSON.parse(JSON.stringify(plainData(sheet.tree.root))) as Data;
  const lines = kind === 'pedals' ? boardLines(data, hasStartingPolicy) : catalogueLines(data);
  return readWith({ kind, yaml: `${lines.join('\n')}\n`, hasStartingPolicy }, notes);
}

function boardLines(data: Data, hasStartingPolicy: boolean): readonly string[] {
  const { policy, pedals } = data;
  return [
    ...keyLines(data, ['board', 'currency', 'assume']),
    ...(hasStartingPolicy ? startingPolicyLines : policyLines(policy as Data)),
    ...listLines('pedals', pedals as readonly unknown[]),
    ...keyLines(data, ['gear', 'owned', 'wiring']),
  ];
}

const policyLines = (policy: Data): readonly string[] => [
  'policy:',
  ...keyLines(policy, Object.keys(policy)).map((line) => `  ${line}`),
];

function catalogueLines(data: Data): readonly string[] {
  const { supplies, parts, batteries } = data;
  return [
    ...keyLines(data, ['catalogue', 'currency', 'assume']),
    ...supplyLines(supplies as readonly Data[]),
    ...Object.entries({ parts, batteries }).flatMap(([key, list]) =>
      list === undefined ? [] : listLines(key, list as readonly unknown[]),
    ),
  ];
}

const keyLines = (data: Data, keys: readonly string[]): readonly string[] =>
  keys.flatMap((key) => (data[key] === undefined ? [] : [`${key}: ${flowText(data[key])}`]));
