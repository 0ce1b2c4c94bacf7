import { stringify } from 'yaml';
import type { Data } from './data.js';

/** A value in YAML's brackets, on one line. */
export const flowText = (value: unknown): string =>
  stringify(withNumberKeys(value), { collectionStyle: 'flow', flowCollectionPadding: false, lineWidth: 0 }).replace(
    /\n$/,
    '',
  );

/** Keys that are numbers are written without quotation marks, as people write volts. */
function withNumberKeys(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withNumberKeys);
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).map(([key, inner]): readonly [string | number, unknown] => {
    const number = Number(key);
    return [String(number) === key ? number : key, withNumberKeys(inner)];
  });
  return new Map(entries);
}

/** The lines of a key whose value is a list, an item a line. */
export const listLines = (key: string, items: readonly unknown[]): readonly string[] =>
  items.length === 0 ? [`${key}: []`] : [`${key}:`, ...items.map((item) => `  - ${flowText(item)}`)];

/** The lines of the supplies of a catalogue: a key a line, and a bank a line. */
export function supplyLines(supplies: readonly Data[]): readonly string[] {
  if (supplies.length === 0) return ['supplies: []'];
  return ['supplies:', ...supplies.flatMap(oneSupplyLines)];
}

function oneSupplyLines({ banks, ...whole }: Data): readonly string[] {
  const lines = [
    ...Object.entries(whole).map(([key, value]) => `${key}: ${flowText(value)}`),
    'banks:',
    ...(Array.isArray(banks) ? banks : []).map((bank) => `  - ${flowText(bank)}`),
  ];
  return lines.map((line, index) => `${index === 0 ? '  - ' : '    '}${line}`);
}
