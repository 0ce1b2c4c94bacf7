import type { Path } from '../../domain/finding.js';
import { connectorSpelled } from '../../domain/connectors.js';
import type { NumberUnit } from '../schema/schema-fields.js';
import { buildTree } from '../text/build-tree.js';
import type { LocatedNode, LocatedScalar } from '../text/located-tree.js';
import { parseYaml } from '../text/yaml-document.js';
import { flagSaid, mainsVolts, plainWord, polarityWord, voltsAndPower } from './cell-words.js';
import type { CellKind } from './columns.js';
import {
  figureNode,
  figuresNode,
  measureOf,
  rangeNode,
  splitCell,
  textNode,
  type CellReading,
  type Measure,
} from './figures.js';
import type { Heading } from './headings.js';
import type { PlacedCell } from './rows.js';
import { shifted } from './shifted.js';

/** A value of a table as a file in YAML would hold it. What is not understood becomes text, which its schema refuses. */
export function nodeOf(
  cell: PlacedCell,
  kind: CellKind,
  { unit, isVague }: Heading,
  path: Path,
  reading: CellReading,
): LocatedNode {
  return readers[kind](cell, { stated: unit, isVague }, path, reading);
}

/** `heading` is what the heading says of figures without a unit. */
type Reader = (cell: PlacedCell, heading: Omit<Measure, 'unit'>, path: Path, reading: CellReading) => LocatedNode;

const figureIn =
  (unit: NumberUnit): Reader =>
  (cell, _, path, reading) =>
    figureNode(cell, measureOf(unit), path, reading);

const readers: Readonly<Record<CellKind, Reader>> = {
  text: textNode,
  word: (cell) => said(cell, plainWord(cell.text)),
  words: (cell) => writtenOut(cell) ?? wordsNode(cell),
  polarity: (cell) => said(cell, polarityWord(cell.text)),
  connector: (cell) => said(cell, connectorSpelled(cell.text) ?? cell.text),
  flag: (cell) => said(cell, flagSaid(cell.text) ?? cell.text),
  count: figureIn('count'),
  money: figureIn('money'),
  voltage: figureIn('V'),
  watts: figureIn('W'),
  wattHours: figureIn('Wh'),
  current: (cell, heading, path, reading) => figureNode(cell, { unit: 'mA', ...heading }, path, reading),
  currents: (cell, heading, path, reading) =>
    writtenOut(cell) ?? figuresNode(cell, { unit: 'mA', ...heading }, path, reading),
  voltages: (cell, _, path, reading) => writtenOut(cell) ?? severalVolts(voltsAndPower(cell).cell, path, reading),
  accepts: (cell, _, path, reading) => writtenOut(cell) ?? accepted(voltsAndPower(cell).cell, path, reading),
  range: (cell, _, path, reading) => writtenOut(cell) ?? oneOrRange(mainsVolts(cell), path, reading),
  inlet: (cell) => writtenOut(cell) ?? textNode(cell),
  battery: (cell) => writtenOut(cell) ?? batteryNode(cell),
  adapter: (cell, _, path, reading) => writtenOut(cell) ?? adapterNode(cell, path, reading),
};

/** Yes is an adapter whose mains volts are not stated; no is left for the map to leave out. */
function adapterNode(cell: PlacedCell, path: Path, reading: CellReading): LocatedNode {
  const { offset } = cell;
  const flag = flagSaid(cell.text);
  if (flag === false) return said(cell, false);
  if (flag === true) return { kind: 'map', offset, entries: new Map() };
  const value = oneOrRange(mainsVolts(cell), [...path, 'mains'], reading);
  return { kind: 'map', offset, entries: new Map([['mains', { keyOffset: offset, value }]]) };
}

/** "9V-block", or with how many of them "2 × AA". */
function batteryNode(cell: PlacedCell): LocatedNode {
  const { offset } = cell;
  const [, count = '1', type = cell.text] = /^(\d+)\s*[x×]\s*(.+)$/i.exec(cell.text) ?? [];
  const entries = { type: said(cell, type), count: { ...textNode(cell), value: Number(count), written: count } };
  const placed = Object.entries(entries).map(([key, value]) => [key, { keyOffset: offset, value }] as const);
  return { kind: 'map', offset, entries: new Map(placed) };
}

/** What a cell says, with its own words behind it. */
const said = (cell: PlacedCell, value: string | boolean): LocatedScalar => ({ ...textNode(cell), value });

/** A value written as YAML does, in brackets. Its places are exact unless the cell has quotation marks inside. */
function writtenOut({ text, offset }: PlacedCell): LocatedNode | null {
  if (!/^[[{]/.test(text)) return null;
  const parsed = parseYaml(text);
  if (parsed.kind === 'not yaml' || parsed.document.contents === null) return null;
  const { root, faults } = buildTree(parsed.document.contents);
  return faults.length > 0 ? null : shifted(root, (inner) => offset + inner);
}

const oneOrRange = (cell: PlacedCell, path: Path, reading: CellReading): LocatedNode =>
  rangeNode(cell, measureOf('V'), path, reading) ?? figureNode(cell, measureOf('V'), path, reading);

const severalVolts = (cell: PlacedCell, path: Path, reading: CellReading): LocatedNode =>
  figuresNode(cell, measureOf('V'), path, reading);

const accepted = (cell: PlacedCell, path: Path, reading: CellReading): LocatedNode =>
  rangeNode(cell, measureOf('V'), path, reading) ?? severalVolts(cell, path, reading);

function wordsNode(cell: PlacedCell): LocatedNode {
  const parts = splitCell(cell).map((part) => said(part, plainWord(part.text)));
  const [only] = parts;
  return only !== undefined && parts.length === 1 ? only : { kind: 'list', offset: cell.offset, items: parts };
}
