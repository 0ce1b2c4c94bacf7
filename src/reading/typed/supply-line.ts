import { listed, quoted } from '../../domain/shown-text.js';
import type { Polarity } from '../../domain/pedal.js';
import type { SupplyDraft } from '../drafts/supply-draft.js';
import { idFromName } from '../resolve/resolve-id.js';
import { connectorsIn } from './connectors.js';
import { inletIn } from './inlet-line.js';
import { typedVolts } from './label-figures.js';
import { outputPiece, piecesOfSupply, type TypedBank } from './output-line.js';
import { typedInput, typedMains, typedTotal } from './supply-figures.js';

/** A supply as it was typed on one line. */
export type SupplyLine =
  | {
      readonly kind: 'supply';
      readonly draft: SupplyDraft;
      /** What was not said and taken as most supplies have it; each is to be read off the label. */
      readonly taken: readonly TakenAs[];
    }
  /** A sentence for each thing that stands in the way. */
  | { readonly kind: 'unclear'; readonly faults: readonly string[] };

export type TakenAs = 'polarity' | 'plug' | 'regulated';

/** What is said of all outputs. */
type Said = {
  polarity?: Polarity | 'either';
  plug?: string;
  switch?: 'each' | 'together';
  regulated?: boolean;
  openCircuitVolts?: number;
  total?: SupplyDraft['total'];
  mains?: SupplyDraft['mains'];
  /** Of a power bank, in watt-hours. */
  charge?: number;
};

/**
 * Reads a supply such as "old box 6 isolated 9v 150, 2 isolated 9/12/18v 300/250/150, total 1500": a name, then outputs that
 * are alike, each kind with its volts and what one output gives. Numbers without a unit behind the volts are milliamps. What
 * stands behind "fed from" is what its inlet takes of another supply.
 */
export function supplyLine(text: string): SupplyLine {
  const faults: string[] = [];
  const strange: string[] = [];
  const banks: TypedBank[] = [];
  const { rest: whole, inlet } = inletIn(text, faults);
  const { rest, said } = sourceAndPlugIn(whole, faults);
  let name = '';
  for (const [at, piece] of piecesOfSupply(rest).entries()) {
    const before = banks.reduce((sum, { outputs }) => sum + outputs, 0);
    const outputs = outputPiece(piece, before, faults);
    if (outputs === null) {
      if (at === 0) name = piece;
      else saySomething(piece, said, strange);
      continue;
    }
    if (name === '') name = outputs.called;
    else if (outputs.called !== '') strange.push(outputs.called);
    if (outputs.bank !== null) banks.push(outputs.bank);
    for (const word of outputs.words) saySomething(word, said, strange);
  }
  const draft = draftOf(name, banks, { ...said, inlet });
  faults.push(...notUnderstood(strange), ...lacksOf(draft.draft));
  return faults.length > 0 ? { kind: 'unclear', faults } : { kind: 'supply', ...draft };
}

/** What no supply can be without, and what no supply can be at once. */
const lacksOf = ({ name, banks, mains, charge, inlet }: SupplyDraft): readonly string[] => [
  ...(idFromName(name) === null ? ['Begin with what it is called, such as old box 6 isolated 9v 150.'] : []),
  ...(inlet !== null && (mains !== null || charge !== null)
    ? ['It hangs on another supply, on the mains or is a power bank: leave out what it is not.']
    : []),
  ...(banks.length === 0 ? ['Write the volts and the most current of an output, such as 9v 500.'] : []),
];

/** What a power bank holds may stand anywhere, and so may the plug of the outputs: no other figures are like these. */
function sourceAndPlugIn(text: string, faults: string[]): { readonly rest: string; readonly said: Said } {
  const { connectors, rest } = connectorsIn(text);
  const [plug, other] = connectors;
  if (other !== undefined && other !== plug) faults.push('Write one plug, which all its own leads have.');
  const { charge, rest: left } = chargeIn(rest, faults);
  return { rest: left, said: { ...charge, ...(plug === undefined ? {} : { plug }) } };
}

function chargeIn(text: string, faults: string[]): { readonly rest: string; readonly charge: Pick<Said, 'charge'> } {
  const held = /(?<![\d.,])\d+(?:[.,]\d+)?\s*Wh\b/i.exec(text)?.[0];
  if (held === undefined) return { rest: text, charge: {} };
  const read = typedInput(held);
  const charge = read.kind === 'said' && 'wattHours' in read.value ? read.value.wattHours : null;
  if (charge === null) faults.push(`${quoted(held)}: write the watt-hours such as 74 Wh.`);
  return { rest: text.replace(held, ' '), charge: charge === null ? {} : { charge } };
}

/** One sentence for all of them: a line that goes wrong early leaves many words behind. */
function notUnderstood(strange: readonly string[]): readonly string[] {
  const words = [...new Set(strange)].map(quoted);
  if (words.length === 0) return [];
  const named = `${listed(words, 'and')} ${words.length === 1 ? 'is' : 'are'} not understood.`;
  const banks = '6 isolated 9v 150, 2 isolated 9/12/18v 300/250/150';
  return [`${named} Say it such as ${banks}, total 1500, mains 230, pos, unregulated 13v.`];
}

/** Words that say one thing of all outputs. */
const words: Readonly<Record<string, Said>> = {
  neg: { polarity: 'centre-negative' },
  negative: { polarity: 'centre-negative' },
  'centre-negative': { polarity: 'centre-negative' },
  pos: { polarity: 'centre-positive' },
  positive: { polarity: 'centre-positive' },
  'centre-positive': { polarity: 'centre-positive' },
  either: { polarity: 'either' },
  regulated: { regulated: true },
  stabilised: { regulated: true },
  each: { switch: 'each' },
  together: { switch: 'together' },
  // What an output with several volts is anyway.
  switchable: {},
  switched: {},
  '': {},
};

function saySomething(piece: string, said: Said, strange: string[]): void {
  const word = Object.hasOwn(words, piece.toLowerCase()) ? words[piece.toLowerCase()] : undefined;
  const figure = word === undefined ? figureIn(piece) : undefined;
  if (figure === null) strange.push(piece);
  Object.assign(said, word, figure);
}

/** Figures of the whole supply; null where it is none. */
function figureIn(piece: string): Said | null {
  const [, total] = /^(?:total|in all|all)\s+(.+)$/i.exec(piece) ?? /^(.+?)\s+(?:total|in all|all)$/i.exec(piece) ?? [];
  const [, mains] = /^mains\s+(.+)$/i.exec(piece) ?? /^(.+?)\s+mains$/i.exec(piece) ?? [];
  const [, open] = /^(?:unregulated|not regulated)\s+(.+)$/i.exec(piece) ?? [];
  if (total !== undefined) {
    const read = typedTotal(/^[\d.,]+$/.test(total) ? `${total} mA` : total);
    return read.kind === 'said' ? { total: read.value } : null;
  }
  if (mains !== undefined) {
    const read = typedMains(mains);
    return read.kind === 'said' ? { mains: read.value } : null;
  }
  const read = open === undefined ? null : typedVolts(open);
  return read?.kind === 'said' && typeof read.value.volts === 'number'
    ? { regulated: false, openCircuitVolts: read.value.volts }
    : null;
}

function draftOf(
  name: string,
  banks: readonly TypedBank[],
  said: Said & Pick<SupplyDraft, 'inlet'>,
): { readonly draft: SupplyDraft; readonly taken: readonly TakenAs[] } {
  const { polarity, plug = 'barrel-2.1', regulated, openCircuitVolts = null, total = null } = said;
  const { mains = null, charge = null, inlet } = said;
  const hasDirect = banks.some(({ power }) => power === 'DC');
  const taken: readonly (TakenAs | false)[] = [
    hasDirect && polarity === undefined && 'polarity',
    said.plug === undefined && 'plug',
    hasDirect && regulated === undefined && 'regulated',
  ];
  const draft: SupplyDraft = {
    ...{ name, price: null, mains, charge, inlet, total, regulated: hasDirect ? (regulated ?? true) : null },
    banks: banks.map(({ settings, power, ...bank }) => ({
      ...bank,
      ...{ power, plug, polarity: power === 'AC' ? null : (polarity ?? 'centre-negative') },
      switch: settings.length > 1 ? (said.switch ?? 'each') : null,
      settings: settings.map((one) => ({ ...one, openCircuitVolts })),
      joins: [],
    })),
  };
  return { draft, taken: taken.filter((one) => one !== false) };
}
