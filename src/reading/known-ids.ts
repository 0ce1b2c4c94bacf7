import { isCsvName, readCsv } from './csv/read-csv.js';
import { idsIn } from './drafts/ids-in.js';
import { listOf, mapOf, type Data } from './text/data.js';
import type { NamedFile } from './text/file-text.js';
import { plainData } from './text/located-tree.js';
import { treeOfYaml } from './text/tree-of-text.js';

/** The ids in some files, for completing what is typed: as far as the files can be understood, right or not. */
export type KnownIds = {
  readonly pedals: readonly string[];
  readonly supplies: readonly string[];
  readonly parts: readonly string[];
  /** Each output as it is named on the command line: `quay-6:5`, and `quay-6/2:5` of a second unit that is owned. */
  readonly outputs: readonly string[];
};

/** The ids in boards and catalogues. A file that cannot be read has none. */
export function knownIds(named: readonly NamedFile[]): KnownIds {
  const files = named.map(dataOf);
  const lists = files.flatMap((data) => [data, mapOf(data['gear'])]);
  const owned = files.flatMap((data) => mapOf(data['owned'])['supplies'] ?? []);
  return {
    pedals: unique(files.flatMap((data) => idsIn(data, 'pedals'))),
    supplies: unique(lists.flatMap((data) => idsIn(data, 'supplies'))),
    parts: unique(lists.flatMap((data) => idsIn(data, 'parts'))),
    outputs: unique(lists.flatMap((data) => outputsIn(data, owned))),
  };
}

function dataOf({ file, text: read }: NamedFile): Data {
  if (read.kind === 'unreadable') return {};
  const text = read.text.replace(/^\uFEFF/, '');
  const tree = isCsvName(file) ? readCsv(file, text) : treeOfYaml(text);
  return tree.kind === 'tree' && tree.root.kind === 'map' ? (plainData(tree.root) as Data) : {};
}

/** No supply has more; a number beyond it is a slip that must not fill the screen. */
const mostOutputs = 200;

function outputsIn(data: Data, owned: readonly unknown[]): readonly string[] {
  return listOf(data['supplies']).flatMap((supply) => {
    const [id] = idsIn({ supplies: [supply] }, 'supplies');
    if (id === undefined) return [];
    const count = listOf(mapOf(supply)['banks']).reduce<number>((sum, bank) => sum + countOf(bank), 0);
    const units = Math.max(1, owned.filter((one) => one === id).length);
    return Array.from({ length: units }, (_, unit) => (unit === 0 ? id : `${id}/${unit + 1}`)).flatMap((unit) =>
      Array.from({ length: Math.min(count, mostOutputs) }, (_, output) => `${unit}:${output + 1}`),
    );
  });
}

function countOf(bank: unknown): number {
  const { outputs } = mapOf(bank);
  return typeof outputs === 'number' && Number.isSafeInteger(outputs) && outputs > 0 ? outputs : 0;
}

const unique = (words: readonly string[]): readonly string[] => [...new Set(words)];
