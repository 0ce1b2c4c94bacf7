import { expect } from 'vitest';

import { inputsFromText, type BoardAlone } from '../../../../src/reading/inputs-from-text.js';
import type { InputFault } from '../../../../src/reading/faults/input-fault.js';
import { boardText, mark } from '../texts.js';

export const above = [
  '# My pedals, as of spring',
  '# currency: EUR',
  '# assume: {power: DC, polarity: centre-negative, inlet: barrel-2.1, ground: negative}',
  '# policy:',
  '#   headroom: {alone: 1.2, chained: 2, supply: 1.2}',
  '#   chains: allow',
  '## curency: EUR',
].join('\n');

export const boardTable = (...rows: readonly string[]): string => [above, ...rows, ''].join('\n');
export const shopTable = (...rows: readonly string[]): string =>
  [
    '# currency: EUR',
    '# assume: {power: DC, plug: barrel-2.1, polarity: centre-negative, regulated: true}',
    ...rows,
    '',
  ].join('\n');

export function readBoard(text: string): BoardAlone['board'] {
  const result = inputsFromText({ file: 'tour.csv', text }, null);
  if (result.kind === 'faulty') throw new Error(JSON.stringify(result.faults));
  return result.value.board;
}

export function readShop(text: string) {
  const result = inputsFromText({ file: 'b.yaml', text: boardText() }, { file: 'shop.csv', text });
  if (result.kind === 'faulty') throw new Error(JSON.stringify(result.faults));
  return result.value.catalogue;
}

export function faultsOf(file: 'board' | 'shop', text: string): readonly InputFault[] {
  const result =
    file === 'board'
      ? inputsFromText({ file: 'pedals.csv', text }, null)
      : inputsFromText({ file: 'b.yaml', text: boardText() }, { file: 'shop.csv', text });
  return result.kind === 'read' ? [] : result.faults;
}

/** Expects exactly one fault, at the mark, with this key and these words in message and remedy. */
export function expectFault(
  file: 'board' | 'shop',
  marked: string,
  key: string,
  message: string,
  remedy: string,
): void {
  const before = marked.slice(0, marked.indexOf(mark)).split('\n');
  const faults = faultsOf(file, marked.replace(mark, ''));
  expect(faults).toHaveLength(1);
  expect(faults[0]).toMatchObject({ line: before.length, column: (before.at(-1) ?? '').length + 1, key });
  expect(faults[0]?.message).toContain(message);
  expect(faults[0]?.remedy).toContain(remedy);
}
