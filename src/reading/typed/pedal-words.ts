import type { Figure, Ground, Polarity, Power } from '../../domain/pedal.js';

/** What a word may say of a pedal, by the keys of a board file. */
export type SaidByWord = {
  readonly power?: Power;
  readonly polarity?: Polarity;
  readonly ground?: Ground;
  readonly digital?: boolean;
  readonly highGain?: boolean;
  readonly alone?: boolean;
  readonly figure?: Figure;
};

const negative: SaidByWord = { polarity: 'centre-negative' };
const positive: SaidByWord = { polarity: 'centre-positive' };

const aroundCentre = (place: string, sign: string): readonly string[] => [`${place}-${sign}`, `${sign} ${place}`];

/** As they stand on labels: the centre of a jack plug is its tip. */
const ofCentre = Object.fromEntries(
  ['centre', 'center', 'tip'].flatMap((place) => [
    ...[`${place}-`, `${place} -`, ...aroundCentre(place, 'negative'), ...aroundCentre(place, 'neg')].map(
      (word) => [word, negative] as const,
    ),
    ...[`${place}+`, `${place} +`, ...aroundCentre(place, 'positive'), ...aroundCentre(place, 'pos')].map(
      (word) => [word, positive] as const,
    ),
  ]),
);

/** Of what nobody has read for certain; a typical figure is not the most that it draws. */
const guesses = [
  'guess',
  'about',
  'around',
  'approx',
  'approximately',
  'roughly',
  'circa',
  'ca',
  'typ',
  'typical',
  '≈',
];

/** Words that say one thing each; a space stands for a hyphen as well. */
const words: Readonly<Record<string, SaidByWord>> = {
  DC: { power: 'DC' },
  '⎓': { power: 'DC' },
  AC: { power: 'AC' },
  '~': { power: 'AC' },
  'minus on the pin': negative,
  negative,
  minus: negative,
  neg: negative,
  'c-': negative,
  'plus on the pin': positive,
  positive,
  plus: positive,
  pos: positive,
  'c+': positive,
  ...ofCentre,
  'negative ground': { ground: 'negative' },
  'positive ground': { ground: 'positive' },
  digital: { digital: true },
  analogue: { digital: false },
  analog: { digital: false },
  'high gain': { highGain: true },
  alone: { alone: true },
  label: { figure: 'label' },
  manual: { figure: 'manual' },
  measured: { figure: 'measured' },
  ...Object.fromEntries(guesses.map((word) => [word, { figure: 'guess' }] as const)),
  // What a pedal wants at least or takes at the most is what it is to be given; the others say that somebody does not know.
  max: {},
  maximum: {},
  min: {},
  minimum: {},
  'at least': {},
  'up to': {},
  'less than': {},
  'more than': {},
  '≤': {},
  '≥': {},
  '<': {},
  '>': {},
  'no sign': {},
  unknown: {},
  '?': {},
};

/** Those that a near spelling may stand for. */
export const knownWords: readonly string[] = Object.keys(words).filter((word) => word.length > 2);

/** Between letters a space and a hyphen are the same. */
const inOneSpelling = (word: string): string => word.toLowerCase().replaceAll(/(?<=\p{L})[\s-]+(?=\p{L})/gu, ' ');
const spelled = new Map(Object.entries(words).map(([word, said]) => [inOneSpelling(word), said]));
const patterns = [...spelled.keys()]
  .sort((one, two) => two.length - one.length)
  .map((word) => word.replaceAll(/[?+]/g, String.raw`\$&`).replaceAll(' ', String.raw`[\s-]+`));
/** Signs need no room behind them; with room before it and none behind, "~100 mA" is about so much, else it is AC. */
const pattern = new RegExp(String.raw`[⎓≤≥<>≈~]|(?:${patterns.join('|')})\.?(?=[\s,;]|$)`, 'iuy');

/** The words at a place that say something, the longest that fit; null where there are none. */
export function wordsAt(text: string, at: number): { readonly text: string; readonly said: SaidByWord } | null {
  pattern.lastIndex = at;
  const found = pattern.exec(text)?.[0];
  const isAbout = found === '~' && /^[\s,;(]?~\d/.test(text.slice(Math.max(0, at - 1), at + 2));
  const said =
    found === undefined ? undefined : spelled.get(isAbout ? 'about' : inOneSpelling(found.replace(/\.$/, '')));
  return found === undefined || said === undefined ? null : { text: found, said };
}
