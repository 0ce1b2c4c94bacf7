/** What of its own a pedal may be fed by: the adapter that it came with, or batteries in it. */
export type OwnPlace = 'adapter' | 'battery';

const shapes: Readonly<Record<OwnPlace, RegExp>> = {
  adapter: /^\s*(?:(?:its\s+)?own(?:\s+adapt[eo]r)?|(?:its\s+)?adapt[eo]r)\s*$/i,
  battery: /^\s*(?:(?:on\s+)?(?:its\s+|own\s+|a\s+)?batter(?:y|ies)|block)\s*$/i,
};

/** Reads "own", "its adapter", "battery"; null where neither is said. */
export const typedOwnPlace = (text: string): OwnPlace | null =>
  (Object.keys(shapes) as OwnPlace[]).find((place) => shapes[place].test(text)) ?? null;
