import type { ChoosingAim } from '../../../src/domain/aim.js';
import { perCountedTier, type PerCountedTier } from '../../../src/domain/counted-tiers.js';

/** A board and a catalogue as a person writes them, and the answer that the person has worked out by hand. */
export type Case = {
  /** What the case shows, as a sentence. */
  readonly says: string;
  /** YAML list items, one a line. */
  readonly pedals: readonly string[];
  /** YAML list items, one a line. */
  readonly supplies: readonly string[];
  readonly parts?: readonly string[];
  readonly batteries?: readonly string[];
  /** Fields of the policy that differ from the usual ones, each as YAML; null leaves the field out. */
  readonly policy?: Readonly<Record<string, string | null>>;
  /** More of the board: owned, gear. */
  readonly board?: string;
  /** EUR when left out. */
  readonly currency?: string;
  readonly aim?: ChoosingAim;
  readonly partial?: boolean;
  readonly answer: Expected;
};

/** Cases that have some of it in common: what each says, its answer, and what else it has. */
export const sharing = (
  common: Omit<Partial<Case>, 'says' | 'answer'>,
  ...each: readonly (readonly [says: string, answer: Expected, more?: Omit<Partial<Case>, 'says' | 'answer'>])[]
): readonly Case[] =>
  each.map(([says, answer, more]) => ({ pedals: [], supplies: [], ...common, ...more, says, answer }));

export type Expected =
  | {
      readonly status: 'proven';
      readonly score: PerCountedTier<number> & {
        readonly unpowered: number;
        readonly money: string;
        readonly exposed: number;
        readonly bricks: number;
        readonly moved: null;
      };
      /** Whatever is stated here must be so; the rest of the result is free. */
      readonly also: Also;
    }
  | { readonly status: 'impossible'; readonly reasons: readonly Readonly<Record<string, unknown>>[] };

export type Also = {
  /** Units bought, by id: all that is bought. */
  readonly supplies?: Readonly<Record<string, number>>;
  readonly parts?: Readonly<Record<string, number>>;
  /** Fields of feeds, by pedal. */
  readonly feeds?: Readonly<Record<string, Readonly<Record<string, unknown>>>>;
  readonly exposed?: readonly string[];
  readonly unpowered?: readonly string[];
  readonly confirm?: readonly unknown[];
};

type Figures = Partial<
  PerCountedTier<number> & {
    readonly unpowered: number;
    readonly exposed: number;
    readonly bricks: number;
  }
>;

/** A plan for this money; one brick and nothing amiss unless told otherwise. */
export const plan = (money: string, figures: Figures = {}, also: Also = {}): Expected => ({
  status: 'proven',
  score: { unpowered: 0, money, exposed: 0, bricks: 1, ...perCountedTier(() => 0), ...figures, moved: null },
  also,
});

/** No plan exists; each of these descriptions fits one of the reasons. */
export const impossible = (...reasons: readonly Readonly<Record<string, unknown>>[]): Expected => ({
  status: 'impossible',
  reasons,
});

/** A supply that leaves to the catalogue's assumptions what it can. */
export const box = (id: string, price: number | string, banks: readonly string[], more = ''): string =>
  `- {id: ${id}, name: ${id}, price: ${price}, banks: [${banks.join(', ')}]${more === '' ? '' : `, ${more}`}}`;

/** A bank of isolated outputs; settings as `9/100 12/80`: volts/milliamps, or volts/milliamps/openCircuitVolts. */
export const apart = (outputs: number, settings: string, more = ''): string => bankOf(outputs, true, settings, more);

/** A bank on the supply's common ground. */
export const shared = (outputs: number, settings: string, more = ''): string => bankOf(outputs, false, settings, more);

function bankOf(outputs: number, isolated: boolean, settings: string, more: string): string {
  const maps = settings.split(' ').map((setting) => {
    const [volts = '', milliamps = '', openCircuit] = setting.split('/');
    const open = openCircuit === undefined ? '' : `, openCircuitVolts: ${openCircuit}`;
    return `{volts: ${volts}, milliamps: ${milliamps}${open}}`;
  });
  return `{outputs: ${outputs}, isolated: ${isolated}, settings: [${maps.join(', ')}]${more === '' ? '' : `, ${more}`}}`;
}

/** A wall adapter with one isolated output. */
export const adapter = (id: string, price: number | string, settings: string, more = ''): string =>
  box(id, price, [apart(1, settings)], more);

export const pedal = (name: string, volts: number | string, milliamps: number | string, more = ''): string =>
  `- {name: ${name}, volts: ${volts}, milliamps: ${milliamps}${more === '' ? '' : `, ${more}`}}`;

const usualPolicy: Readonly<Record<string, string>> = {
  headroom: '{alone: 1, chained: 1, supply: 1}',
  guess: '1.5',
  chains: 'allow',
  noisePrice: '20',
};

export function boardText({ pedals, policy = {}, board = '', currency = 'EUR' }: Case): string {
  const fields = Object.entries({ ...usualPolicy, ...policy }).filter(([, value]) => value !== null);
  return [
    'board: Acceptance',
    `currency: ${currency}`,
    'assume: {power: DC, polarity: centre-negative, inlet: barrel-2.1, ground: negative}',
    `policy: {${fields.map(([key, value]) => `${key}: ${value ?? ''}`).join(', ')}}`,
    'pedals:',
    ...pedals.map((line) => `  ${line}`),
    board,
    '',
  ].join('\n');
}

export function catalogueText({ supplies, parts = [], batteries = [], currency = 'EUR' }: Case): string {
  return [
    'catalogue: Corner shop',
    `currency: ${currency}`,
    'assume: {power: DC, plug: barrel-2.1, polarity: centre-negative, regulated: true}',
    supplies.length === 0 ? 'supplies: []' : 'supplies:',
    ...supplies.map((line) => `  ${line}`),
    ...(batteries.length === 0 ? [] : ['batteries:', ...batteries.map((line) => `  ${line}`)]),
    ...(parts.length === 0 ? [] : ['parts:', ...parts.map((line) => `  ${line}`)]),
    '',
  ].join('\n');
}

/** Leads that many cases use. */
export const flip = '- {id: flip, name: flip, price: 4, fits: barrel-2.1, gives: barrel-2.1, reverses: true}';
export const mini = '- {id: mini, name: mini, price: 5, fits: barrel-2.1, gives: jack-3.5}';
export const fan = (tails: number, more = ''): string =>
  `- {id: fan, name: fan, price: 8, fits: barrel-2.1, gives: barrel-2.1, tails: ${tails}${more === '' ? '' : `, ${more}`}}`;
export const stack = '- {id: stack, name: stack, price: 9, fits: barrel-2.1, gives: barrel-2.1, joins: series}';
export const pair = '- {id: pair, name: pair, price: 7, fits: barrel-2.1, gives: barrel-2.1, joins: parallel}';
