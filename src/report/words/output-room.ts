import { decimalOfThousandths } from '../../domain/quantities.js';
import type { OutputUse, UnitUse } from './usage.js';
import { freeSettings, groundHolder, heldText } from './free-outputs.js';
import { bankOf } from './inventory.js';
import { leftOf, mostAlone } from './spare-units.js';
import type { Speech } from './speech.js';
import { listText, meterText, peakText, voltsText } from './words.js';

/** What hangs on an output of a unit in use, or what more could: in sentences. */
export function roomTexts(speech: Speech, unit: UnitUse, output: number): readonly string[] {
  const use = unit.outputs.find(({ outputs }) => outputs.includes(output));
  return [use === undefined ? freeText(speech, unit, output) : carriedText(speech, use), ...totalTexts(unit)];
}

/** "It is free: one more pedal of up to 125 mA at 9 V, or up to 83 mA at 12 V." */
function freeText({ board, inventory }: Speech, unit: UnitUse, output: number): string {
  const bank = bankOf(unit.supply, output);
  const holder = groundHolder(inventory, unit, bank);
  if (holder !== null) return `Nothing hangs on it, nor can it: ${heldText(inventory, holder)}.`;
  const offers = freeSettings(unit, bank).map(
    ({ rating, millivolts }) => `up to ${wholeText(mostAlone(rating, board))} mA at ${voltsText(millivolts)}`,
  );
  return `It is free: one more pedal that draws ${listText(offers, 'or')}.`;
}

function carriedText({ inventory }: Speech, { feeds, meter, peak }: OutputUse): string {
  const names = listText(feeds.map(({ pedal }) => inventory.pedalName(pedal)));
  const start = peak === null ? '' : `, ${peakText(peak)}`;
  return meter === null ? `It feeds ${names}.` : `It feeds ${names}: ${meterText(meter)} with the reserve${start}.`;
}

const totalTexts = ({ totals }: UnitUse): readonly string[] =>
  totals.map(
    ({ bank, meter }) =>
      `${bank === null ? 'The whole supply' : 'Its bank'} has ${wholeText(leftOf(meter))} ${meter.unit} left of its total.`,
  );

/** Thousandths as whole units, rounded down so that it never promises too much. */
const wholeText = (thousandths: number): string => decimalOfThousandths(Math.floor(thousandths / 1000) * 1000);
