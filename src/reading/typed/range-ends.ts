/** What stands between the ends of a range: a hyphen, a dash, two dots or three, or "to". */
const range = /^(\d.*?)(\s*(?:-|–|—|\.\.\.?|…|to)\s*)(\d.*)$/isu;

/** The ends of a range as they are written. */
type RangeEnds = {
  readonly from: string;
  readonly to: string;
  /** Where the second one begins, in UTF-16 units. */
  readonly toOffset: number;
};

/** The ends of "9-18 V", "100 to 240" or "9…18"; null where a text is no range. Each end may still be anything with a digit first. */
export function rangeEnds(text: string): RangeEnds | null {
  const [, from, between, to] = range.exec(text) ?? [];
  if (from === undefined || between === undefined || to === undefined) return null;
  return { from, to, toOffset: from.length + between.length };
}
