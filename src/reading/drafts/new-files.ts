import type { Assumption } from './assumption.js';
import type { Section } from './section.js';
import { startingBatteries, startingPolicyLines, startingRuntime } from './starting-policy.js';
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
  readonly terms: LastingTerms;
};

/** The hours that a power bank must last, or a set of batteries; absent where none is used. */
export type LastingTerms = { readonly runtime?: number; readonly batteries?: number };

/** What a new catalogue says beside its supplies and leads. */
export type CatalogueHead = { readonly name: string; readonly currency: string };

/** The lines by which editors find the schema of a file, once it lies beside it. */
export const schemaLines = (kind: 'board' | 'catalogue'): readonly string[] => [
  `# yaml-language-server: $schema=${kind}.schema.json`,
  `# Editors complete and check this file by its schema: boardfeed schema ${kind} > ${kind}.schema.json`,
];

/** A board without pedals, to which pedals are added. */
export const newBoard = ({ name, currency, assumption, terms, ...policy }: BoardHead): string =>
  textOf([
    ...schemaLines('board'),
    `board: ${flowText(name)}`,
    `currency: ${currency}`,
    ...assumeSections(assumption).flatMap(({ lines }) => lines),
    '',
    ...startingPolicyLines.map((line) => withValue(line, { ...policy, ...policyOfTerms(terms) })),
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

/** What a policy says of power banks and batteries that must last so long, by its keys. */
export const policyOfTerms = ({ runtime, batteries }: LastingTerms): Readonly<Record<string, object>> => ({
  ...(runtime === undefined ? {} : { runtime: { ...startingRuntime, hours: runtime } }),
  ...(batteries === undefined ? {} : { batteries: { ...startingBatteries, change: batteries } }),
});

/** A line of the policy with the value that was told, where one was: it stands in a comment until then. */
function withValue(line: string, policy: Readonly<Record<string, number | object | null>>): string {
  const key = /^ {2}(?:# )?(\w+): (?:\{[^}]*\}|\S+) *(?=#)/.exec(line);
  const value = policy[key?.[1] ?? ''] ?? null;
  return key === null || value === null
    ? line
    : `${`  ${key[1] ?? ''}: ${flowText(value)}`.padEnd(key[0].length)}${line.slice(key[0].length)}`;
}

/** A catalogue without supplies and leads, to which they are added. */
export const newCatalogue = ({ name, currency }: CatalogueHead): string =>
  textOf([...schemaLines('catalogue'), `catalogue: ${flowText(name)}`, `currency: ${currency}`, '', 'supplies: []']);

const textOf = (lines: readonly string[]): string => `${lines.join('\n')}\n`;
