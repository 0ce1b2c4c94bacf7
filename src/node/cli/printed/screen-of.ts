import type { ScreenOptions } from '../../../report/screen/screen.js';

/** What is not a terminal, such as a file or a mail, and a terminal of unknown width are laid out for so many columns. */
const usualWidth = 80;

type Environment = Readonly<Record<string, string | undefined>>;
type Surface = { readonly isTTY?: boolean; readonly columns?: number };

/**
 * How a stream can be written on. Colour is for terminals, unless NO_COLOR is set or TERM is `dumb`. Signs beyond ASCII are
 * left out where the locale names another encoding than UTF-8, as C and POSIX do. Where no locale is set they are used: what
 * is printed is UTF-8 in any case, and an environment without a locale is mostly a container or another system's terminal.
 */
export function screenOf(stream: Surface, environment: Environment): ScreenOptions {
  const terminal = stream.isTTY === true;
  const colour = terminal && !isSet(environment['NO_COLOR']) && environment['TERM'] !== 'dumb';
  return { width: terminal ? columnsOf(stream) : usualWidth, colour, unicode: speaksUtf8(environment) };
}

/** Terminals that do not know their width say 0 or nothing. */
export const columnsOf = ({ columns = 0 }: Surface): number => (columns > 0 ? columns : usualWidth);

/** The first that is set decides, in the order that POSIX gives them; one that is empty counts as not set. */
function speaksUtf8({ LC_ALL, LC_CTYPE, LANG }: Environment): boolean {
  const locale = [LC_ALL, LC_CTYPE, LANG].find(isSet);
  return locale === undefined || /utf-?8/i.test(locale);
}

const isSet = (value: string | undefined): boolean => value !== undefined && value !== '';
