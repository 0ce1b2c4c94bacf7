/** How long a piece of someone's text may be in a message. */
const longest = 60;

/**
 * Text with everything that a terminal could act on, or that would not be seen, written as an escape: control characters,
 * direction marks, line separators, lone surrogates. Text that is escaped already stays as it is.
 */
export function escapedText(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/gu, (character) => {
    const code = character.codePointAt(0) ?? 0;
    if (code > 0xffff) return `\\u{${code.toString(16)}}`;
    return code > 0xff ? `\\u${code.toString(16).padStart(4, '0')}` : `\\x${code.toString(16).padStart(2, '0')}`;
  });
}

/** Text from a file as a message quotes it: escaped, in double quotes, cut after 60 characters. */
export function quoted(text: string): string {
  const characters = text.length > 4 * longest ? Array.from(text.slice(0, 4 * longest)) : Array.from(text);
  const cut = characters.length > longest || text.length > 4 * longest;
  return `"${escapedText(characters.slice(0, longest).join(''))}${cut ? '…' : ''}"`;
}

/** Several words as a sentence lists them: `a, b and c`. */
export function listed(words: readonly string[], last: 'or' | 'and' = 'and'): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1) ?? ''}`;
}

/** The most words that a message lists. */
export const mostListed = 12;

/** The same where they may be many: of more than twelve the first, and how many others. */
export const firstListed = (words: readonly string[]): string =>
  words.length > mostListed
    ? `${words.slice(0, mostListed).join(', ')} and ${words.length - mostListed} more`
    : listed(words, 'and');
