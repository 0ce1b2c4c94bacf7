import type { Path } from '../../domain/finding.js';
import { connectorSpelled } from '../../domain/connectors.js';
import { buildTree } from '../text/build-tree.js';
import type { LocatedNode, LocatedScalar } from '../text/located-tree.js';
import { parseYaml } from '../text/yaml-document.js';
import { flagSaid, mainsVolts, plainWord, polarityWord, voltsAndPower } from './cell-words.js';
import type { CellKind } from './columns.js';
import { figureNode, figuresNode, measureOf, rangeNode, splitCell, textNode, type CellReading } from './figures.js';
import type { Heading } from './headings.js';
import type { PlacedCell } from './rows.js';
import { shifted } from './shifted.js';

/** A value of a table as a file in YAML would hold it. What is not understood becomes text, which its schema refuses. */
export function nodeOf(
  cell: PlacedCell,
  kind: CellKind,
  heading: Heading,
  path: Path,
  reading: CellReading,
): LocatedNode {
  const { unit: stated, isVague } = heading;
  const milliamps = { unit: 'mA', stated, isVague } as const;
  switch (kind) {
    case 'text':
      return textNode(cell);
    case 'word':
      return said(cell, plainWord(cell.text));
    case 'words':
      return writtenOut(cell) ?? wordsNode(cell);
    case 'polarity':
      return said(cell, polarityWord(cell.text));
    case 'connector':
      return said(cell, connectorSpelled(cell.text) ?? cell.text);
    case 'flag':
      return said(cell, flagSaid(cell.text) ?? cell.text);
    case 'count':
    case 'money':
      return figureNode(cell, measureOf(kind), path, reading);
    case 'voltage':
      return figureNode(cell, measureOf('V'), path, reading);
    case 'current':
      return figureNode(cell, milliamps, path, reading);
    case 'watts':
      return figureNode(cell, measureOf('W'), path, reading);
    case 'range':
      return writtenOut(cell) ?? oneOrRange(mainsVolts(cell), path, reading);
    case 'accepts':
      return writtenOut(cell) ?? accepted(voltsAndPower(cell).cell, path, reading);
    case 'voltages':
      return writtenOut(cell) ?? figuresNode(voltsAndPower(cell).cell, measureOf('V'), path, reading);
    case 'currents':
      return writtenOut(cell) ?? figuresNode(cell, milliamps, path, reading);
  }
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

const accepted = (cell: PlacedCell, path: Path, reading: CellReading): LocatedNode =>
  rangeNode(cell, measureOf('V'), path, reading) ?? figuresNode(cell, measureOf('V'), path, reading);

function wordsNode(cell: PlacedCell): LocatedNode {
  const parts = splitCell(cell).map((part) => said(part, plainWord(part.text)));
  const [only] = parts;
  return only !== undefined && parts.length === 1 ? only : { kind: 'list', offset: cell.offset, items: parts };
}
