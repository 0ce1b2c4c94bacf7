import { quoted } from '../../domain/shown-text.js';
import type { BankDraft } from '../drafts/supply-draft.js';
import { typedDraw, typedVoltage } from './label-figures.js';

/** Outputs that are alike, as a line says them. */
export type TypedBank = Pick<BankDraft, 'outputs' | 'isolated' | 'power'> & {
  readonly settings: readonly { readonly volts: number; readonly milliamps: number }[];
};

/** A piece of a line with outputs in it. */
export type OutputPiece = {
  /** What stands before the outputs. */
  readonly called: string;
  /** What stands behind them. */
  readonly words: readonly string[];
  /** Null where its volts or currents are not clear. */
  readonly bank: TypedBank | null;
};

const number = String.raw`\d+(?:[.,]\d+)?`;
const several = String.raw`${number}(?:\s*(?:/|\||\bor\b)\s*${number})*`;
const unit = String.raw`\s*(?:mA|A)`;
const counted = String.raw`(?:\bout(?:put)?s?\s+)?\b(?:(?<from>\d{1,2})\s*(?:-|–|to|and|&)\s*)?(?<outputs>\d{1,2})(?:\s*[x×:]\s*|\s+)`;
const bankShape = new RegExp(
  String.raw`^(?<name>.*?)(?:${counted})?(?<kind>(?:(?:isolated|shared|switch(?:able|ed)|selectable|out(?:put)?s?|of)\s+)*)` +
    String.raw`(?<volts>${several}\s*V)\s*(?<power>DC|AC|⎓|~)?,?\s+(?<current>${several}(?:${unit})?)(?![\p{L}\d])(?<words>.*)$`,
  'iu',
);

/** "300, 250, 150 mA" of one output, but not what all give together. */
const currents = new RegExp(String.raw`\b(?:\d{2,4},\s+)+\d{2,4}${unit}\b(?!\s+(?:in all|total|all)\b)`, 'giu');
/** A comma between the volts and the current of an output parts nothing. */
const within = new RegExp(String.raw`(?<=\dV|\d V)(\s*(?:DC|AC))?,\s+(?=${several}${unit})`, 'giu');
/** A comma before the last word on outputs parts nothing either. */
const lastWord = /,\s+(?=(?:isolated|shared)\s*(?:[,;]|$))/giu;
const between = /;|,(?!\d)|(?<!\b\d{1,2})\s+and\s+(?=\d{1,2}(?!\d))/iu;

/** A line in pieces that say one thing each. */
export const piecesOfSupply = (text: string): readonly string[] =>
  text
    .replaceAll(currents, (list) => list.replaceAll(/,\s+/g, '/'))
    .replaceAll(within, '$1 ')
    .replaceAll(lastWord, ' ')
    .split(between)
    .map((piece) => piece.trim());

/** Reads a piece such as "6 isolated 9v 150" beside so many outputs before it; null where it is none of outputs. */
export function outputPiece(piece: string, before: number, faults: string[]): OutputPiece | null {
  const groups = bankShape.exec(piece)?.groups;
  if (groups === undefined) return null;
  const words = (groups['words'] ?? '').split(/\s+/);
  const called = (groups['name'] ?? '').trim();
  if (groups['outputs'] === undefined && /\bout(?:put)?s\b/i.test(groups['kind'] ?? ''))
    faults.push('Write how many outputs there are in figures, such as 8 outputs.');
  return {
    called,
    words: words.filter((word) => !isolation.test(word)),
    bank: bankOf(groups, { before, kind: [groups['kind'], ...words].join(' '), faults }),
  };
}

const isolation = /^(?:isolated|shared)$/i;

type Beside = { readonly before: number; readonly kind: string; readonly faults: string[] };

/** Outputs with each setting's volts and current. */
function bankOf(
  { from, volts = '', current = '', power = '', outputs: last = '1' }: Readonly<Record<string, string | undefined>>,
  { before, kind, faults }: Beside,
): TypedBank | null {
  const settings = settingsOf(volts, current);
  if (typeof settings === 'string') {
    faults.push(settings);
    return null;
  }
  if (from !== undefined && Number(from) !== before + 1)
    faults.push(`Tell the outputs in their order: ${before + 1} comes before ${from}.`);
  const outputs = from === undefined ? Number(last) : Number(last) - Number(from) + 1;
  if (outputs < 1) faults.push('A supply has at least one output.');
  const unsaid = outputs === 1 ? true : null;
  const said = /\b(?:isolated|shared)\b/i.exec(kind)?.[0];
  const isIsolated = said === undefined ? unsaid : /isolated/i.test(said);
  return { outputs, isolated: isIsolated, power: /AC|~/i.test(power) ? 'AC' : 'DC', settings };
}

/** What an output gives at each of its volts; a sentence where that is not clear. */
function settingsOf(volts: string, current: string): TypedBank['settings'] | string {
  const [, figures = '', unitSaid = 'mA'] = /^(.*?)\s*(mA|A)?$/i.exec(current) ?? [];
  const draws = eachOf(figures, unitSaid).map((one) => typedDraw(one, null));
  const read = eachOf(volts.replace(/\s*V$/i, ''), 'V').map((one) => typedVoltage(one, ''));
  if (draws.length !== read.length)
    return `${quoted(volts)} and ${quoted(current)}: write a current for each of the volts.`;
  const settings = read.flatMap((one, at) => {
    const draw = draws[at];
    return one.kind === 'said' && draw?.kind === 'said' ? [{ volts: one.value, milliamps: draw.value.milliamps }] : [];
  });
  return settings.length < read.length
    ? `${quoted(volts)} and ${quoted(current)}: write them such as 9v 150, or 9v 0.15 A.`
    : settings;
}

const eachOf = (text: string, unitSaid: string): readonly string[] =>
  text.split(/\/|\||\bor\b/i).map((one) => `${one.trim()} ${unitSaid}`);
