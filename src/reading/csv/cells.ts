import type { Path, Words } from '../../domain/finding.js';
import { quoted } from '../../domain/shown-text.js';
import { buildTree, type TreeFault } from '../text/build-tree.js';
import type { LocatedEntry, LocatedNode, LocatedScalar } from '../text/located-tree.js';
import { parseYaml } from '../text/yaml-document.js';
import { rangeEnds } from '../typed/range-ends.js';
import type { CellKind } from './columns.js';
import type { PlacedCell } from './rows.js';
import { shifted } from './shifted.js';

/** What a cell is read with. */
export type CellReading = {
  /** Whether the numbers of the table have decimal commas, or may have: then 1.800 may be 1800. */
  readonly decimalCommas: boolean;
  readonly faults: TreeFault[];
  /** The paths of values that were reported already. */
  readonly lost: Path[];
};

/** A value of a table as a file in YAML would hold it. What is not understood becomes text, which its schema refuses. */
export function nodeOf(cell: PlacedCell, kind: CellKind, path: Path, reading: CellReading): LocatedNode {
  switch (kind) {
    case 'text':
      return textNode(cell);
    case 'flag':
      return flagNode(cell);
    case 'number':
      return numberNode(cell, path, reading);
    case 'volts':
      return writtenOut(cell) ?? rangeNode(cell, path, reading) ?? listNode(cell, path, reading, true);
    case 'range':
      return writtenOut(cell) ?? rangeNode(cell, path, reading) ?? numberNode(cell, path, reading);
    case 'numbers':
      return writtenOut(cell) ?? listNode(cell, path, reading, false);
    case 'words':
      return writtenOut(cell) ?? wordsNode(cell);
  }
}

const textNode = ({ text, offset }: PlacedCell): LocatedScalar => ({
  kind: 'scalar',
  offset,
  value: text,
  written: text,
});

/** Spreadsheets write TRUE and FALSE. */
function flagNode(cell: PlacedCell): LocatedScalar {
  const word = cell.text.toLowerCase();
  return word === 'true' || word === 'false' ? { ...textNode(cell), value: word === 'true' } : textNode(cell);
}

/** Whether a text is a number with a decimal comma and nothing else. */
export const hasDecimalComma = (text: string): boolean => /^-?\d+,\d+$/.test(text);

function numberNode(cell: PlacedCell, path: Path, reading: CellReading): LocatedScalar {
  const { text, offset } = cell;
  if (isAmbiguous(text, reading)) return refused(cell, path, thousandsOrDecimals(text), reading);
  const written = text.replace(',', '.');
  return /^-?\d+(?:\.\d+)?$/.test(written)
    ? { kind: 'scalar', offset, value: Number(written), written }
    : textNode(cell);
}

/** Three digits behind a comma may be thousands, and so may those behind a point where numbers have decimal commas. */
const isAmbiguous = (text: string, { decimalCommas }: CellReading): boolean =>
  /^-?[1-9]\d{0,2},\d{3}$/.test(text) || (decimalCommas && /^-?[1-9]\d{0,2}\.\d{3}$/.test(text));

function refused(cell: PlacedCell, path: Path, words: Words, { faults, lost }: CellReading): LocatedScalar {
  faults.push({ path, offset: cell.offset, words: () => words });
  lost.push(path);
  return { ...textNode(cell), value: null };
}

function thousandsOrDecimals(text: string): Words {
  const [whole = '', fraction = ''] = text.split(/[.,]/);
  const decimals = fraction.replace(/0+$/, '');
  const short = decimals === '' ? whole : `${whole}.${decimals}`;
  return {
    message: `found ${quoted(text)}, which may mean ${whole}${fraction} or ${short}.`,
    // Four digits behind the point are no thousands.
    remedy: `Write ${whole}${fraction} or ${decimals.length === 3 ? `${short}0` : short}, whichever is meant.`,
  };
}

/** A value written as YAML does, in brackets. Its places are exact unless the cell has quotation marks inside. */
function writtenOut({ text, offset }: PlacedCell): LocatedNode | null {
  if (!/^[[{]/.test(text)) return null;
  const parsed = parseYaml(text);
  if (parsed.kind === 'not yaml' || parsed.document.contents === null) return null;
  const { root, faults } = buildTree(parsed.document.contents);
  return faults.length > 0 ? null : shifted(root, (inner) => offset + inner);
}

/** Two numbers that make a range. */
function rangeNode({ text, offset }: PlacedCell, path: Path, reading: CellReading): LocatedNode | null {
  const found = rangeEnds(text);
  if (found === null || !isFigure(found.from) || !isFigure(found.to)) return null;
  const ends = {
    from: { text: found.from, offset },
    to: { text: found.to, offset: offset + found.toOffset },
  };
  const entries = Object.entries(ends).map(([key, end]): readonly [string, LocatedEntry] => [
    key,
    { keyOffset: end.offset, value: numberNode(end, [...path, key], reading) },
  ]);
  return { kind: 'map', offset, entries: new Map(entries) };
}

const isFigure = (text: string): boolean => /^[\d.,]+$/.test(text);

/** Numbers with slashes between them; a single one is no list. */
function listNode(cell: PlacedCell, path: Path, reading: CellReading, areVolts: boolean): LocatedNode {
  const parts = splitCell(cell);
  const [only] = parts;
  if (only === undefined || parts.length > 1)
    return {
      kind: 'list',
      offset: cell.offset,
      items: parts.map((part, index) => numberNode(part, [...path, index], reading)),
    };
  // "9,12" is no likely decimal number of volts: two voltages may be meant.
  if (areVolts && /^\d+,\d{2,}$/.test(cell.text)) return refused(cell, path, twoVoltsOrDecimals(cell.text), reading);
  return numberNode(cell, path, reading);
}

function twoVoltsOrDecimals(text: string): Words {
  const [first = '', second = ''] = text.split(',');
  return {
    message: `found ${quoted(text)}, which may mean ${first}.${second} V, or ${first} V and ${second} V.`,
    remedy: `Write ${first}.${second} for one voltage, or ${first}/${second} for two.`,
  };
}

function wordsNode(cell: PlacedCell): LocatedNode {
  const parts = splitCell(cell);
  const [only] = parts;
  if (only !== undefined && parts.length === 1) return textNode(only);
  return { kind: 'list', offset: cell.offset, items: parts.map(textNode) };
}

/** What stands between slashes, each without blanks around it. */
function splitCell({ text, offset }: PlacedCell): readonly PlacedCell[] {
  let start = 0;
  return text.split('/').map((part) => {
    const blanks = part.length - part.trimStart().length;
    const piece: PlacedCell = { text: part.trim(), offset: offset + start + blanks };
    start += part.length + 1;
    return piece;
  });
}
