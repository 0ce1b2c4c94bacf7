import { idFromName } from '../resolve/resolve-id.js';
import { flowText } from '../text/yaml-text.js';
import { dataOf, entryLines, isWhole, type DraftEntry } from './entry.js';
import type { Section } from './section.js';

/** Something that is owned and that no catalogue lists, and how many of it. */
export type OwnedThing = { readonly entry: DraftEntry; readonly count: number };

export type OwnedDraft = {
  readonly supplies: readonly OwnedThing[];
  readonly leads: readonly OwnedThing[];
  readonly batteries: readonly OwnedThing[];
};

export const nothingOwned: OwnedDraft = { supplies: [], leads: [], batteries: [] };

/** The id by which the rest of a file calls an entry. */
export const idOf = ({ name }: DraftEntry): string => idFromName(name) ?? name;

/** What describes the things and what counts them. A supply of which something is missing is described in a comment alone. */
export function ownedSections({ supplies, leads, batteries }: OwnedDraft): readonly Section[] {
  if ([...supplies, ...leads, ...batteries].length === 0) return [];
  const ofBatteries = <Value>(value: Value) => (batteries.length === 0 ? {} : { batteries: value });
  const whole = supplies.filter(({ entry }) => isWhole(entry));
  const owned = {
    supplies: whole.flatMap(({ entry, count }) => Array.from({ length: count }, () => idOf(entry))),
    parts: countsOf(leads),
    ...ofBatteries(countsOf(batteries)),
  };
  return [
    {
      key: 'gear',
      lines: [
        '',
        '# What is owned, as its labels describe it.',
        'gear:',
        ...listLines('supplies', supplies),
        ...listLines('parts', leads),
        ...(batteries.length === 0 ? [] : listLines('batteries', batteries)),
      ],
      value: {
        supplies: whole.map(dataOfThing),
        parts: leads.map(dataOfThing),
        ...ofBatteries(batteries.map(dataOfThing)),
      },
    },
    { key: 'owned', lines: [`owned: ${flowText(owned)}`], value: owned },
  ];
}

const countsOf = (things: readonly OwnedThing[]): Readonly<Record<string, number>> =>
  Object.fromEntries(things.map(({ entry, count }) => [idOf(entry), count]));

const dataOfThing = ({ entry }: OwnedThing): unknown => dataOf(entry.fields);

const listLines = (key: string, things: readonly OwnedThing[]): readonly string[] => [
  things.some(({ entry }) => isWhole(entry)) ? `  ${key}:` : `  ${key}: []`,
  ...things.flatMap(({ entry }) => entryLines(entry)).map((line) => `    ${line}`),
];
