import type { Path, Words } from '../../domain/finding.js';
import { quoted } from '../../domain/shown-text.js';
import type { NumberUnit } from '../schema/schema-fields.js';
import type { TreeFault } from '../text/build-tree.js';
import type { LocatedEntry, LocatedNode, LocatedScalar } from '../text/located-tree.js';
import { plainNumber } from '../typed/plain-number.js';
import { rangeEnds } from '../typed/range-ends.js';
import type { PlacedCell } from './rows.js';

/** What a cell is read with. */
export type CellReading = {
  /** Whether the numbers of the table have decimal commas, or may have: then 1.800 may be 1800. */
  readonly decimalCommas: boolean;
  readonly faults: TreeFault[];
  /** The paths of values that were reported already. */
  readonly lost: Path[];
};

/** What the figures of a cell stand for. */
export type Measure = {
  readonly unit: NumberUnit;
  /** The unit of figures that are written without one; null where that is `unit`. */
  readonly stated: 'A' | null;
  /** Whether nothing says if figures without a unit are mA or A. */
  readonly isVague: boolean;
};

export const measureOf = (unit: NumberUnit): Measure => ({ unit, stated: null, isVague: false });

export const textNode = ({ text, offset }: PlacedCell): LocatedScalar => ({
  kind: 'scalar',
  offset,
  value: text,
  written: text,
});

/** Whether a text is a number with a decimal comma, perhaps with a unit or a currency's sign. */
export const hasDecimalComma = (text: string): boolean => /^-?(?:\p{Sc}\s*)?\d+,\d+(?:\s*[\p{L}\p{Sc}]+)?$/u.test(text);

/** A figure with its unit or without. What is none becomes text, which its schema refuses. */
export function figureNode(cell: PlacedCell, measure: Measure, path: Path, reading: CellReading): LocatedScalar {
  const { offset } = cell;
  const { unit } = measure;
  const text = unit === 'money' ? withoutSign(cell.text) : cell.text;
  const [digits = ''] = /^-?[\d.,]*/.exec(text) ?? [];
  if (isAmbiguous(digits, reading)) return refused(cell, path, thousandsOrDecimals(digits), reading);
  const isBare = digits === text;
  if (isBare && digits !== '' && measure.isVague && Number(digits.replace(',', '.')) < 10)
    return refused(cell, path, milliampsOrAmps(text), reading);
  const whole = withoutThousands(digits);
  const plain = whole.replace(',', '.');
  if (isBare && measure.stated === null && /^-?\d+(?:\.\d+)?$/.test(plain))
    return { kind: 'scalar', offset, value: Number(plain), written: plain };
  const written = plainNumber(`${whole}${isBare ? (measure.stated ?? '') : text.slice(digits.length)}`, unit);
  return written === null ? textNode(cell) : { kind: 'scalar', offset, value: Number(written), written };
}

/** An amount without its currency's sign or code. */
const withoutSign = (text: string): string =>
  text.replace(/^(?:\p{Sc}|[A-Z]{3}(?=[\s\d]))\s*|\s*(?:\p{Sc}|(?<=[\s\d])[A-Z]{3})$/gu, '');

/** Three digits behind a comma may be thousands, and so may those behind a point where numbers have decimal commas. */
const isAmbiguous = (digits: string, { decimalCommas }: CellReading): boolean =>
  /^-?[1-9]\d{0,2},\d{3}$/.test(digits) || (decimalCommas && /^-?[1-9]\d{0,2}\.\d{3}$/.test(digits));

/** "1.299,00" and "1,299.00" can be understood in one way only. */
function withoutThousands(digits: string): string {
  if (/^-?\d{1,3}(?:\.\d{3})+,\d+$/.test(digits)) return digits.replaceAll('.', '');
  return /^-?\d{1,3}(?:,\d{3})+\.\d+$/.test(digits) ? digits.replaceAll(',', '') : digits;
}

export function refused(cell: PlacedCell, path: Path, words: Words, { faults, lost }: CellReading): LocatedScalar {
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

const milliampsOrAmps = (text: string): Words => ({
  message: `found ${quoted(text)} without a unit, which may mean ${text} mA or ${text} A.`,
  remedy: `Write ${text} mA or ${text} A, or put the unit into the heading.`,
});

/** Two figures that make a range; null where a text is none. */
export function rangeNode(
  { text, offset }: PlacedCell,
  measure: Measure,
  path: Path,
  reading: CellReading,
): LocatedNode | null {
  const found = rangeEnds(text);
  if (found === null || !isFigure(found.from) || !isFigure(found.to)) return null;
  const ends = {
    from: { text: found.from, offset },
    to: { text: found.to, offset: offset + found.toOffset },
  };
  const entries = Object.entries(ends).map(([key, end]): readonly [string, LocatedEntry] => [
    key,
    { keyOffset: end.offset, value: figureNode(end, measure, [...path, key], reading) },
  ]);
  return { kind: 'map', offset, entries: new Map(entries) };
}

const isFigure = (text: string): boolean => /^[\d.,]+\s*V?$/i.test(text);

/** Figures with slashes between them, the unit behind each or behind the last one; a single one is no list. */
export function figuresNode(cell: PlacedCell, measure: Measure, path: Path, reading: CellReading): LocatedNode {
  const parts = splitCell(cell);
  const [only] = parts;
  if (only !== undefined && parts.length === 1) {
    // "9,12" is no likely decimal number of volts: two voltages may be meant.
    if (measure.unit === 'V' && /^\d+,\d{2,}(?:\s*V)?$/i.test(only.text))
      return refused(cell, path, twoVoltsOrDecimals(only.text), reading);
    return figureNode(only, measure, path, reading);
  }
  const [unit = ''] = /(?<=[\d\s])(?:mA|A|V|W|milliamps?|amps?|volts?|watts?)$/i.exec(cell.text) ?? [];
  const items = parts.map((part, index) => {
    const text = /^[\d.,]+$/.test(part.text) ? `${part.text} ${unit}`.trim() : part.text;
    return figureNode({ ...part, text }, measure, [...path, index], reading);
  });
  return { kind: 'list', offset: cell.offset, items };
}

function twoVoltsOrDecimals(text: string): Words {
  const [first = '', second = ''] = text.replace(/\s*V$/i, '').split(',');
  return {
    message: `found ${quoted(text)}, which may mean ${first}.${second} V, or ${first} V and ${second} V.`,
    remedy: `Write ${first}.${second} for one voltage, or ${first}/${second} for two.`,
  };
}

/** What stands between slashes, each without blanks around it. */
export function splitCell({ text, offset }: PlacedCell): readonly PlacedCell[] {
  let start = 0;
  return text.split('/').map((part) => {
    const blanks = part.length - part.trimStart().length;
    const piece: PlacedCell = { text: part.trim(), offset: offset + start + blanks };
    start += part.length + 1;
    return piece;
  });
}
