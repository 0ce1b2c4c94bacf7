import type { Entry } from './entry.js';
import type { Report } from '../../domain/finding.js';
import { quoted } from '../../domain/shown-text.js';

/** A field that bears on safety: stated, or taken from the file's own `assume` block. */
export type AssumedFigure<Value> = { readonly value: Value; readonly assumed: boolean };

/** Where else a field may come from; null for gear, which no `assume` block fills. */
export type Assumptions<Fields> = Entry<Fields> | null;

/**
 * A field that has no silent default. Null when it is missing from both places, which is then reported, or when it was
 * reported already. `whose` is the name of what it
 * belongs to, `readOff` completes the remedy "Read it off …".
 */
export function safetyFigure<Fields, Assumed, Field extends keyof Fields & keyof Assumed & string>(
  entry: Entry<Fields>,
  assumptions: Assumptions<Assumed>,
  field: Field,
  words: { readonly whose: string | undefined; readonly allowed: string; readonly readOff: string },
  report: Report,
): AssumedFigure<NonNullable<Fields[Field]> | NonNullable<Assumed[Field]>> | null {
  const stated: Fields[Field] | undefined = entry.fields[field];
  if (stated !== undefined && stated !== null) return { value: stated, assumed: false };
  if (entry.isBroken(field)) return null;
  const assumed: Assumed[Field] | undefined = assumptions?.fields[field];
  if (assumed !== undefined && assumed !== null) return { value: assumed, assumed: true };
  if (assumptions?.isBroken(field) === true) return null;
  report(entry.spotOf(field), {
    message: `missing${words.whose === undefined ? '' : ` for ${quoted(words.whose)}`}; it bears on safety and has no default. Allowed: ${words.allowed}.`,
    remedy: `Read it off ${words.readOff} and add \`${field}\`${assumptions === null ? '' : ', or add it to `assume`'}.`,
  });
  return null;
}

/** Reports a polarity that is stated for alternating current. */
export function reportPolarityOfAlternating<Fields extends { readonly polarity?: string | undefined }>(
  entry: Entry<Fields>,
  what: 'pedal' | 'bank' | 'inlet',
  report: Report,
): void {
  const polarity = entry.fields.polarity;
  if (polarity === undefined) return;
  report(entry.spotOf('polarity'), {
    message: `found ${polarity}, but the ${what}'s power is AC, which has no polarity.`,
    remedy: 'Remove `polarity`, or write `power: DC` if that is what it is.',
  });
}
