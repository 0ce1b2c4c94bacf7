import { startingPolicyLines } from './starting-policy.js';
import { flowText } from '../text/yaml-text.js';

/** What a new board says beside its pedals. */
export type BoardHead = {
  readonly name: string;
  readonly currency: string;
  /** The volts at the venue; null when they are not to be checked. */
  readonly mains: number | null;
  /** The money that one exposed pedal counts for. */
  readonly noisePrice: number;
  /** Whether its owner lets pedals that say nothing have a negative ground. */
  readonly assumesGround: boolean;
};

/** What a new catalogue says beside its supplies and leads. */
export type CatalogueHead = { readonly name: string; readonly currency: string };

/** The line by which editors find the schema of a file that lies beside it. */
export const schemaLine = (kind: 'board' | 'catalogue'): string =>
  `# yaml-language-server: $schema=${schemaFile(kind)}`;
export const schemaFile = (kind: 'board' | 'catalogue'): string => `${kind}.schema.json`;

/** A board without pedals, to which pedals are added. */
export function newBoard({ name, currency, mains, noisePrice, assumesGround }: BoardHead, hasSchema: boolean): string {
  const policy = startingPolicyLines
    .map((line) => line.replace(/^( {2}noisePrice: )20 */, (_line, key: string) => `${key}${noisePrice}`.padEnd(32)))
    .map((line) =>
      mains === null
        ? line
        : line.replace(/^ {2}# (mains: )230 */, (_line, key: string) => `  ${key}${mains}`.padEnd(32)),
    );
  return textOf([
    ...(hasSchema ? [schemaLine('board')] : []),
    `board: ${flowText(name)}`,
    `currency: ${currency}`,
    ...(assumesGround
      ? [
          '# Taken for every pedal that does not say otherwise; each use is listed in the result, to be confirmed.',
          'assume: {ground: negative}',
        ]
      : []),
    '',
    ...policy,
    '',
    'pedals:',
  ]);
}

/** A catalogue without supplies and leads, to which they are added. */
export const newCatalogue = ({ name, currency }: CatalogueHead, hasSchema: boolean): string =>
  textOf([
    ...(hasSchema ? [schemaLine('catalogue')] : []),
    `catalogue: ${flowText(name)}`,
    `currency: ${currency}`,
    '',
    'supplies: []',
  ]);

const textOf = (lines: readonly string[]): string => `${lines.join('\n')}\n`;
