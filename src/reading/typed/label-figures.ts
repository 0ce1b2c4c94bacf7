import { decimalOfThousandths, thousandths } from '../../domain/quantities.js';
import { plainNumber } from './plain-number.js';

/** The volts of a label: one voltage, several, or a range. */
export type LabelVolts = number | readonly number[] | { readonly from: number; readonly to: number };

/** What was typed off a label about volts, and what stood beside them. */
export type TypedVolts =
  | {
      readonly kind: 'volts';
      readonly volts: LabelVolts;
      /** Null when it does not say. */
      readonly power: 'DC' | 'AC' | null;
      /** The current or power as it was typed; null when there was none. */
      readonly draw: string | null;
    }
  | { readonly kind: 'unknown' }
  | { readonly kind: 'unclear'; readonly remedy: string };

/** Words for not knowing; nothing at all says the same. */
const unknown = /^(?:|\?+|-+|n\/a|(?:i )?do(?:n['’]?t| not) know|dunno|unknown|not sure|no idea)$/i;
export const isUnknown = (text: string): boolean => unknown.test(text.trim());

const direct = /⎓|\bDC\b|(?<=\d\s?V)DC\b/gi;
const alternating = /[~∼]|\bAC\b|(?<=\d\s?V)AC\b/gi;
const current = /(\d+(?:[.,]\d+)?)\s*(mA|A|W|VA|milliamps?|amps?|watts?)(?![\p{L}])/iu;

/** Reads "9V", "9 V DC", "9-18V", "9 or 18 V", "9V ⎓ 300 mA". */
export function typedVolts(text: string): TypedVolts {
  if (isUnknown(text)) return { kind: 'unknown' };
  const isDirect = text.search(direct) >= 0;
  const isAlternating = text.search(alternating) >= 0;
  if (isDirect && isAlternating)
    return { kind: 'unclear', remedy: 'It cannot be DC and AC at once: write the one that the inlet is marked with.' };
  const draw = current.exec(text)?.[0] ?? null;
  const rest = text
    .replace(/[()]|\bmax\b\.?/gi, ' ')
    .replace(current, ' ')
    .replace(direct, ' ')
    .replace(alternating, ' ')
    .trim();
  const volts = voltsIn(rest.replace(/[,;@=:\s]+$/, '').replace(/^[@=:\s]+/, ''));
  if (volts === null)
    return { kind: 'unclear', remedy: 'Write volts such as 9 V, 9-18 V or 9/12 V, or ? if you do not know.' };
  return { kind: 'volts', volts, power: isDirect ? 'DC' : isAlternating ? 'AC' : null, draw };
}

function voltsIn(text: string): LabelVolts | null {
  const range = /^(\d+(?:[.,]\d+)?)\s*V?\s*(?:-|–|—|\.\.\.?|…|to)\s*(\d+(?:[.,]\d+)?)\s*V?$/iu.exec(text);
  if (range !== null) {
    const [from, to] = [voltage(range[1] ?? ''), voltage(range[2] ?? '')];
    return from !== null && to !== null && from < to ? { from, to } : null;
  }
  const parts = text.split(/\s*(?:\/|\||;|,\s|\bor\b|\band\b|&)\s*/i).map(voltage);
  const [first, ...others] = parts;
  if (first === undefined || first === null || parts.includes(null)) return null;
  return others.length === 0
    ? first
    : [...new Set(parts.filter((part) => part !== null))].sort((one, two) => one - two);
}

/** "9,12" may be one voltage or two: it is neither. */
function voltage(text: string): number | null {
  if (/,\d{2,}/.test(text)) return null;
  const plain = plainNumber(text, 'V');
  const value = plain === null ? NaN : Number(plain);
  return value > 0 && value <= 1000 && thousandths(value) !== null ? value : null;
}

/** What was typed off a label about the draw. */
export type TypedDraw =
  | {
      readonly kind: 'milliamps';
      readonly milliamps: number;
      /** How it was worked out, where it was. */ readonly workings: string | null;
    }
  | { readonly kind: 'unknown' }
  | { readonly kind: 'unclear'; readonly remedy: string };

/** Reads "300 mA", "0.3 A", and "2.7 W" by the lowest of the volts, at which the current is the highest. */
export function typedDraw(text: string, volts: LabelVolts | null): TypedDraw {
  if (isUnknown(text)) return { kind: 'unknown' };
  if (/^\s*[\d.,]+\s*$/.test(text))
    return { kind: 'unclear', remedy: 'Write the unit as well: 300 mA, 0.3 A or 2.7 W.' };
  const plain = text.replace(/\bmax\b\.?/gi, '');
  const watts = plainNumber(plain.replace(/VA\s*$/i, 'W'), 'W');
  const milliamps = watts === null ? plainNumber(plain, 'mA') : null;
  if (watts !== null)
    return volts === null
      ? { kind: 'unclear', remedy: 'Without the volts, watts do not tell the current: write it in mA, or ?.' }
      : fromWatts(Number(watts), lowestVolts(volts));
  const value = Number(milliamps ?? 'NaN');
  if (value > 0 && value <= 100_000 && thousandths(value) !== null)
    return { kind: 'milliamps', milliamps: value, workings: null };
  return {
    kind: 'unclear',
    remedy: 'Write a current such as 300 mA, 1800 mA or 0.3 A, a power such as 2.7 W, or ? if you do not know.',
  };
}

export const lowestVolts = (volts: LabelVolts): number => {
  if (typeof volts === 'number') return volts;
  return 'from' in volts ? volts.from : Math.min(...volts);
};

/** Rounded up to whole microamps, so that it is never too little. */
function fromWatts(watts: number, volts: number): TypedDraw {
  const [milliwatts, millivolts] = [thousandths(watts), thousandths(volts)];
  if (milliwatts === null || millivolts === null || milliwatts <= 0)
    return { kind: 'unclear', remedy: 'Write a power above 0, with at most three decimals.' };
  const microamps = Number((BigInt(milliwatts) * 1_000_000n + BigInt(millivolts) - 1n) / BigInt(millivolts));
  if (microamps > 100_000_000) return { kind: 'unclear', remedy: 'That would be more than 100 A. Read it again.' };
  const milliamps = Number(decimalOfThousandths(microamps));
  return { kind: 'milliamps', milliamps, workings: `${watts} W at ${volts} V` };
}
