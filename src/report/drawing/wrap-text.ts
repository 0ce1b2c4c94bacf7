import { glued, noBreak } from '../words/glue.js';
import { characterWidth, charactersOf, textWidth, type TypeSetting } from './text-size.js';

/** One line of a text that was broken to fit. */
type FittedLine = {
  readonly text: string;
  /** At most how wide it is. */
  readonly width: number;
};

type FittedText = {
  readonly lines: readonly FittedLine[];
  /** Whether something had to be left out; the last line then ends with an ellipsis. */
  readonly cut: boolean;
};

const ellipsis = '…';

/** The text in at most so many lines, none wider than `width`; words are kept whole where they fit into a line. */
export function fitText(text: string, width: number, setting: TypeSetting, mostLines: number): FittedText {
  const lines = brokenLines(text, width, setting);
  const kept = lines.slice(0, mostLines);
  const cut = lines.length > mostLines;
  const last = kept.at(-1) ?? '';
  const shown = cut ? [...kept.slice(0, -1), withEllipsis(last, width, setting)] : kept;
  return { lines: shown.map((line) => ({ text: line, width: textWidth(line, setting) })), cut };
}

function brokenLines(text: string, width: number, setting: TypeSetting): readonly string[] {
  const words = glued(text).split(' ');
  const lines: string[] = [];
  let line = '';
  for (const word of words.filter((one) => one !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (textWidth(longer, setting) <= width) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    const pieces = splitWord(word, width, setting);
    lines.push(...pieces.slice(0, -1));
    line = pieces.at(-1) ?? '';
  }
  return [...lines, ...(line === '' ? [] : [line])].map((one) => one.replaceAll(noBreak, ' '));
}

/** A word that is longer than a line, in pieces of a line each. */
function splitWord(word: string, width: number, setting: TypeSetting): readonly string[] {
  const pieces: string[] = [];
  let piece = '';
  let taken = 0;
  for (const character of charactersOf(word)) {
    const more = characterWidth(character, setting);
    if (piece !== '' && taken + more > width) {
      pieces.push(piece);
      piece = '';
      taken = 0;
    }
    piece += character;
    taken += more;
  }
  return [...pieces, piece];
}

function withEllipsis(line: string, width: number, setting: TypeSetting): string {
  const characters = [...charactersOf(line)];
  while (characters.length > 0 && textWidth(characters.join('') + ellipsis, setting) > width) characters.pop();
  return characters.join('').trimEnd() + ellipsis;
}
