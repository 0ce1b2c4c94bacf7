import { expect } from 'vitest';

import { resolveInputs, type Resolved } from '../../../src/reading/resolve/resolve-inputs.js';
import { inputsFromText, type BoardAlone, type Inputs } from '../../../src/reading/inputs-from-text.js';
import type { InputFault } from '../../../src/reading/faults/input-fault.js';
import { readSheet } from '../../../src/reading/sheet/read-sheet.js';

/** Marks in a text where a fault is expected. It is taken out before the text is read. */
export const mark = '‸';

const boardSections = {
  board: 'board: Small board',
  currency: 'currency: EUR',
  assume: 'assume: {power: DC, polarity: centre-negative, inlet: barrel-2.1, ground: negative}',
  policy: 'policy: {headroom: {alone: 1.2, chained: 2, supply: 1.2}, chains: allow}',
  pedals: 'pedals:\n  - {name: Echo, volts: 9, milliamps: 100}',
};

const catalogueSections = {
  catalogue: 'catalogue: Small shop',
  currency: 'currency: EUR',
  supplies: [
    'supplies:',
    '  - {id: quay, name: Quay, price: 50, regulated: true, banks: [{outputs: 2, isolated: true, power: DC,',
    '     plug: barrel-2.1, polarity: centre-negative, settings: [{volts: 9, milliamps: 500}]}]}',
  ].join('\n'),
  parts: 'parts:\n  - {id: flip, name: Flip, price: 4, fits: barrel-2.1, gives: barrel-2.1, reverses: true}',
};

type Sections = Readonly<Record<string, string>>;

/** A small board that is right but for the sections that are given; an empty section is left out. */
export const boardText = (sections: Sections = {}): string => joined({ ...boardSections, ...sections });

/** A small catalogue that is right but for the sections that are given. */
export const catalogueText = (sections: Sections = {}): string => joined({ ...catalogueSections, ...sections });

const joined = (sections: Sections): string =>
  `${Object.values(sections)
    .filter((section) => section !== '')
    .join('\n')}\n`;

/** A board with these pedals, each a line of flow YAML. */
export const boardWithPedals = (...pedals: readonly string[]): string =>
  boardText({ pedals: `pedals:\n${pedals.map((pedal) => `  - ${pedal}`).join('\n')}` });

/** A catalogue with these supplies, each a line of flow YAML. */
export const catalogueWithSupplies = (...supplies: readonly string[]): string =>
  catalogueText({ supplies: `supplies:\n${supplies.map((supply) => `  - ${supply}`).join('\n')}` });

/** The position of the mark, counted by hand: lines by their ends, columns in UTF-16 units. */
function markIn(text: string): { readonly clean: string; readonly line: number; readonly column: number } | null {
  const at = text.indexOf(mark);
  if (at < 0) return null;
  const before = text.slice(0, at).split('\n');
  return { clean: text.replace(mark, ''), line: before.length, column: (before.at(-1) ?? '').length + 1 };
}

/** All faults of a board and, if given, a catalogue. */
export function faultsOf(board: string, catalogue: string | null = null): readonly InputFault[] {
  const result = inputsFromText(
    { file: 'board.yaml', text: board },
    catalogue === null ? null : { file: 'shop.yaml', text: catalogue },
  );
  return result.kind === 'read' ? [] : result.faults;
}

/** What a board and, if given, a catalogue are read as; fails on a fault. */
export function readOf(board: string, catalogue: string | null = null): Inputs | BoardAlone {
  const result = inputsFromText(
    { file: 'board.yaml', text: board },
    catalogue === null ? null : { file: 'shop.yaml', text: catalogue },
  );
  if (result.kind === 'faulty') throw new Error(result.faults.map((fault) => JSON.stringify(fault)).join('\n'));
  return result.value;
}

type Texts = { readonly board?: string; readonly catalogue?: string };

/** Expects exactly one fault: at the mark, about this key, with these words in its message and these in its remedy. */
export function expectFault(texts: Texts, key: string, message: string | readonly string[], remedy: string): void {
  const board = texts.board ?? boardText();
  const inBoard = markIn(board);
  const inCatalogue = texts.catalogue === undefined ? null : markIn(texts.catalogue);
  const marked = inBoard ?? inCatalogue;
  if (marked === null) throw new Error('no text has a mark');
  const faults = faultsOf(inBoard?.clean ?? board, inCatalogue?.clean ?? texts.catalogue ?? null);
  expect(faults).toHaveLength(1);
  expect(faults[0]).toMatchObject({
    file: inBoard === null ? 'shop.yaml' : 'board.yaml',
    line: marked.line,
    column: marked.column,
    key,
  });
  for (const words of [message].flat()) expect(faults[0]?.message).toContain(words);
  expect(faults[0]?.remedy).toContain(remedy);
}

/** What a board and, if given, a catalogue are resolved to, with all that is found on the way, before it is put in order. */
export function resolvedOf(board: string, catalogue: string | null = null): Resolved {
  const sheets = {
    board: readSheet('board', { file: 'board.yaml', text: { kind: 'text', text: board } }),
    catalogue:
      catalogue === null
        ? null
        : readSheet('catalogue', { file: 'shop.yaml', text: { kind: 'text', text: catalogue } }),
  };
  const resolved = resolveInputs({
    board: sheets.board.sheet,
    catalogue: sheets.catalogue === null ? 'not given' : sheets.catalogue.sheet,
  });
  const findings = [...sheets.board.findings, ...(sheets.catalogue?.findings ?? []), ...resolved.findings];
  return { ...resolved, findings };
}

/** What faults are about, with the further places of those that have several. */
export const keysOf = (faults: readonly InputFault[]): readonly string[] =>
  faults.flatMap(({ key, alike = [] }) => [key, ...alike.map((place) => place.key)]);

/** Expects faults about exactly these keys, each of them found once. */
export function expectToldOnce({ board = boardText(), catalogue }: Texts, ...keys: readonly string[]): void {
  expect(keysOf(faultsOf(board, catalogue ?? null))).toEqual(keys);
  expect(resolvedOf(board, catalogue ?? null).findings).toHaveLength(keys.length);
}

/** Expects, too, that the files in which the faults are come to nothing, and the others to something. */
export function expectRefused(texts: Texts, ...keys: readonly string[]): void {
  expectToldOnce(texts, ...keys);
  const { board = boardText(), catalogue = null } = texts;
  const faults = faultsOf(board, catalogue);
  const isIn = (file: string) => faults.some((fault) => fault.file === file);
  const resolved = resolvedOf(board, catalogue);
  expect(resolved.board === null).toBe(isIn('board.yaml'));
  expect(resolved.catalogue === null).toBe(catalogue === null || isIn('shop.yaml'));
}
