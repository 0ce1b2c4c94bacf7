import type { Assumption } from './assumption.js';
import type { Section } from './section.js';
import { startingPolicyLines } from './starting-policy.js';
import { flowText } from '../text/yaml-text.js';

/** What a new board says beside its pedals. */
export type BoardHead = {
  readonly name: string;
  readonly currency: string;
  readonly assumption: Assumption;
  /** The volts at the venue; null when they are not to be checked. */
  readonly mains: number | null;
  /** The money that one exposed pedal counts for. */
  readonly noisePrice: number;
  /** The most that may be spent; null when there is no limit. */
  readonly budget: number | null;
};

/** What a new catalogue says beside its supplies and leads. */
export type CatalogueHead = { readonly name: string; readonly currency: string };

/** The lines by which editors find the schema of a file, once it lies beside it. */
export const schemaLines = (kind: 'board' | 'catalogue'): readonly string[] => [
  `# yaml-language-server: $schema=${kind}.schema.json`,
  `# Editors complete and check this file by its schema: boardfeed schema ${kind} > ${kind}.schema.json`,
];

/** A board without pedals, to which pedals are added. */
export const newBoard = ({ name, currency, assumption, ...policy }: BoardHead): string =>
  textOf([
    ...schemaLines('board'),
    `board: ${flowText(name)}`,
    `currency: ${currency}`,
    ...assumeSections(assumption).flatMap(({ lines }) => lines),
    '',
    ...startingPolicyLines.map((line) => withValue(line, policy)),
    '',
    'pedals:',
  ]);

/** What lets plans take something for pedals that do not say. */
export const assumeSections = (assumption: Assumption): readonly Section[] =>
  Object.keys(assumption).length === 0
    ? []
    : [
        {
          key: 'assume',
          lines: [
            '# Taken for every pedal that does not say otherwise; each use is listed in the result, to be confirmed.',
            `assume: ${flowText(assumption)}`,
          ],
          value: assumption,
        },
      ];

/** A line of the policy with the value that was told, where one was: it stands in a comment until then. */
function withValue(line: string, policy: Readonly<Record<string, number | null>>): string {
  const key = /^ {2}(?:# )?(\w+): \S+ *(?=#)/.exec(line);
  const value = policy[key?.[1] ?? ''] ?? null;
  return key === null || value === null
    ? line
    : `${`  ${key[1] ?? ''}: ${value}`.padEnd(key[0].length)}${line.slice(key[0].length)}`;
}

/** A catalogue without supplies and leads, to which they are added. */
export const newCatalogue = ({ name, currency }: CatalogueHead): string =>
  textOf([...schemaLines('catalogue'), `catalogue: ${flowText(name)}`, `currency: ${currency}`, '', 'supplies: []']);

const textOf = (lines: readonly string[]): string => `${lines.join('\n')}\n`;
