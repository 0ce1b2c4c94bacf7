/** What a remark says that has no column of its own. */
export type Remark = {
  readonly switch?: 'each' | 'together';
  readonly tails?: number;
  readonly reverses?: true;
  readonly joins?: 'series' | 'parallel';
};

/**
 * What a remark says, when it says that and nothing else: "5 tails", "switch on each", "reverses". A remark that holds more
 * is not read at all: half of a sentence may be the wrong half.
 */
export function remarkOf(text: string): Remark | null {
  const plain = text
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
    .trim();
  const [, tails] = /^(\d{1,3}) (?:tails?|plugs|ways?)$/.exec(plain) ?? [];
  if (tails !== undefined) return { tails: Number(tails) };
  return phrases.get(plain) ?? null;
}

const phrases: ReadonlyMap<string, Remark> = new Map<string, Remark>([
  ...['switch on each', 'switch each', 'each', 'each switched', 'each output switched'].map(
    (phrase) => [phrase, { switch: 'each' }] as const,
  ),
  ...['switched together', 'switch together', 'one switch for all', 'one switch', 'together'].map(
    (phrase) => [phrase, { switch: 'together' }] as const,
  ),
  ...['reverses', 'reversing', 'reverses polarity', 'polarity reversing'].map(
    (phrase) => [phrase, { reverses: true }] as const,
  ),
  ...(['series', 'parallel'] as const).flatMap((joins) =>
    [joins, `joins in ${joins}`, `${joins} lead`].map((phrase) => [phrase, { joins }] as const),
  ),
]);
