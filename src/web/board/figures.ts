import { listed } from '../../domain/shown-text.js';
import { kindByName } from '../../reading/typed/kind-by-name.js';
import { batterySetText } from '../../report/words/battery-words.js';
import type { StatedPedal } from '../document/board-data.js';
import type { Data } from '../../reading/text/data.js';

/** What a label says, as short as on a label: "9 or 18 V", "300 mA", "plus on the pin". */
export function figuresOf({ name, stated }: StatedPedal): readonly string[] {
  const { volts, prefers, milliamps, figure, startup, polarity, power, ground, adapter, battery } = stated;
  const kind = kindByName(name, undefined);
  const trait = (key: 'digital' | 'highGain', words: string): string | false =>
    stated[key] === true && (kind?.[key] === true ? `${words}, as its name says` : words);
  return [
    voltsText(volts),
    typeof prefers === 'number' && `prefers ${prefers} V`,
    power === 'AC' && 'AC',
    drawText(milliamps, figure),
    typeof startup === 'number' && `${startup} mA when it starts`,
    polarity === 'centre-positive' && 'plus on the pin',
    polarity === 'centre-negative' && 'minus on the pin',
    ground === 'positive' && 'positive ground',
    trait('digital', 'digital'),
    trait('highGain', 'high gain'),
    stated['alone'] === true && 'alone on an output',
    adapter !== undefined && 'its own adapter',
    batteryText(battery),
    stated['later'] === true && 'bought later',
  ].filter((text) => typeof text === 'string');
}

function voltsText(volts: unknown): string | false {
  if (typeof volts === 'number') return `${volts} V`;
  if (Array.isArray(volts)) return `${listed(volts.map(String), 'or')} V`;
  if (typeof volts !== 'object' || volts === null) return false;
  const { from, to } = volts as Data;
  return `${String(from)} to ${String(to)} V`;
}

function drawText(milliamps: unknown, figure: unknown): string | false {
  const guess = figure === 'guess' ? ', a guess' : '';
  if (typeof milliamps === 'number') return `${milliamps} mA${guess}`;
  if (typeof milliamps !== 'object' || milliamps === null) return false;
  const draws = Object.entries(milliamps).map(([volts, draw]) => `${String(draw)} mA at ${volts} V`);
  return `${draws.join(', ')}${guess}`;
}

function batteryText(battery: unknown): string | false {
  if (typeof battery !== 'object' || battery === null) return false;
  const { type, count } = battery as Data;
  return batterySetText(String(type), Number(count));
}
