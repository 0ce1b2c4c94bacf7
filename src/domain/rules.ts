/** The hard rules, by the names that messages and JSON use. A plan that breaks one is wrong, whatever it costs. */
export const rules = [
  'power',
  'voltage',
  'current',
  'startup',
  'total',
  'setting',
  'polarity',
  'plug',
  'ground',
  'chain',
  'join',
  'mains',
  'inlet',
  'runtime',
  'battery',
  'stock',
  'limit',
] as const;

export type Rule = (typeof rules)[number];

/**
 * The rules by what a wiring that breaks them does to people and gear, the worst first: what is a danger to whoever switches
 * it on, what destroys a pedal at once, what shorts or overloads a supply, what cuts out, and what cannot be plugged at all.
 */
export const rulesBySeverity: readonly Rule[] = [
  // Mains volts that a supply is not made for.
  'mains',
  // The wrong kind of current, too many volts, plus for minus; a switch that gives one of two pedals the other's volts.
  'power',
  'polarity',
  'voltage',
  'setting',
  // A short circuit through the audio leads, and outputs against one another.
  'ground',
  'join',
  // A supply on an output that is wrong for it, or on none.
  'inlet',
  // Too much load: a supply that heats up or switches off, an output that sags, a pedal that does not start.
  'total',
  'current',
  'startup',
  // A battery or a power bank that is empty before the evening is over.
  'battery',
  'runtime',
  // A chain that its maker or its lead forbids, a plug that does not go in.
  'chain',
  'plug',
  // What is not there, or more than was meant to be used.
  'stock',
  'limit',
];
