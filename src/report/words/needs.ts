import { takesNothingElse } from '../../domain/own-adapter.js';
import type { Pedal } from '../../domain/pedal.js';
import { decimalOfThousandths } from '../../domain/quantities.js';
import { connectorText } from './connector-words.js';
import type { Speech } from './speech.js';
import { listText, voltsText } from './words.js';

/** What a pedal asks for: "24 V DC, 2000 mA, centre-negative, inlet 2.1 mm barrel, an output of its own". */
export function needsText({ marks }: Speech, pedal: Pedal): string {
  if (takesNothingElse(pedal)) return 'the adapter that it came with';
  const { accepts, draw, power, polarity, inlet, ground, alone } = pedal;
  const volts =
    accepts.kind === 'range'
      ? `${decimalOfThousandths(accepts.from)}${marks.dash}${voltsText(accepts.to)}`
      : listText(accepts.millivolts.map(voltsText), 'or');
  const figures =
    draw.kind === 'flat'
      ? `${decimalOfThousandths(draw.microamps)} mA`
      : [...draw.microamps].map(([at, drawn]) => `${decimalOfThousandths(drawn)} mA at ${voltsText(at)}`).join(', ');
  const needs = [`${volts} ${power}`, figures];
  if (polarity !== null) needs.push(polarity);
  needs.push(`inlet ${connectorText(inlet)}`);
  if (ground === 'positive') needs.push('positive ground');
  if (alone) needs.push('an output of its own');
  return needs.join(', ');
}
