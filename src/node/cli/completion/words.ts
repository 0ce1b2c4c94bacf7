/** What has been typed behind the program's name, word by word. */
export type TypedWords = {
  readonly words: readonly string[];
  /** Which word the cursor is in, from 0; the one behind the last when a new one begins there. */
  readonly at: number;
};

/**
 * The words of a line as bash reads it: blanks separate, quotation marks and backslashes keep together. Of the word that the
 * cursor is in only what stands before the cursor counts.
 */
export function typedIn(line: string, point: number): TypedWords {
  const before = split(line.slice(0, point));
  const after = split(line.slice(point).replace(/^\S+/, ''));
  const [, ...words] = before.isOpen ? before.words : [...before.words, ''];
  const [, ...all] = [...(before.isOpen ? before.words : [...before.words, '']), ...after.words];
  return { words: all, at: Math.max(0, words.length - 1) };
}

const word = /(?:\\[^]?|'[^']*'?|"(?:\\[^]|[^"\\])*"?|[^\s'"\\])+/g;
const quoting = /\\([^]?)|'([^']*)'?|"((?:\\[^]|[^"\\])*)"?/g;

/** `isOpen` when the last word goes on until the end. */
function split(text: string): { readonly words: readonly string[]; readonly isOpen: boolean } {
  const found = [...text.matchAll(word)];
  const last = found.at(-1);
  return {
    words: found.map(([written]) => withoutQuotes(written)),
    isOpen: last !== undefined && last.index + last[0].length === text.length,
  };
}

const withoutQuotes = (written: string): string =>
  written.replace(
    quoting,
    (_all, escaped: string | undefined, single: string | undefined, double: string | undefined) =>
      escaped ?? single ?? (double ?? '').replace(/\\([^])/g, '$1'),
  );
