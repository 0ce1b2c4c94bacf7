import { Help, type AddHelpTextContext, type HelpConfiguration } from 'commander';

/** Where commander does not know how wide the terminal is. */
const usualColumns = 80;

/** How help is laid out: no line goes beyond the terminal, and none is broken within a word. */
export const helpLayout: HelpConfiguration = {
  minWidthToWrap: 20,
  formatHelp: (command, helper) =>
    fitted(Help.prototype.formatHelp.call(helper, command, helper), helper.helpWidth ?? usualColumns),
};

/** What stands below the help of a command, laid out alike. */
export const below =
  (text: string) =>
  ({ command, error }: AddHelpTextContext): string => {
    const output = command.configureOutput();
    return fitted(text, (error ? output.getErrHelpWidth?.() : output.getOutHelpWidth?.()) ?? usualColumns);
  };

/** What a command says of the codes that it ends with; 1 and 2 mean the same everywhere. */
export type ExitCodeWords = Readonly<Partial<Record<0 | 3 | 4 | 5, string>>>;

/** A line for each exit code. */
export function exitCodeText(words: ExitCodeWords, title = 'Exit codes:'): string {
  const all = { 1: 'a defect of boardfeed', 2: 'wrong use of the command', ...words };
  return ['', title, ...Object.entries(all).map(([code, text]) => `  ${code}  ${text}`)].join('\n');
}

/**
 * The text with its long lines broken between words: what is broken off stands below what follows on the line's first wide
 * gap, or a little further in than the line.
 */
export const fitted = (text: string, columns: number): string =>
  text
    .split('\n')
    .flatMap((line) => (line.length <= columns ? [line] : broken(line, columns)))
    .join('\n');

function broken(line: string, columns: number): readonly string[] {
  const [indent = ''] = /^ */.exec(line) ?? [];
  const [term = ''] = /^ *\S(?:.*?\S)? {2,}(?=\S)|^Usage: /.exec(line) ?? [];
  const lead = term.length <= columns / 2 ? term || indent : indent;
  const further = lead.startsWith('Usage') || (lead === indent && indent !== '') ? 2 : 0;
  const [first = '', ...words] = line.slice(lead.length).split(/ +/);
  const lines = [`${lead}${first}`];
  for (const word of words) {
    const longer = `${lines.at(-1) ?? ''} ${word}`;
    if (longer.length <= columns) lines.splice(-1, 1, longer);
    else lines.push(`${' '.repeat(lead.length + further)}${word}`);
  }
  return lines;
}
