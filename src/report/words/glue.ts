/** A blank that no line breaks at. */
export const noBreak = '\u00a0';

/** The text with every number bound to its unit, and to what it counts, so that no line ends between them. */
export const glued = (text: string): string =>
  text
    .replace(/(\d) (?=(?:V|mA|W|%)(?!\w))/g, `$1${noBreak}`)
    .replace(/\b(unit|output|socket) (?=\d)/g, `$1${noBreak}`);
