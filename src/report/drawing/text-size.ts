import stringWidth from 'string-width';

/** How a text is set. */
export type TypeSetting = {
  /** In the drawing's units. */
  readonly size: number;
  readonly strong: boolean;
};

/** How large names, other words and the words of marks are, in the drawing's units. */
export type TextSizes = { readonly name: number; readonly plain: number; readonly mark: number };

/**
 * The most that a character takes, in its own size, plain and strong. Nobody knows which font a reader has, so these are the
 * widths of the widest sans-serif faces in common use, rounded up: what fits by these figures fits in every one of them.
 */
const classes: readonly (readonly [RegExp, number, number])[] = [
  [/^[ijlI.,:;'|!]$/, 0.41, 0.47],
  [/^\s$/, 0.36, 0.36],
  [/^[-frt()[\]"/\\`*]$/, 0.5, 0.55],
  [/^[mw]$/, 0.98, 1.07],
  [/^[MW]$/, 1, 1.14],
  [/^%$/, 1.08, 1.28],
  [/^@$/, 1, 1.01],
  [/^[+<=>~#&→×−–]$/, 0.84, 0.88],
  [/^[a-z0-9{}?_$]$/, 0.65, 0.73],
  [/^[A-Z]$/, 0.8, 0.87],
  [/^[…—]$/, 1, 1.01],
];
/** Of what is not in the list: as letters of other scripts are at most times, or as high as they are wide. */
const otherWidths = { single: 0.7, double: 1.05 } as const;

const segmenter = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** What a reader sees as one character each. Nearly all texts are plain, and need no segmenter, which is slow. */
export const charactersOf = (text: string): readonly string[] =>
  plainText.test(text) ? text.split('') : Array.from(segmenter.segment(text), ({ segment }) => segment);

/** Of characters that join no other. */
const plainText = /^[\u0020-\u007e\u00a0-\u017f→−–—…×•]*$/;

/** At most how wide the text is, in the drawing's units. */
export const textWidth = (text: string, setting: TypeSetting): number =>
  charactersOf(text).reduce((total, character) => total + characterWidth(character, setting), 0);

export function characterWidth(character: string, { size, strong }: TypeSetting): number {
  const widths = plainWidths.get(character) ?? widthsOf(character);
  return size * widths[strong ? 1 : 0];
}

function widthsOf(character: string): readonly [plain: number, strong: number] {
  // An accent does not make its letter wider.
  const base = character.normalize('NFD').slice(0, 1);
  const known = isLatin(character) ? classes.find(([pattern]) => pattern.test(base)) : undefined;
  if (known !== undefined) return [known[1], known[2]];
  const other = stringWidth(character) > 1 ? otherWidths.double : otherWidths.single;
  return [other, other];
}

/**
 * Whether the width of the text is only a guess, since it has characters of which fonts make what they will. Such a text is
 * given its width, for the font to follow.
 */
export const isGuessed = (text: string): boolean => !charactersOf(text).every(isLatin);

const isLatin = (character: string): boolean =>
  /^[\u0020-\u007e\u00a0-\u017f→−–—…×•][\u0300-\u0304\u0306-\u030c]?$/.test(character);

/** Of what nearly all texts are made of. */
const plainWidths = new Map(
  Array.from({ length: 0x7f - 0x20 }, (_, at) => String.fromCharCode(0x20 + at)).map((one) => [one, widthsOf(one)]),
);
