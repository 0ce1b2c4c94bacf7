/** Which of the two input files. */
export type InputKind = 'board' | 'catalogue';

/** The keys and list indices from the root of a file to a value. */
export type Path = readonly (string | number)[];

/** A value in an input file. When it is missing, the innermost thing around it that is there stands for it. */
export type Spot = { readonly source: InputKind; readonly path: Path };

/** What was found and what is allowed, and how to mend it. */
export type Words = { readonly message: string; readonly remedy: string };

/** Names the line of a value as a message does: `line 12`, or `line 12 of shop.yaml` when it is in another file. */
export type LineOf = (spot: Spot) => string;

/** Something wrong with the input. The words are made only when the finding is shown. */
export type Finding = Spot & {
  /** What to point at: the value, its key, or for a value behind an alias the alias. */
  readonly point: 'value' | 'key' | 'alias';
  readonly words: (lineOf: LineOf) => Words;
};

/** Notes what is wrong with a value, or with its absence; `point` is the value when left out. */
export type Report = (spot: Spot, words: Words | ((lineOf: LineOf) => Words), point?: Finding['point']) => void;

/** A finding about a value, or about its absence. */
export function findingAt(
  spot: Spot,
  words: Words | ((lineOf: LineOf) => Words),
  point: Finding['point'] = 'value',
): Finding {
  return {
    source: spot.source,
    path: spot.path,
    point,
    words: typeof words === 'function' ? words : () => words,
  };
}
