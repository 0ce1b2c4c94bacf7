import { typedDraw, typedVolts } from './label-figures.js';
import { plainNumber } from './plain-number.js';
import { isUnknown, picked, said, unclear, type Clear, type Typed } from './typed.js';

/** The mains volts that a supply takes. */
export type LabelMains = number | { readonly from: number; readonly to: number };

/** Reads "230 V", "AC 100-240 V ~ 50/60 Hz". */
export function typedMains(text: string): Typed<LabelMains> {
  if (isUnknown(text)) return { kind: 'unknown' };
  const remedy = 'Write 230 V or 100-240 V as it stands at INPUT, or ?.';
  const typed = typedVolts(text.replace(/~|\bAC\b|\d+(?:[/-]\d+)?\s*Hz/gi, ' '));
  // Nothing but signs of AC is no way to say that one does not know.
  if (typed.kind === 'unknown') return unclear(remedy);
  return picked(typed, ({ volts }) => (typeof volts === 'number' || 'from' in volts ? volts : null), remedy);
}

/** What a supply stands on: mains, the watt-hours of a power bank, or what its inlet takes of another supply. */
type LabelInput = { readonly mains: LabelMains } | { readonly wattHours: number } | { readonly inlet: LabelSetting };

/** No mains have so few volts, and no inlet so many. */
const fewestMainsVolts = 80;

/** Reads mains volts, "74 Wh" of a power bank, or "12 V DC 600 mA" of a supply that hangs on another one. */
export function typedInput(text: string): Typed<LabelInput> {
  const wattHours = /Wh\s*$/i.test(text) ? Number(plainNumber(text, 'Wh')) : null;
  if (wattHours !== null) return wattHours > 0 ? said({ wattHours }) : unclear('Write the watt-hours such as 74 Wh.');
  const mains = typedMains(text);
  if (mains.kind === 'said' && leastOf(mains.value) < fewestMainsVolts) {
    const inlet = typedSetting(text);
    return inlet.kind === 'said'
      ? said({ inlet: inlet.value })
      : unclear('Of a supply that hangs on another one write the volts and the current that it takes: 12 V DC 600 mA.');
  }
  return picked(
    mains,
    (value) => ({ mains: value }),
    'Write 230 V or 100-240 V as it stands at INPUT, of a power bank 74 Wh, of one that hangs on another supply 12 V DC 600 mA, or ?.',
  );
}

const leastOf = (mains: LabelMains): number => (typeof mains === 'number' ? mains : mains.from);

/** What one output gives at most. */
export type LabelSetting = {
  readonly volts: number;
  readonly milliamps: number;
  /** Null when it does not say. */
  readonly power: 'DC' | 'AC' | null;
};

/** Reads "9 V 400 mA", "9V ⎓ 0.4 A". Without volts and current a setting is nothing. */
export function typedSetting(text: string): Clear<LabelSetting> {
  const remedy =
    'Write the volts and the most current of one output, such as 9 V 400 mA. Without them it is of no use.';
  const typed = typedVolts(text);
  if (typed.kind !== 'said') return unclear(remedy);
  const { volts, power, draw } = typed.value;
  if (typeof volts !== 'number' || draw === null) return unclear(remedy);
  const current = typedDraw(draw, volts);
  return current.kind === 'said' ? said({ volts, milliamps: current.value.milliamps, power }) : unclear(remedy);
}

/** What all outputs of a supply give together. */
export type LabelTotal = { readonly milliamps: number } | { readonly watts: number };

/** Reads "1800 mA", "1.8 A", "18 W"; "none" where nothing is stated. */
export function typedTotal(text: string): Typed<LabelTotal> {
  if (isUnknown(text) || /^(none|no)$/i.test(text.trim())) return { kind: 'unknown' };
  const watts = /W\s*$/i.test(text) ? plainNumber(text, 'W') : null;
  if (watts !== null && Number(watts) > 0) return said({ watts: Number(watts) });
  return picked(
    typedDraw(text, null),
    ({ milliamps }) => ({ milliamps }),
    'Write 1800 mA, 1.8 A or 18 W; or none when nothing is stated.',
  );
}
