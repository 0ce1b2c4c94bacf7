import type { InletDraft } from '../drafts/supply-draft.js';
import { typedLine } from './pedal-line.js';

const clause = /[\s,;]*(?<![\p{L}\p{N}])fed\s+(?:from|by)\s+(?<says>.*)$/iu;

const remedy =
  'Write all that is said at its inlet, behind all else: fed from 5 V 900 mA, then pos, neg or AC, then its plug such as usb-a or 2.1 mm barrel.';

/**
 * What a supply takes that hangs on another one stands behind all that is said of its outputs: "…, fed from 18 V 500 mA neg
 * 2.1 mm barrel". It reads like what a pedal takes, but nothing of it is assumed.
 */
export function inletIn(text: string, faults: string[]): { readonly rest: string; readonly inlet: InletDraft | null } {
  const says = clause.exec(text)?.groups?.['says'];
  if (says === undefined) return { rest: text, inlet: null };
  const typed = typedLine(says, false);
  const inlet = typed.kind === 'unclear' ? null : inletOf(typed.line);
  if (inlet === null) faults.push(...(typed.kind === 'unclear' ? typed.faults : []), remedy);
  return { rest: text.replace(clause, ''), inlet };
}

/** Null where something of it is not said, or more than an inlet has. */
function inletOf({ name: _, notes: _notes, ...said }: Line): InletDraft | null {
  const { volts, draw, inlet: plug, polarity = null, power = polarity === null ? null : 'DC', startup, ...more } = said;
  if (volts === undefined || draw === undefined || plug === undefined || power === null) return null;
  if ((power === 'DC' && polarity === null) || Object.keys(more).length > 0) return null;
  return { volts, milliamps: draw.milliamps, power, plug, polarity, ...(startup !== undefined && { startup }) };
}

type Line = Extract<ReturnType<typeof typedLine>, { kind: 'line' }>['line'];
