import { quoted } from '../../domain/shown-text.js';
import { typedVolts, type LabelVolts } from './label-figures.js';
import type { PedalToken } from './pedal-tokens.js';

/** The volts that a pedal prefers of those that it takes. */
export function readPreferred(
  tokens: readonly PedalToken[],
  accepted: LabelVolts | null,
  faults: string[],
): { readonly prefers?: number } {
  const [first, second] = tokens.filter(({ kind }) => kind === 'prefers');
  if (first === undefined) return {};
  if (second !== undefined)
    faults.push(`the volts that it prefers are said twice: ${quoted(first.text)} and ${quoted(second.text)}.`);
  const volts = typedVolts(first.text.replaceAll(/^\D+|\s+preferred$/gi, ''));
  const prefers = volts.kind === 'said' ? volts.value.volts : null;
  const fault =
    typeof prefers === 'number' ? misfit(prefers, tokens, accepted) : ': say one voltage, such as prefers 12 V.';
  if (fault !== null) faults.push(`${quoted(first.text)}${fault}`);
  return typeof prefers === 'number' ? { prefers } : {};
}

function misfit(volts: number, tokens: readonly PedalToken[], accepted: LabelVolts | null): string | null {
  const typed = tokens.find(({ kind }) => kind === 'volts')?.text;
  // Volts that are not understood have a fault of their own.
  if (accepted === null) return typed === undefined ? ': say the volts that it takes as well, such as 9-12V.' : null;
  return takes(accepted, volts)
    ? null
    : ` is none of the volts that it takes, ${quoted(typed ?? '')}: write one of those.`;
}

function takes(accepted: LabelVolts, volts: number): boolean {
  if (typeof accepted === 'number') return accepted === volts;
  return 'from' in accepted ? accepted.from <= volts && volts <= accepted.to : accepted.includes(volts);
}
