import { tokensOf } from './pedal-tokens.js';
import { plainNumber } from './plain-number.js';
import { batterySet, voltsOfBattery, type BatteryType } from './source-words.js';
import { said, unclear, type Typed } from './typed.js';

/** Batteries of one type that are owned. */
export type LabelBattery = {
  readonly type: BatteryType;
  /** How many there are. */
  readonly count: number;
  /** What a single one gives. */
  readonly volts: number;
  readonly milliampHours: number;
  /** Whether nothing was said of what it holds, so that it is taken to be as much as such batteries usually do. */
  readonly isUsual: boolean;
};

/** What a battery of the type holds while its volts are good: alkaline ones, counted carefully. */
const usualMilliampHours: Readonly<Record<BatteryType, number>> = { '9V-block': 500, AA: 2000, AAA: 1000 };

const remedy = 'Write how many and which, such as 2 x 9v block or 12 x AA 1.2V 2000 mAh; Enter when there are none.';

/** Reads "2 x 9v block", "9v block 550mAh", "12xAA 1.2 V 2000 mAh"; nothing at all is none. */
export function typedBattery(text: string): Typed<LabelBattery> {
  if (text.trim() === '') return { kind: 'unknown' };
  const held = /(?<![\d.,])\d+(?:[.,]\d+)?\s*m?Ah\b/i.exec(text)?.[0];
  const tokens = tokensOf(held === undefined ? text : text.replace(held, ' '));
  const [battery, second] = tokens.filter(({ kind }) => kind === 'battery');
  const [stated, other] = tokens.filter(({ kind }) => kind === 'volts');
  const set = battery === undefined || second !== undefined ? null : batterySet(battery.text);
  const isMore = other !== undefined || tokens.some(({ kind }) => kind !== 'battery' && kind !== 'volts');
  if (set === null || isMore) return unclear(remedy);
  const volts = stated === undefined ? voltsOfBattery(set.type) : figure(stated.text, 'V');
  const milliampHours = held === undefined ? usualMilliampHours[set.type] : figure(held, 'mAh');
  return volts > 0 && milliampHours > 0
    ? said({ ...set, volts, milliampHours, isUsual: held === undefined })
    : unclear(remedy);
}

/** Zero where it is none. */
const figure = (text: string, unit: 'V' | 'mAh'): number => Number(plainNumber(text, unit) ?? '0');
