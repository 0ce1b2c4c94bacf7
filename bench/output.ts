/** How far the bench has come, on standard error. */
export const progress = (text: string): void => void process.stderr.write(`${text}\n`);

/** Paragraphs of the report, on standard output; empty ones are left out. */
export const print = (...paragraphs: readonly string[]): void =>
  void process.stdout.write(`${paragraphs.filter((text) => text !== '').join('\n')}\n\n`);
