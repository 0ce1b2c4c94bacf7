import { takesNothingElse } from '../../domain/own-adapter.js';
import type { Pedal } from '../../domain/pedal.js';
import { decimalOfThousandths } from '../../domain/quantities.js';
import { connectorText } from './connector-words.js';
import type { Speech } from './speech.js';
import { listText, milliampsText, voltsText } from './words.js';

/** What a pedal asks for: "24 V DC, 2000 mA, centre-negative, inlet 2.1 mm barrel, an output of its own". */
export function needsText({ marks }: Speech, pedal: Pedal): string {
  if (takesNothingElse(pedal)) return 'the adapter that it came with';
  const { accepts, draw, power, polarity, inlet, ground, alone } = pedal;
  const volts =
    accepts.kind === 'range'
      ? `${decimalOfThousandths(accepts.from)}${marks.dash}${voltsText(accepts.to)}`
      : listText(accepts.millivolts.map(voltsText), 'or');
  const needs = [`${volts} ${power}`, drawText(draw)];
  if (polarity !== null) needs.push(polarity);
  needs.push(`inlet ${connectorText(inlet)}`);
  if (ground === 'positive') needs.push('positive ground');
  if (alone) needs.push('an output of its own');
  return needs.join(', ');
}

/** "120 mA", or "120 mA at 9 V, 80 mA at 12 V". */
export const drawText = (draw: Pedal['draw']): string =>
  draw.kind === 'flat'
    ? milliampsText(draw.microamps)
    : [...draw.microamps].map(([at, drawn]) => `${milliampsText(drawn)} at ${voltsText(at)}`).join(', ');
