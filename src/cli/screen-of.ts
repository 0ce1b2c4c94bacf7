/** Output that is not a terminal, such as a file or a mail, is laid out for this many columns. */
const plainWidth = 80;

/** How standard output can be written on: its width in columns, and whether colour is welcome there. */
export function screenOf(): { width: number; colour: boolean } {
  const { stdout, env } = process;
  const terminal = stdout.isTTY;
  const plain = (env['NO_COLOR'] ?? '') !== '' || env['TERM'] === 'dumb';
  return { width: terminal ? stdout.columns : plainWidth, colour: terminal && !plain };
}
