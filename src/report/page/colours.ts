/** The colours of a report, as hexadecimal triples. */
export type Colours = {
  readonly ink: string;
  /** For what is read second. */
  readonly soft: string;
  readonly paper: string;
  /** Behind what stands apart. */
  readonly panel: string;
  /** Hairlines, and the part of a bar that is empty. */
  readonly line: string;
  /** The part of a bar that is full. */
  readonly full: string;
  /** Marks what asks for care; words say it as well. */
  readonly care: string;
  /** Of leads in a drawing, to follow them by; numbers tell them apart. */
  readonly leads: readonly [string, string, string, string];
};

/** Text on paper and panel has a contrast of 7 to 1 at least in both; a bar stands out from its empty part by 3 to 1. */
export const lightColours: Colours = {
  ink: '#1d2430',
  soft: '#46505f',
  paper: '#ffffff',
  panel: '#f3f1ec',
  line: '#c9c6bd',
  full: '#35566f',
  care: '#7d3410',
  leads: ['#1d2430', '#2f6690', '#8a4b08', '#4d6b2f'],
};

export const darkColours: Colours = {
  ink: '#ece9e2',
  soft: '#bcb8ae',
  paper: '#16191e',
  panel: '#22262d',
  line: '#474d57',
  full: '#9cc3dd',
  care: '#f2b48c',
  leads: ['#ece9e2', '#8fc1e6', '#f0b36e', '#b3d48c'],
};
