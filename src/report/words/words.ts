import type { LoadNumbers } from '../../domain/load-numbers.js';
import { compareExact, exactly, stepsUp, tenthsDown, type Exact } from '../../domain/load.js';
import type { AssumedOfPart } from '../../domain/part.js';
import type { AssumedOfPedal, Polarity, PolarityOrUnknown } from '../../domain/pedal.js';
import { decimalOfThousandths, type Factor, type Millivolts } from '../../domain/quantities.js';
import { listed as listText } from '../../domain/shown-text.js';
import type { AssumedOfSupply } from '../../domain/supply.js';
import type { Reach } from '../../planning/ask/decisive-labels.js';
import { connectorText } from './connector-words.js';

export { priceText } from '../../domain/money.js';
export { listText };

/** "9 V". */
export const voltsText = (at: Millivolts): string => `${decimalOfThousandths(at)} V`;

/** "120 mA". */
export const milliampsText = (microamps: number): string => `${decimalOfThousandths(microamps)} mA`;

/** What the polarity means at the plug in the hand. */
export const polarityText = (polarity: PolarityOrUnknown): string =>
  ({
    'centre-negative': 'centre-negative (minus on the pin)',
    'centre-positive': 'centre-positive (plus on the pin)',
    unknown: polarityWord('unknown'),
  })[polarity];

/** The polarity by its name, as the trade has it. */
export const polarityWord = (polarity: PolarityOrUnknown): string =>
  polarity === 'unknown' ? 'the polarity that its label says' : polarity;

/** "1 lead", "2 leads"; the plural is the singular with an s unless it is given. */
export const countText = (count: number, singular: string, plural = `${singular}s`): string =>
  `${count} ${count === 1 ? singular : plural}`;

/** "all 6 pedals", "both pedals", "the one pedal". */
export const allText = (count: number, singular: string): string =>
  count === 1 ? `the one ${singular}` : count === 2 ? `both ${singular}s` : `all ${count} ${singular}s`;

/** The text with its first letter in capitals. */
export const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

/** A limit for people: rounded down, from 10 mA on to whole milliamps, so that it never promises too much. */
export const mostText = (microamps: number): string =>
  milliampsText(microamps < 10_000 ? microamps : Math.floor(microamps / 1000) * 1000);

/** Up to what draw a label may read: "166 mA", "1000 mA and more". */
export const reachText = ({ microamps, isMost }: Reach): string => `${mostText(microamps)}${isMost ? ' and more' : ''}`;

/** The text with a full stop, unless it has one. */
export const fullStop = (text: string): string => (text.endsWith('.') ? text : `${text}.`);

/** "output 3", "outputs 5 and 6"; neighbours from three on as "outputs 1–4", with the dash that is given. */
export function outputsText(outputs: readonly number[], dash = '-'): string {
  const [first = 0] = outputs;
  if (outputs.length === 1) return `output ${first}`;
  const run = outputs.length > 2 && outputs.every((output, at) => output === first + at);
  return `outputs ${run ? `${first}${dash}${outputs.at(-1) ?? first}` : listText(outputs.map(String))}`;
}

/** Hours rounded down to a tenth, so that they never promise too much: "5.3". */
export const hoursText = (hours: Exact): string => decimalOfThousandths(tenthsDown(hours));

/** A share as "85 %". */
export const percentText = ({ numerator, denominator }: Factor): string =>
  `${decimalOfThousandths((numerator * 100_000) / denominator)} %`;

/** How full something is: what is planned with its reserve against a limit, both in µA or both in mW. */
export type Meter = { readonly planned: Exact; readonly limit: number; readonly unit: 'mA' | 'W' };

/** What an audit has compared, as a meter shows it. */
export const meterOf = ({ planned, limit, unit }: LoadNumbers): Meter => ({ planned, limit, unit });

/** "216 of 400 mA". The planned side is rounded up, to whole units where the limit is whole, and so never understates. */
export function meterText(meter: Meter): string {
  const { planned, limit } = meterFigures(meter);
  return `${decimalOfThousandths(planned)} of ${decimalOfThousandths(limit)} ${meter.unit}`;
}

/** What is asked for at switch-on: "up to 350 of 400 mA at switch-on". */
export const peakText = (peak: Meter): string => `up to ${meterText(peak)} at switch-on`;

/** Both sides of it in thousandths of its unit. */
export function meterFigures({ planned, limit, unit }: Meter): { readonly planned: number; readonly limit: number } {
  const step = limit % 1000 === 0 && unit === 'mA' ? 1000 : limit % 100 === 0 ? 100 : 1;
  return { planned: stepsUp(planned, step) * step, limit };
}

/** How full, in whole percent rounded up; 100 is exactly full, so what is just short of it is 99. */
export function percentOf({ planned, limit }: Meter): number {
  const percent = stepsUp({ numerator: planned.numerator * 100n, denominator: planned.denominator }, limit);
  return percent === 100 && compareExact(planned, exactly(limit)) < 0 ? 99 : percent;
}

/**
 * The assumed values in words, in a fixed order; empty when there are none. A pedal runs on its power, a supply gives it.
 */
export function assumedText(
  assumed: Omit<AssumedOfPedal, 'polarity'> & AssumedOfSupply & AssumedOfPart,
  does: 'runs on' | 'gives',
): string {
  const { power, polarity, inlet, ground, volts, plug, regulated, fits, gives } = assumed;
  const words = [
    power === undefined ? null : `${does} ${power}`,
    polarity === undefined ? null : outputPolarityText(polarity),
    inlet === undefined ? null : `inlet ${connectorText(inlet)}`,
    ground === undefined ? null : `${ground} ground`,
    volts === undefined ? null : voltsText(volts),
    plug === undefined ? null : `plug ${connectorText(plug)}`,
    regulated === undefined ? null : regulated ? 'regulated' : 'unregulated',
    ...endsTexts(fits, gives),
  ];
  return words.filter((word) => word !== null).join(', ');
}

/** The plugs of a lead. */
function endsTexts(fits: string | undefined, gives: string | undefined): readonly string[] {
  if (fits !== undefined && fits === gives) return [`plug ${connectorText(fits)} at every end`];
  return [
    ...(fits === undefined ? [] : [`plug ${connectorText(fits)} towards the supply`]),
    ...(gives === undefined ? [] : [`plug ${connectorText(gives)} towards the pedal`]),
  ];
}

const outputPolarityText = (polarity: Polarity | 'either'): string =>
  polarity === 'either' ? 'polarity switch' : polarityText(polarity);
