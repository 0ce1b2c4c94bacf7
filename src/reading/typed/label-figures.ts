import { decimalOfThousandths, thousandths } from '../../domain/quantities.js';
import { plainNumber } from './plain-number.js';
import { rangeEnds } from './range-ends.js';
import { isUnknown, picked, said, unclear, type Typed } from './typed.js';

/** The volts of a label: one voltage, several, or a range. */
export type LabelVolts = number | readonly number[] | { readonly from: number; readonly to: number };

/** Volts off a label, and what stood beside them. */
type VoltsBesides = {
  readonly volts: LabelVolts;
  /** Null when it does not say. */
  readonly power: 'DC' | 'AC' | null;
  /** The current or power as it was typed; null when there was none. */
  readonly draw: string | null;
};

const direct = /⎓|\bDC\b|(?<=\d\s?V)DC\b/gi;
const alternating = /[~∼]|\bAC\b|(?<=\d\s?V)AC\b/gi;
const current = /(\d+(?:[.,]\d+)?)\s*(mA|A|W|VA|milliamps?|amps?|watts?)(?![\p{L}])/iu;

/** Reads "9V", "9 V DC", "9-18V", "9 or 18 V", "9V ⎓ 300 mA". */
export function typedVolts(text: string): Typed<VoltsBesides> {
  if (isUnknown(text)) return { kind: 'unknown' };
  const isDirect = text.search(direct) >= 0;
  const isAlternating = text.search(alternating) >= 0;
  if (isDirect && isAlternating)
    return unclear('It cannot be DC and AC at once: write the one that the inlet is marked with.');
  const draw = current.exec(text)?.[0] ?? null;
  const rest = text
    .replace(/[()]|\bmax\b\.?/gi, ' ')
    .replace(current, ' ')
    .replace(direct, ' ')
    .replace(alternating, ' ')
    .trim();
  const volts = voltsIn(rest.replace(/[,;@=:\s]+$/, '').replace(/^[@=:\s]+/, ''));
  if (volts === null) return unclear('Write volts such as 9 V, 9-18 V or 9/12 V, or ? if you do not know.');
  return said({ volts, power: isDirect ? 'DC' : isAlternating ? 'AC' : null, draw });
}

/** Reads a single voltage. */
export const typedVoltage = (text: string, remedy: string): Typed<number> =>
  picked(typedVolts(text), ({ volts }) => (typeof volts === 'number' ? volts : null), remedy);

function voltsIn(text: string): LabelVolts | null {
  const ends = rangeEnds(text);
  if (ends !== null && isVoltage(ends.from) && isVoltage(ends.to)) {
    const [from, to] = [voltage(ends.from), voltage(ends.to)];
    return from !== null && to !== null && from < to ? { from, to } : null;
  }
  const parts = text.split(/\s*(?:\/|\||;|,\s|\bor\b|\band\b|&)\s*/i).map(voltage);
  const [first, ...others] = parts;
  if (first === undefined || first === null || parts.includes(null)) return null;
  return others.length === 0
    ? first
    : [...new Set(parts.filter((part) => part !== null))].sort((one, two) => one - two);
}

const isVoltage = (text: string): boolean => /^\d+(?:[.,]\d+)?\s*V?$/i.test(text);

/** "9,12" may be one voltage or two: it is neither. */
function voltage(text: string): number | null {
  if (/,\d{2,}/.test(text)) return null;
  const plain = plainNumber(text, 'V');
  const value = plain === null ? NaN : Number(plain);
  return value > 0 && value <= 1000 && thousandths(value) !== null ? value : null;
}

/** A draw off a label. */
export type LabelDraw = {
  readonly milliamps: number;
  /** How it was worked out, such as "2.7 W at 9 V"; null when it was read as it is. */
  readonly workings: string | null;
};

/** Reads "300 mA", "0.3 A", and "2.7 W" by the lowest of the volts, at which the current is the highest. */
export function typedDraw(text: string, volts: LabelVolts | null): Typed<LabelDraw> {
  if (isUnknown(text)) return { kind: 'unknown' };
  if (/^\s*[\d.,]+\s*$/.test(text)) return unclear('Write the unit as well: 300 mA, 0.3 A or 2.7 W.');
  const plain = text.replace(/\bmax\b\.?/gi, '');
  const thousands = thousandsOrDecimals.exec(plain)?.groups;
  if (thousands !== undefined) return unclear(oneOfTwo(thousands));
  const watts = plainNumber(plain.replace(/VA\s*$/i, 'W'), 'W');
  const milliamps = watts === null ? plainNumber(plain, 'mA') : null;
  if (watts !== null)
    return volts === null
      ? unclear('Without the volts, watts do not tell the current: write it in mA, or ?.')
      : fromWatts(Number(watts), lowestVolts(volts));
  const value = Number(milliamps ?? 'NaN');
  if (value > 0 && value <= 100_000 && thousandths(value) !== null) return said({ milliamps: value, workings: null });
  return unclear('Write a current such as 300 mA, 1800 mA or 0.3 A, a power such as 2.7 W, or ? if you do not know.');
}

/** The same of what a pedal draws, which may be a range: of "50-80 mA" it is the greater one. */
export function typedMostDraw(text: string, volts: LabelVolts | null): Typed<LabelDraw> {
  const ends = rangeEnds(text);
  if (ends === null) return typedDraw(text, volts);
  const unit = /[a-z]*$/i.exec(ends.to)?.[0] ?? '';
  const least = typedDraw(/[a-z]$/i.test(ends.from) ? ends.from : `${ends.from} ${unit}`, volts);
  return picked(
    typedDraw(ends.to, volts),
    ({ milliamps }) =>
      least.kind === 'said' && least.value.milliamps < milliamps
        ? { milliamps, workings: `the most of ${text}` }
        : null,
    'Write a range such as 50-80 mA, the smaller one first, or the greater one alone.',
  );
}

/** Nobody writes a current in mA with three decimals, but people group thousands by points, others by commas. */
const thousandsOrDecimals = /^\s*(?<whole>[1-9]\d{0,2})[.,](?<fraction>\d{3})\s*(?:mA|milliamps?)\s*$/i;

function oneOfTwo({ whole = '', fraction = '' }: Readonly<Record<string, string>>): string {
  const thousand = `${whole}${fraction} mA`;
  return `It may mean ${thousand} or ${Number(`${whole}.${fraction}`)} mA: write ${thousand} if that is what it is.`;
}

function lowestVolts(volts: LabelVolts): number {
  if (typeof volts === 'number') return volts;
  return 'from' in volts ? volts.from : Math.min(...volts);
}

/** Rounded up to whole microamps, so that it is never too little. */
function fromWatts(watts: number, volts: number): Typed<LabelDraw> {
  const [milliwatts, millivolts] = [thousandths(watts), thousandths(volts)];
  if (milliwatts === null || millivolts === null || milliwatts <= 0)
    return unclear('Write a power above 0, with at most three decimals.');
  const microamps = Number((BigInt(milliwatts) * 1_000_000n + BigInt(millivolts) - 1n) / BigInt(millivolts));
  if (microamps > 100_000_000) return unclear('That would be more than 100 A. Read it again.');
  return said({ milliamps: Number(decimalOfThousandths(microamps)), workings: `${watts} W at ${volts} V` });
}
